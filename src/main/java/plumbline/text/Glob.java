package plumbline.text;

import java.util.regex.Pattern;

/** Patterns in which {@code *} stands for any text and {@code ?} for one character. */
public final class Glob {
  private Glob() {}

  /** Says whether the whole text fits the pattern, letter case as written. */
  public static boolean matches(String pattern, String text) {
    return compiled(pattern, false).matcher(text).matches();
  }

  /** The pattern for many texts; the whole of a text must match. */
  public static Pattern compiled(String pattern, boolean anyCase) {
    StringBuilder regex = new StringBuilder();
    pattern
        .codePoints()
        .forEach(
            point ->
                regex.append(
                    switch (point) {
                      case '*' -> ".*";
                      case '?' -> ".";
                      default -> Pattern.quote(Character.toString(point));
                    }));
    int flags = anyCase ? Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE : 0;
    return Pattern.compile(regex.toString(), Pattern.DOTALL | flags);
  }
}
