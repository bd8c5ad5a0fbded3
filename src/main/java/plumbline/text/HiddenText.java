package plumbline.text;

import java.util.Locale;
import java.util.Objects;

/**
 * Text that may hold a secret: it can be asked whether it fits a pattern, and shows itself to
 * nobody. Two of them are equal whatever they hide, so that comparing tells nothing either.
 */
public final class HiddenText {
  /** Hides nothing: fits no pattern. */
  public static final HiddenText NONE = new HiddenText("");

  /** A longer text is not kept: it fits no pattern. */
  private static final int LONGEST = 200;

  private final String text;

  private HiddenText(String text) {
    this.text = text;
  }

  /** Hides a text; blanks around it do not count, those within it count as one. */
  public static HiddenText of(String text) {
    Objects.requireNonNull(text);
    if (text.length() > LONGEST) {
      return NONE;
    }
    return new HiddenText(singleBlanks(text).toLowerCase(Locale.ROOT));
  }

  /**
   * Says whether the whole text fits a pattern, in any letter case.
   *
   * @param pattern {@code *} stands for any text and {@code ?} for one character; blanks as in
   *     {@link #of}
   */
  public boolean matches(String pattern) {
    return !text.isEmpty() && Glob.matches(singleBlanks(pattern).toLowerCase(Locale.ROOT), text);
  }

  private static String singleBlanks(String text) {
    StringBuilder single = new StringBuilder(text.length());
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      boolean blank = c == ' ' || c == '\t';
      if (!blank) {
        single.append(c);
      } else if (!single.isEmpty() && single.charAt(single.length() - 1) != ' ') {
        single.append(' ');
      }
    }
    return single.toString().stripTrailing();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof HiddenText;
  }

  @Override
  public int hashCode() {
    return 0;
  }

  @Override
  public String toString() {
    return Secrets.MASK;
  }
}
