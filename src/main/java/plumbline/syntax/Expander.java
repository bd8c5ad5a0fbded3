package plumbline.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import plumbline.statement.Context;

/**
 * Writes the keywords of a statement in full. At each word the grammar says which keywords can
 * stand there: an exact match wins, else a prefix of one only, else the word is an operand. Drops
 * comments that trail a statement and what a web page left at its end.
 */
final class Expander {
  /** A request for help, left in a capture: never an operand. */
  private static final String HOLE = "?";

  private static final String OMISSION = " ...";
  private static final List<String> PAGE_BREAKS = List.of("<br>", "<br/>", "<br />");

  /** Lists up to this length are given to the lexer as they are. */
  private static final int LONGEST_SEEN_WHOLE = 100;

  /** Longer than this is no statement, but data. */
  private static final int LONGEST_WRITTEN = 4_096;

  private final Keywords allKeywords;

  Expander(Keywords allKeywords) {
    this.allKeywords = allKeywords;
  }

  /**
   * What became of a statement's text.
   *
   * @param text keywords in full, operands as written, blanks single but in long lists; as far as
   *     it fits
   * @param abbreviated whether a keyword in it is not written in full
   * @param source the same words as written
   * @param prefix {@code no}, {@code default} or empty
   * @param firstWord the first word behind the prefix, as written; may be empty
   * @param keywords the keywords in full that lead the statement up to its first operand
   * @param candidates the keywords, sorted, of which the word behind those is an abbreviation, if
   *     several are
   * @param shown what the statement shows when every operand is left out that may be any word
   * @param freeText the free text that its only keyword governs
   * @param fits whether the grammar takes the whole text
   */
  record Expansion(
      String text,
      boolean abbreviated,
      String source,
      String prefix,
      String firstWord,
      List<String> keywords,
      List<String> candidates,
      String shown,
      Optional<String> freeText,
      boolean fits) {}

  /** The statement without line ends and without what a web page left at its end. */
  static String clean(String raw) {
    String line = raw.replace('\n', ' ').replace('\r', ' ').strip();
    Optional<String> mark = pageBreak(line);
    while (mark.isPresent()) {
      line = line.substring(0, line.length() - mark.get().length()).strip();
      mark = pageBreak(line);
    }
    return line;
  }

  private static Optional<String> pageBreak(String line) {
    return PAGE_BREAKS.stream()
        .filter(
            mark -> line.regionMatches(true, line.length() - mark.length(), mark, 0, mark.length()))
        .findFirst();
  }

  /** A statement with its keywords in full where the grammar takes it, else as it is. */
  String inFull(Context context, String statement) {
    if (context == Context.OTHER || statement.length() > LONGEST_WRITTEN) {
      return statement;
    }
    Expansion expansion = expand(context, statement);
    return expansion.fits() ? expansion.text() : statement;
  }

  Expansion expand(Context context, String statement) {
    return new Walk(allKeywords.start(context), statement).toEnd();
  }

  /** One walk over one statement. */
  private final class Walk {
    private final String statement;
    private final StringBuilder text = new StringBuilder();
    private final StringBuilder source = new StringBuilder();
    private final List<String> keywords = new ArrayList<>();
    private List<String> candidates = List.of();
    private Keywords.Node node;
    private String prefix = "";
    private String firstWord = "";
    private boolean leading = true;
    private final StringBuilder shown = new StringBuilder();
    private Optional<String> freeText = Optional.empty();
    private boolean open;
    private boolean abbreviated;

    Walk(Keywords.Node start, String statement) {
      this.node = start;
      this.statement = statement;
    }

    Expansion toEnd() {
      int at = 0;
      boolean fits = true;
      while (fits && at < statement.length()) {
        int end = endOfWord(at);
        String word = statement.substring(at, end);
        if (isComment(word) && !source.isEmpty()) {
          break;
        }
        int rest = startOfWord(end);
        int type = step(word);
        fits = type != Token.INVALID_TYPE;
        if (fits && allKeywords.opensFreeText(type) && rest < statement.length()) {
          fits = stepText(statement.substring(rest));
          rest = statement.length();
        }
        at = rest;
      }
      return new Expansion(
          text.toString(),
          abbreviated,
          source.toString(),
          prefix,
          firstWord,
          keywords,
          candidates,
          open ? shown + OMISSION : shown.toString(),
          freeText,
          fits && node.canEnd());
    }

    /** Takes one word; the type of its last token, or the invalid type if it does not fit. */
    private int step(String word) {
      String lower = word.toLowerCase(Locale.ROOT);
      int type = node.keyword(lower);
      boolean first = text.isEmpty();
      if (first && (type == SwitchConfigLexer.NO || type == SwitchConfigLexer.DEFAULT)) {
        prefix = allKeywords.literal(type);
      } else if (firstWord.isEmpty()) {
        firstWord = word;
      }
      if (type == Token.INVALID_TYPE) {
        return stepOperand(word, lower);
      }
      node = node.after(type);
      abbreviated |= !allKeywords.literal(type).equals(lower);
      append(allKeywords.literal(type), word, open);
      if (leading && !(first && !prefix.isEmpty())) {
        keywords.add(allKeywords.literal(type));
      }
      return type;
    }

    private int stepOperand(String word, String lower) {
      int last = Token.INVALID_TYPE;
      boolean named = true;
      String apart = apart(word);
      SwitchConfigLexer lexer = new SwitchConfigLexer(CharStreams.fromString(apart));
      lexer.removeErrorListeners();
      for (Token token = lexer.nextToken();
          token.getType() != Token.EOF;
          token = lexer.nextToken()) {
        last = token.getType();
        if (!node.takes(last)) {
          candidates = leading ? node.candidates(lower) : List.of();
          return Token.INVALID_TYPE;
        }
        named &= node.names(last);
        node = node.after(last);
      }
      leading = false;
      append(apart, word, !named);
      return last;
    }

    private boolean stepText(String rest) {
      if (rest.equals(HOLE) || !node.takes(SwitchConfigLexer.TEXT)) {
        return false;
      }
      node = node.after(SwitchConfigLexer.TEXT);
      leading = false;
      append(rest, rest, true);
      freeText = keywords.size() == 1 ? Optional.of(rest) : Optional.empty();
      return true;
    }

    private void append(String full, String written, boolean isOpen) {
      open |= isOpen;
      if (!text.isEmpty()) {
        text.append(' ');
        source.append(' ');
      }
      text.append(full);
      source.append(written);
      if (!open) {
        shown.append(shown.isEmpty() ? "" : " ").append(isList(full) ? written : full);
      }
    }

    private int endOfWord(int from) {
      int at = from;
      while (at < statement.length() && !isBlank(statement.charAt(at))) {
        at++;
      }
      return at;
    }

    private int startOfWord(int from) {
      int at = from;
      while (at < statement.length() && isBlank(statement.charAt(at))) {
        at++;
      }
      return at;
    }
  }

  /**
   * A long list with a blank behind each comma and dash. The tokens are the same; the lexer, which
   * at each number looks ahead for a word that only begins like a list, looks no further than that.
   */
  private static String apart(String word) {
    return word.length() > LONGEST_SEEN_WHOLE && isList(word)
        ? word.replace(",", ", ").replace("-", "- ")
        : word;
  }

  /** Says whether a text holds nothing but what lists are made of. */
  private static boolean isList(String text) {
    for (int at = 0; at < text.length(); at++) {
      if (" ,-0123456789".indexOf(text.charAt(at)) < 0) {
        return false;
      }
    }
    return true;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }

  private static boolean isComment(String word) {
    return word.charAt(0) == '!' || word.charAt(0) == '#';
  }
}
