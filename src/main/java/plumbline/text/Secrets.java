package plumbline.text;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Masks what may be a secret in text taken from a config: the token after a word such as {@code
 * password}, and everything that has the form of a hash, a key or an encoded password (forms:
 * common practice, no source). Rather too much is masked than too little.
 */
public final class Secrets {
  /** What stands in place of a secret. */
  public static final String MASK = "***";

  private static final Set<String> ANNOUNCERS =
      Set.of(
          "password",
          "passwd",
          "passphrase",
          "pass",
          "pwd",
          "pw",
          "secret",
          "key",
          "key-string",
          "keystring",
          "community",
          "psk",
          "pre-shared-key",
          "shared-secret",
          "md5",
          "hash",
          "token",
          "credential");

  /** Words that may stand between an announcer and its secret. */
  private static final Set<String> LINKS =
      Set.of("is", "was", "=", ":", "->", "ascii", "hex", "encrypted", "clear", "sha512", "sha256");

  /** Every announcer holds one of these. */
  private static final List<String> HINTS =
      List.of(
          "pass",
          "pwd",
          "pw",
          "secret",
          "key",
          "community",
          "psk",
          "md5",
          "hash",
          "token",
          "credential");

  /** Shorter words have the form of no hash and no key. */
  private static final int SHORTEST_SECRET = 16;

  private static final int SHORTEST_ENCODED = 6;

  /** No word of a config that people read is longer. */
  private static final int LONGEST_WORD = 240;

  private static final Pattern TOKEN = Pattern.compile("\\S+");
  private static final Pattern ANNOUNCED =
      Pattern.compile(
          "(?i)(?<before>.*?\\b(?:password|passwd|passphrase|pwd|pw|secret|key|key-string|community"
              + "|psk|pass|token)[\"')\\]]*[=:/])(?<secret>.+)");
  private static final Pattern TYPE_DIGIT = Pattern.compile("[0-9]");
  private static final Pattern CRYPT = Pattern.compile("\\$[0-9A-Za-z_.-]{1,12}\\$\\S+");
  private static final Pattern LONG_HEX =
      Pattern.compile("(?i)(?:0x)?[0-9a-f]{16,}|(?:[0-9a-f]{2}:){15,}[0-9a-f]{2}");

  /** An encoding in use begins with a two-digit start value from 00 to 15. */
  private static final Pattern ENCODED =
      Pattern.compile("(?i)(?:0[0-9]|1[0-5])(?:[0-9a-f]{2}){2,}");

  private static final Pattern LONG_MIX = Pattern.compile("[A-Za-z0-9+/=_.-]{20,}");

  /** Words and a number path, such as a port's name. */
  private static final Pattern READABLE =
      Pattern.compile("(?:[A-Za-z]+[0-9]*[-_:/.])*[A-Za-z][A-Za-z-]*[0-9]+(?:[/.:][0-9]+)*");

  private static final String QUOTES = "\"'()[]{}<>,;";

  private Secrets() {}

  /** The text with every possible secret replaced by {@link #MASK}; blanks are kept. */
  public static String mask(String text) {
    return isPlain(text) ? text : maskTokens(text);
  }

  /**
   * A quick look that finds nearly all texts harmless: nothing in them can be announced, glued to
   * an announcer, or long and odd enough for a secret.
   */
  static boolean isPlain(String text) {
    boolean digit = false;
    int at = 0;
    while (at < text.length()) {
      while (at < text.length() && isBlank(text.charAt(at))) {
        at++;
      }
      int begin = at;
      while (at < text.length() && !isBlank(text.charAt(at))) {
        char c = text.charAt(at);
        if (c == '$' || c == '=' || c == ':' || c < ' ' || c > '~') {
          return false;
        }
        at++;
      }
      if (at - begin >= SHORTEST_SECRET || mayAnnounce(text, begin, at)) {
        return false;
      }
      // An encoded password follows a digit that tells its kind.
      if (digit && at - begin >= SHORTEST_ENCODED) {
        return false;
      }
      digit = at - begin == 1 && text.charAt(begin) >= '0' && text.charAt(begin) <= '9';
    }
    return true;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }

  private static boolean mayAnnounce(String text, int begin, int end) {
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

  static String maskTokens(String text) {
    StringBuilder masked = new StringBuilder(text.length());
    Matcher tokens = TOKEN.matcher(text);
    boolean expected = false;
    boolean typed = false;
    while (tokens.find()) {
      String token = tokens.group();
      String bare = bare(token);
      String shown;
      if (expected && (LINKS.contains(bare) || isTypeDigit(token))) {
        shown = token;
      } else if (expected || looksSecret(token) || (typed && ENCODED.matcher(bare).matches())) {
        shown = MASK;
        expected = false;
      } else {
        shown = maskGlued(token);
        expected = announces(bare);
      }
      typed = isTypeDigit(token);
      tokens.appendReplacement(masked, Matcher.quoteReplacement(shown));
    }
    tokens.appendTail(masked);
    return masked.toString();
  }

  /** Says whether one token has, as a whole or within quotes, the form of a hash or key. */
  public static boolean looksSecret(String token) {
    String inner = strip(token);
    if (inner.length() > LONGEST_WORD) {
      return true;
    }
    return CRYPT.matcher(inner).find()
        || LONG_HEX.matcher(inner).matches()
        || (LONG_MIX.matcher(inner).matches()
            && isMixed(inner)
            && !READABLE.matcher(inner).matches());
  }

  private static boolean announces(String bare) {
    String word =
        bare.endsWith(":") || bare.endsWith("=") ? bare.substring(0, bare.length() - 1) : bare;
    return ANNOUNCERS.contains(strip(word));
  }

  private static String maskGlued(String token) {
    if (token.length() > LONGEST_WORD) {
      return MASK;
    }
    Matcher glued = ANNOUNCED.matcher(token);
    return glued.matches() ? glued.group("before") + MASK : token;
  }

  private static boolean isTypeDigit(String token) {
    return TYPE_DIGIT.matcher(token).matches();
  }

  /** Upper case, lower case and digits in one long token without a readable separator. */
  private static boolean isMixed(String token) {
    boolean upper = false;
    boolean lower = false;
    boolean digit = false;
    int run = 0;
    int longestRun = 0;
    for (int i = 0; i < token.length(); i++) {
      char c = token.charAt(i);
      upper |= c >= 'A' && c <= 'Z';
      lower |= c >= 'a' && c <= 'z';
      digit |= c >= '0' && c <= '9';
      run = c == '-' || c == '_' || c == '.' ? 0 : run + 1;
      longestRun = Math.max(longestRun, run);
    }
    return upper && lower && digit && longestRun >= 20;
  }

  private static String bare(String token) {
    return strip(token).toLowerCase(Locale.ROOT);
  }

  private static String strip(String token) {
    int from = 0;
    int to = token.length();
    while (from < to && QUOTES.indexOf(token.charAt(from)) >= 0) {
      from++;
    }
    while (to > from && QUOTES.indexOf(token.charAt(to - 1)) >= 0) {
      to--;
    }
    return token.substring(from, to);
  }
}
