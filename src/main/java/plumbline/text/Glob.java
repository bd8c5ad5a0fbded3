package plumbline.text;

import java.util.regex.Pattern;

/** Patterns in which {@code *} stands for any text and {@code ?} for one character. */
public final class Glob {
  private Glob() {}

  /** Says whether the whole text fits the pattern, letter case as written. */
  public static boolean matches(String pattern, String text) {
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
    return Pattern.compile(regex.toString(), Pattern.DOTALL).matcher(text).matches();
  }
}
