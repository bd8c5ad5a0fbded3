package plumbline.text;

import java.text.Normalizer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Masks what may be a secret in text taken from a config: everything after a word such as {@code
 * password}, and every token that has the form of a hash, a key or an encoded password (forms:
 * common practice, no source). Rather too much is masked than too little.
 */
public final class Secrets {
  /** What stands in place of a secret. */
  public static final String MASK = "***";

  /**
   * The password of a user in an address, with a scheme or without, up to the last sign that can
   * end it. Longer words are masked as a whole, so that the bound only keeps hostile text from
   * taking long.
   */
  private static final Pattern IN_ADDRESS =
      Pattern.compile(
          "(://[^/\\s:@]*:"
              + "|(?<![\\p{L}\\p{N}_.:/+-])(?!(?:mailto|sips?|xmpp|e-?mail|mail|contact):)"
              + "\\p{L}[\\p{L}\\p{N}_.+-]{0,63}:(?!//)(?=\\S{1,240}@[\\p{L}\\p{N}\\[]))"
              + "\\S{1,240}@",
          Pattern.CASE_INSENSITIVE);

  /** Shorter words have the form of no hash and no key. */
  private static final int SHORTEST_SECRET = 16;

  private static final int SHORTEST_ENCODED = 6;

  /** No word of a config that people read is longer. */
  private static final int LONGEST_WORD = 240;

  private static final Pattern TOKEN = Pattern.compile("\\S+");
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

  /** Characters that nobody sees, blanks aside. */
  private static final Pattern UNSEEN =
      Pattern.compile(
          "[\\p{C}\\x{2028}\\x{2029}\\x{34f}\\x{115f}\\x{1160}\\x{17b4}\\x{17b5}\\x{180b}-\\x{180f}"
              + "\\x{fe00}-\\x{fe0f}\\x{e0100}-\\x{e01ef}&&[^\\s]]");

  /** A sign between an announcer and its secret is no longer, as {@code :=}. */
  private static final int LONGEST_SIGN = 2;

  private static final String SIGNS = "=:;,./|_-!?#~>(\"')]}";

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
      if (at - begin >= SHORTEST_SECRET || Announcers.mayBegin(text, begin, at)) {
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

  /** Says whether a word, such as a key of a map, announces that what it names is secret. */
  public static boolean announces(String word) {
    return Announcers.PATTERN.matcher(normal(word, "")).find();
  }

  static String maskTokens(String text) {
    String joined = normal(text, "");
    String parted = normal(text, " ");
    String first = maskNormal(joined);
    if (parted.equals(joined)) {
      return first.equals(joined) ? text : first;
    }
    // An invisible character may stand within the announcer, or between it and the secret.
    String second = maskNormal(parted);
    if (second.equals(parted)) {
      return first.equals(joined) ? text : first;
    }
    return first.equals(joined) || second.length() < first.length() ? second : first;
  }

  /** The text with letters in their common form, something else in place of what is unseen. */
  private static String normal(String text, String unseen) {
    if (text.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      return text;
    }
    return Normalizer.normalize(
        UNSEEN.matcher(Normalizer.normalize(text, Normalizer.Form.NFKC)).replaceAll(unseen),
        Normalizer.Form.NFKC);
  }

  private static String maskNormal(String original) {
    String text = IN_ADDRESS.matcher(original).replaceAll("$1***@");
    Matcher announcer = Announcers.PATTERN.matcher(text);
    int announced = announcer.find() ? announcer.end() : Integer.MAX_VALUE;
    StringBuilder masked = new StringBuilder(text.length());
    Matcher tokens = TOKEN.matcher(text);
    boolean typed = false;
    int shown = 0;
    while (tokens.find()) {
      String token = tokens.group();
      masked.append(text, shown, tokens.start());
      shown = tokens.end();
      boolean secret = looksSecret(token) || (typed && ENCODED.matcher(strip(token)).matches());
      if (announced <= tokens.end()) {
        masked.append(secret ? MASK : announcement(text, tokens.start(), announced, tokens.end()));
        return masked.toString();
      }
      masked.append(secret ? MASK : token);
      typed = isTypeDigit(token);
    }
    return masked.append(text, shown, text.length()).toString();
  }

  /** The token with an announcer, and one mask for all that follows the announcer. */
  private static String announcement(String text, int begin, int announced, int end) {
    int value = announced;
    while (value < end && value < announced + LONGEST_SIGN && isSign(text.charAt(value))) {
      value++;
    }
    while (value >= end && value < text.length() && Character.isWhitespace(text.charAt(value))) {
      value++;
    }
    if (value == text.length()) {
      return text.substring(begin);
    }
    String shown = text.substring(begin, value) + MASK;
    return value < end && value - begin + MASK.length() > LONGEST_WORD ? MASK : shown;
  }

  private static boolean isSign(char c) {
    return SIGNS.indexOf(c) >= 0;
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
