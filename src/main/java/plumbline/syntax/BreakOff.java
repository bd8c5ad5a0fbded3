package plumbline.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Statement;
import plumbline.statement.SwitchText.Truncation;
import plumbline.syntax.SwitchSplitter.Part;

/** Finds where the text of one switch breaks off, and by what that is seen. */
final class BreakOff {
  /** A text is clearly shorter than promised by more bytes than this, and by more than 2 %. */
  private static final long MARGIN = 64;

  private static final int MARGIN_PART = 50;

  private final ScannedLines scan;
  private final MarkedPart marked;
  private final Part part;
  private final StatementSource source;

  BreakOff(ScannedLines scan, MarkedPart marked, StatementSource source) {
    this.scan = scan;
    this.marked = marked;
    this.part = marked.part();
    this.source = source;
  }

  /**
   * Where the text breaks off. Clearly shorter than its size line promises is: by more than 64
   * bytes and more than 2 %, each line end counted as two bytes because copies change them.
   */
  Optional<Truncation> of(Cutter.Cut cut) {
    List<Truncation> found = new ArrayList<>();
    marked.marks().stream()
        .filter(mark -> mark.kind() == Mark.Kind.OPEN_BANNER)
        .findFirst()
        .ifPresent(mark -> found.add(at(mark.line(), "a banner never closes")));
    int open = cut.openLine();
    missingBytes().ifPresent(why -> found.add(at(open, why)));
    if (!marked.ends()) {
      if (marked.has(Mark.Kind.OPEN_BLOB)) {
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
    if (marked.has(Mark.Kind.END)) {
      return false;
    }
    return marked.has(Mark.Kind.START_OF_ENDING)
        || (!marked.has(Mark.Kind.START) && showsCampusPart());
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
    for (int line = marked.lastStatement() + 1; line < part.end(); line++) {
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
    int line = marked.lastStatement();
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
    for (Mark mark : marked.marks()) {
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
        marked.marks().stream()
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
