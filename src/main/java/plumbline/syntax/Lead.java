package plumbline.syntax;

/** Tells by its first words what a line outside banners and blobs is about. */
final class Lead {
  private Lead() {}

  /** Says whether a line is a comment. */
  static boolean isComment(String content) {
    char first = content.charAt(0);
    return first == '!' || first == '#' || first == ';';
  }

  /** Says whether a line is an answer, an error or a command of the exec level. */
  static boolean isNoStatement(String content) {
    char first = content.charAt(0);
    if (first == '%' || first == '^' || first == '[') {
      return true;
    }
    return switch (first) {
      case 'd', 'D' -> Shapes.startsWith(content, "do ");
      case 'E', 'e' -> Shapes.startsWith(content, "Enter configuration commands");
      case 'w', 'W', 'c', 'C' -> EndUserCommand.isSave(content);
      case 'y', 'Y' -> content.equalsIgnoreCase("y") || content.equalsIgnoreCase("yes");
      case '0', '1', '2', '3', '4', '5', '6', '7', '8', '9' ->
          content.chars().allMatch(Character::isDigit);
      default -> false;
    };
  }

  /** Says whether a line is a command of the exec level whose prompt was not copied. */
  static boolean isEcho(String content) {
    return switch (content.charAt(0)) {
      case 'c', 'C' ->
          Shapes.startsWith(content, "conf")
              && EndUserCommand.of(content) == EndUserCommand.CONFIGURE;
      case 's', 'S' -> EndUserCommand.isShow(content);
      default -> false;
    };
  }

  /**
   * Says whether a line below other output, or below the end of a config, begins config text.
   *
   * @param ended whether a config has ended: then a bare port header begins none
   */
  static boolean beginsConfig(String content, boolean ended) {
    if (isComment(content)) {
      return content.length() > 1 && Shapes.isHeaderComment(content);
    }
    if (Shapes.isPreamble(content)
        || Shapes.isVersion(content)
        || Shapes.isSeparator(content)
        || content.startsWith("config-file-header")) {
      return true;
    }
    if (EndUserCommand.word(content, 0).equals("hostname")
        && EndUserCommand.word(content, 2).isEmpty()) {
      return true;
    }
    if (isEcho(content)) {
      return true;
    }
    return !ended && (Shapes.isPortHeader(content) || Shapes.isVlanHeader(content));
  }
}
