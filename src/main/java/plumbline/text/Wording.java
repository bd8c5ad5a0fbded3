package plumbline.text;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Turns words of an input file into parts of a message that are safe to print. */
public final class Wording {
  /** How many alternatives a message lists at most. */
  public static final int MOST_ALTERNATIVES = 5;

  private static final int LONGEST_QUOTE = 40;

  private Wording() {}

  /**
   * The text in double quotes, on one line, without control characters, cut after 40 characters,
   * possible secrets masked: a config may have been given in the place of a design.
   */
  public static String quote(String text) {
    // Only the beginning is looked at: the text may be as long as a file.
    String head = text.substring(0, Math.min(text.length(), 4 * LONGEST_QUOTE));
    StringBuilder clean = new StringBuilder();
    head.codePoints()
        .map(c -> Character.isWhitespace(c) ? ' ' : c)
        .filter(Wording::isPrintable)
        .forEach(clean::appendCodePoint);
    String line = masked(clean.toString().replaceAll(" +", " ").strip());
    if (line.codePointCount(0, line.length()) > LONGEST_QUOTE) {
      line = line.substring(0, line.offsetByCodePoints(0, LONGEST_QUOTE - 3)) + "...";
    } else if (head.length() < text.length()) {
      line += "...";
    }
    return '"' + line.replace('"', '\'') + '"';
  }

  /** Digits alone stay: a number out of range may be as long as a hash. */
  private static String masked(String line) {
    return line.chars().allMatch(c -> c >= '0' && c <= '9') ? line : Secrets.mask(line);
  }

  /** A list in words: {@code a}, {@code a and b}, {@code a, b and c}; five at most are named. */
  public static String list(List<String> words) {
    if (words.size() > MOST_ALTERNATIVES) {
      return String.join(", ", words.subList(0, MOST_ALTERNATIVES))
          + " and "
          + (words.size() - MOST_ALTERNATIVES)
          + " more";
    }
    if (words.size() < 2) {
      return String.join("", words);
    }
    return String.join(", ", words.subList(0, words.size() - 1))
        + " and "
        + words.get(words.size() - 1);
  }

  /** Up to five words, quoted, as {@code "a", "b" or "c"}; what is more is counted. */
  public static String alternatives(Collection<String> words) {
    List<String> quoted = words.stream().limit(MOST_ALTERNATIVES).map(Wording::quote).toList();
    int more = words.size() - quoted.size();
    if (more > 0) {
      return String.join(", ", quoted) + " or " + more + " more";
    }
    if (quoted.size() < 2) {
      return String.join("", quoted);
    }
    return quoted.stream().limit(quoted.size() - 1L).collect(Collectors.joining(", "))
        + " or "
        + quoted.get(quoted.size() - 1);
  }

  /** Up to five words, quoted, as {@code "a", "b", "c"}; what is more is counted. */
  public static String quoted(Collection<String> words) {
    int more = words.size() - MOST_ALTERNATIVES;
    String first =
        words.stream()
            .limit(MOST_ALTERNATIVES)
            .map(Wording::quote)
            .collect(Collectors.joining(", "));
    return more > 0 ? first + " and " + more + " more" : first;
  }

  /**
   * The clause that helps after a wrong word: {@code did you mean "x"?} when one is near, else
   * {@code expected "a", "b" or "c"}; what to say when there is no valid word at all is given.
   */
  public static String remedy(String wrong, Collection<String> valid, String none) {
    Optional<String> nearest = Nearest.to(wrong, valid);
    if (nearest.isPresent()) {
      return "did you mean " + quote(nearest.get()) + "?";
    }
    return valid.isEmpty() ? none : "expected " + alternatives(valid);
  }

  private static boolean isPrintable(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED -> false;
      default -> true;
    };
  }
}
