package plumbline.text;

import java.util.List;
import java.util.regex.Pattern;

/** The words that announce a secret, such as {@code password} (common practice, no source). */
final class Announcers {
  private static final String NO_MORE = "(?![\\p{L}\\p{N}])";

  /** What ends a short word, so that the name {@code KEY-ROOM} is no announcement. */
  private static final String ALONE = "(?![\\p{L}\\p{N}]|[-_.][\\p{L}\\p{N}])";

  private static final String WORD = "(?<![\\p{L}\\p{N}])";

  private static final String WORD_ALONE = "(?<![\\p{L}\\p{N}]|[-_.])";

  /** Words that announce a secret also where it is glued to them: {@code key_hunter2}. */
  private static final String SHORT = "(?:keys?|(?<!by[-_ ])pass|pins?|token|hash)";

  /** What follows such a word in the name of a place or a thing. */
  private static final String NO_PLACE =
      "(?!(?:rooms?|desks?|offices?|doors?|gates?|through|thru|by|over|under|along|on|box|cabinets?"
          + "|cards?|readers?|safe|lockers?|locks?|stores?|panels?|halls?|lobby|points?|pads?|stones?"
          + "|accounts?|servers?|switch|sw|ap)(?![\\p{L}])|\\s|$)";

  /** What announces a secret: long words wherever they stand, short ones as words of their own. */
  static final Pattern PATTERN =
      Pattern.compile(
          "passw(?:or[dt]|d)?s?"
              + "|pass[-_.]?(?:word|phrase|code)s?"
              + "|pwds?"
              + ("|secret(?!ar(?:y|ies|ial|iats?)" + NO_MORE + ")s?")
              + "|communit(?:y|ies)?(?:[-_.]?strings?)?"
              + "|credentials?|creds"
              + "|psks?(?!ill)"
              + "|kennw(?:ort|oerter)?"
              + "|contrase(?:[\u00f1n]as?)?"
              + "|pre[-_.]?shared(?:[-_.]?keys?)?"
              + "|keys?[-_.]?strings?"
              + "|\\p{L}keys?(?==)"
              + ("|(?:api|auth|ssh|wep|wpa|psk|priv|private|shared|pass|licen[cs]e)keys?" + ALONE)
              + ("|" + WORD + "keys?[0-9]{0,3}" + ALONE)
              + ("|" + WORD_ALONE + SHORT + "(?=_" + NO_PLACE + ")")
              + ("|" + WORD + SHORT + "(?=[-_.]" + NO_PLACE + "[^\\s0-9]{0,60}[0-9])")
              + ("|" + WORD + "(?:pins?|passe|md5|hash|token)" + ALONE)
              + ("|" + WORD + "(?<!by[-_ ])pass" + ALONE)
              + "(?!\\s+(?:through|thru|by|over|under|along|on|office|gate|door|desk|room)"
              + (NO_MORE + ")")
              + ("|pws?[0-9]{0,3}" + NO_MORE),
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  /** Every announcer holds one of these. */
  private static final List<String> HINTS =
      List.of(
          "pass",
          "pwd",
          "pw",
          "pin",
          "pre",
          "psk",
          "secret",
          "key",
          "kennw",
          "communit",
          "contrase",
          "cred",
          "md5",
          "hash",
          "token");

  private Announcers() {}

  /** Says whether one may begin in this piece of a text. */
  static boolean mayBegin(String text, int begin, int end) {
    for (int at = begin; at + 2 <= end; at++) {
      switch (text.charAt(at)) {
        case 'p', 'P', 's', 'S', 'k', 'K', 'c', 'C', 'm', 'M', 'h', 'H', 't', 'T' -> {
          for (String hint : HINTS) {
            if (text.regionMatches(true, at, hint, 0, hint.length())) {
              return true;
            }
          }
        }
        default -> {}
      }
    }
    return false;
  }
}
