package plumbline.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText.Truncation;
import plumbline.syntax.SwitchSplitter.Part;

/** What the text of one switch is as a whole: pasted or dumped, flat or indented, whole or cut. */
final class TextFacts {
  /** So many times more lines beside port headers than below them: indentation was lost. */
  private static final int CLEARLY = 3;

  /** A text is clearly shorter than promised by more bytes than this, and by more than 2 %. */
  private static final long MARGIN = 64;

  private static final int MARGIN_PART = 50;

  private final ScannedLines scan;
  private final Part part;
  private final StatementSource source;
  private final List<Mark> marks;
  private final boolean flat;

  TextFacts(ScannedLines scan, Part part, StatementSource source) {
    this.scan = scan;
    this.source = source;
    this.part = part;
    this.marks = List.copyOf(scan.marks(part.first(), part.end()));
    this.flat = findFlat();
  }

  private boolean has(Mark.Kind kind) {
    return marks.stream().anyMatch(mark -> mark.kind() == kind);
  }

  /** Says whether indentation tells nothing, so that blocks are told by knowledge. */
  boolean flat() {
    return flat;
  }

  private boolean findFlat() {
    int base = -1;
    int deeper = 0;
    int below = 0;
    int beside = 0;
    int header = -1;
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) != LineKind.STATEMENT || scan.prompt(line).isPresent()) {
        continue;
      }
      int indent = scan.lines().indent(line);
      base = base < 0 ? indent : base;
      deeper += indent > base ? 1 : 0;
      boolean opens = looksLikePort(scan.lines().content(line));
      if (header >= 0 && indent > header) {
        below++;
      } else if (header >= 0 && !opens) {
        beside++;
      }
      header = opens ? indent : -1;
    }
    return deeper == 0 || beside > CLEARLY * (below == 0 ? deeper : below);
  }

  private static boolean looksLikePort(String content) {
    char last = content.charAt(content.length() - 1);
    return Character.isDigit(last) && Shapes.startsWith(content, "int");
  }

  /**
   * Says whether the text is a pasted script or session, in which an absent line is no default.
   *
   * <p>A text is a dump, not a script, if something is in it that only a dump has: a size line or
   * {@code Building configuration}, a version line, a comment that switches put on top, the echo of
   * a command that shows a whole config, a bare-name header. Without such a mark it is a script if
   * it was typed in a config mode (a prompt of such a mode, {@code configure terminal}), if it is
   * the output of a command that shows only part of a config (but not if its filter may leave all
   * of it, and version, name and end are there), or if it has no indentation; the last does not
   * hold for a text that names its switch, closes with {@code end} and never says {@code exit}:
   * that is a dump whose indentation was lost. An indented text without any mark is a dump, but not
   * if all that it says is a switch's name and what some ports do: every dump says more beside its
   * ports, so that this is a fragment, a script like any other.
   */
  boolean script(Cutter.Cut cut) {
    boolean part = false;
    for (Mark mark : marks) {
      switch (mark.kind()) {
        case PART_ECHO -> part = !mark.text().equals(LineScan.MAY_BE_ALL) || !isComplete();
        case WHOLE_ECHO -> {
          return false;
        }
        case START, START_OF_ENDING -> {
          if (!part) {
            return false;
          }
        }
        default -> {}
      }
    }
    if (part || has(Mark.Kind.CONFIGURE) || has(Mark.Kind.CONFIG_PROMPT)) {
      return true;
    }
    return isFragment(cut) || (flat && !(has(Mark.Kind.HOSTNAME) && ends() && !says("exit")));
  }

  /** Says whether nothing stands beside ports but the switch's name. */
  private boolean isFragment(Cutter.Cut cut) {
    if (has(Mark.Kind.END) || has(Mark.Kind.OPEN_BANNER) || has(Mark.Kind.OPEN_BLOB)) {
      return false;
    }
    boolean ports = false;
    for (Statement statement : cut.statements()) {
      if (statement.command() instanceof SwitchCommand.Interface) {
        ports = true;
      } else if (statement.context() != Context.PORT && !isSilent(statement)) {
        return false;
      }
    }
    return ports;
  }

  private static boolean isSilent(Statement statement) {
    return statement.command() instanceof SwitchCommand.Hostname
        || statement.command() instanceof Command.Exit
        || (statement.command() instanceof Command.Layout layout
            && layout.kind() != Command.Layout.Kind.BANNER)
        || (statement.context() == Context.OTHER && Reader.isHarmless(statement.meaning()))
        || Reader.isLostHeader(statement.meaning());
  }

  /** Says whether all is there that frames a dump: a version line, a name and an end. */
  private boolean isComplete() {
    if (!has(Mark.Kind.HOSTNAME) || !has(Mark.Kind.END)) {
      return false;
    }
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) == LineKind.STATEMENT && Shapes.isVersion(scan.statement(line))) {
        return true;
      }
    }
    return false;
  }

  private boolean says(String word) {
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) == LineKind.STATEMENT
          && scan.statement(line).toLowerCase(Locale.ROOT).equals(word)) {
        return true;
      }
    }
    return false;
  }

  /** Says whether {@code end} is the last statement. */
  private boolean ends() {
    int last = lastStatement();
    return last >= 0 && scan.statement(last).equalsIgnoreCase("end");
  }

  private int lastStatement() {
    for (int line = part.end() - 1; line >= part.first(); line--) {
      if (scan.kind(line).isStatement()) {
        return line;
      }
    }
    return -1;
  }

  /**
   * Where the text breaks off. Clearly shorter than its size line promises is: by more than 64
   * bytes and more than 2 %, each line end counted as two bytes because copies change them.
   */
  Optional<Truncation> truncation(Cutter.Cut cut) {
    List<Truncation> found = new ArrayList<>();
    marks.stream()
        .filter(mark -> mark.kind() == Mark.Kind.OPEN_BANNER)
        .findFirst()
        .ifPresent(mark -> found.add(at(mark.line(), "a banner never closes")));
    int open = cut.openLine();
    missingBytes().ifPresent(why -> found.add(at(open, why)));
    if (!ends()) {
      if (has(Mark.Kind.OPEN_BLOB)) {
        found.add(at(open, "the text stops inside a certificate or key"));
      }
      if (stopsAtPager()) {
        found.add(at(open, "the text stops at a pager mark"));
      }
      if (stopsInsideStatement(cut)) {
        found.add(at(open, "the text stops inside a statement"));
      }
      if (lacksEnd()) {
        found.add(at(open, "no end line"));
      }
    }
    return found.stream().reduce((a, b) -> b.line() < a.line() ? b : a);
  }

  private Truncation at(int line, String why) {
    return new Truncation(scan.lines().lines().number(line), why);
  }

  /**
   * Says whether the line {@code end} is missing. A dump of a dialect that prints it tells so by
   * its version line or size line. A text without either tells so by the campus dialect's own
   * lines, its ports in full names, if it does not reach the lines of consoles and sessions: that
   * is where such dumps stop in files that people trimmed by hand, which are whole but for that
   * line.
   */
  private boolean lacksEnd() {
    if (has(Mark.Kind.END)) {
      return false;
    }
    return has(Mark.Kind.START_OF_ENDING) || (!has(Mark.Kind.START) && showsCampusPart());
  }

  private boolean showsCampusPart() {
    boolean ports = false;
    boolean marked = false;
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) == LineKind.STATEMENT) {
        String text = scan.statement(line);
        if (CampusMark.isConsole(text) || CampusMark.isForeign(text)) {
          return false;
        }
        ports |= CampusMark.isFullPortHeader(text);
        marked |= CampusMark.is(text);
      }
    }
    return ports && marked;
  }

  /** Says whether a pager mark is the last of the config: behind it stand prompts and answers. */
  private boolean stopsAtPager() {
    for (int line = lastStatement() + 1; line < part.end(); line++) {
      boolean said = scan.kind(line) == LineKind.COMMENT || scan.prompt(line).isPresent();
      if (said) {
        return false;
      }
      if (scan.lines().paged(line) && scan.lines().isEmpty(line)) {
        return isBareBehind(line);
      }
    }
    return false;
  }

  private boolean isBareBehind(int pager) {
    for (int line = pager + 1; line < part.end(); line++) {
      if (scan.prompt(line).isPresent()) {
        return true;
      }
      if (scan.kind(line) == LineKind.COMMENT) {
        return false;
      }
    }
    return true;
  }

  private boolean stopsInsideStatement(Cutter.Cut cut) {
    int line = lastStatement();
    if (line != part.end() - 1) {
      return false;
    }
    String text = scan.statement(line);
    if (text.endsWith(",") || text.endsWith("-")) {
      return !Shapes.startsWith(text, "desc");
    }
    boolean last = part.end() == scan.lines().count() && !scan.lines().lines().closed();
    Statement statement = cut.statements().get(cut.statements().size() - 1);
    if (!last || scan.prompt(line).isPresent()) {
      return false;
    }
    return statement.command() instanceof Command.Unknown unknown
        ? !unknown.understood().isEmpty()
        : stopsInsideWord(statement.context(), text) && isElsewhereInFull(cut.statements());
  }

  /** Says whether the last word alone is a keyword that is not written in full. */
  private boolean stopsInsideWord(Context context, String text) {
    int word = Math.max(text.lastIndexOf(' '), text.lastIndexOf('\t')) + 1;
    return source.isAbbreviated(context, text)
        && !source.isAbbreviated(context, text.substring(0, word));
  }

  /** Says whether no statement but the last has an abbreviated keyword: nobody typed this text. */
  private boolean isElsewhereInFull(List<Statement> statements) {
    for (Statement statement : statements.subList(0, statements.size() - 1)) {
      // A line of a redundancy group has its meaning with the group's header before it.
      String quote = statement.meaning().quote();
      if (!quote.isEmpty() && source.isAbbreviated(statement.context(), quote)) {
        return false;
      }
    }
    return true;
  }

  private Optional<String> missingBytes() {
    for (Mark mark : marks) {
      if (mark.kind() == Mark.Kind.SIZE) {
        long promised = Long.parseLong(mark.text());
        long found = bytesFrom(mark.line() + 1);
        if (promised - found > Math.max(MARGIN, promised / MARGIN_PART)) {
          return Optional.of(
              "the size line promises " + promised + " bytes, at most " + found + " follow");
        }
      }
    }
    return Optional.empty();
  }

  private long bytesFrom(int first) {
    Lines lines = scan.lines().lines();
    int end =
        marks.stream()
            .filter(mark -> mark.kind() == Mark.Kind.END && mark.line() >= first)
            .mapToInt(mark -> mark.line() + 1)
            .findFirst()
            .orElse(part.end());
    long bytes = 0;
    for (int line = first; line < end; line++) {
      for (int at = lines.start(line); at < lines.end(line); at++) {
        char c = lines.text().charAt(at);
        bytes += c < 0x80 ? 1 : c < 0x800 ? 2 : 3;
      }
      bytes += 2;
    }
    return bytes;
  }
}
