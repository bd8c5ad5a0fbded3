package plumbline.syntax;

import java.util.List;
import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.syntax.SwitchSplitter.Part;
import plumbline.text.Secrets;

/**
 * Cuts the lines of one switch into statements and tells the block of each: by indentation, and by
 * what a statement can belong to where there is none.
 */
final class Cutter {
  private final ScannedLines scan;
  private final CleanLines lines;
  private final Reader reader;
  private final boolean flat;
  private final int end;
  private final StatementList out;
  private Block block = Block.top();
  private Block left = Block.top();
  private int lastStatement = -1;
  private int lastLine = -1;
  private boolean afterLog;

  private Cutter(ScannedLines scan, Part part, Reader reader, boolean flat) {
    this.scan = scan;
    this.lines = scan.lines();
    this.reader = reader;
    this.flat = flat;
    this.end = part.end();
    this.out = new StatementList(lines.lines());
  }

  /**
   * The statements of one switch.
   *
   * @param statements in order; every line is in exactly one
   * @param openLine header of the block that the text stops in; else its last statement, counted
   *     from 0
   */
  record Cut(List<Statement> statements, int openLine) {}

  /** Cuts one part; {@code flat} where indentation tells nothing in it. */
  static Cut cut(ScannedLines scan, Part part, Reader reader, boolean flat) {
    Cutter cutter = new Cutter(scan, part, reader, flat);
    for (int line = part.first(); line < part.end(); line++) {
      cutter.take(line);
    }
    int open = cutter.block.isOpen() ? cutter.block.header() : cutter.lastLine;
    return new Cut(cutter.out.toList(), Math.max(part.first(), open));
  }

  private void take(int line) {
    LineKind kind = scan.kind(line);
    lastLine = kind.isStatement() ? line : lastLine;
    switch (kind) {
      case STATEMENT -> statement(line);
      case GARBLED -> garbled(line);
      case NAME -> {
        String name = "hostname " + scan.name(line);
        out.add(reader.read(Context.TOP, name), Context.TOP, line, lines.column(line, 0));
      }
      case COMMENT -> {
        block.comment(lines.indent(line));
        out.layout(kind.layout(), block.layoutContext(), line);
      }
      case BLANK, BANNER, BLOB, NOISE -> out.layout(kind.layout(), block.layoutContext(), line);
      case LOG -> log(line);
    }
    if (kind != LineKind.BLANK) {
      afterLog = kind == LineKind.LOG || kind == LineKind.GARBLED;
    }
  }

  private void statement(int line) {
    String text = scan.statement(line);
    int indent = lines.indent(line);
    Optional<Prompt> prompt = scan.prompt(line).filter(Prompt::takesStatements);
    if (prompt.isEmpty() && isWrapped(line, text)) {
      wrapped(line, text);
    } else if (afterLog && isFragment(text, indent)) {
      fragment(line, text);
    } else if (prompt.isPresent()) {
      prompted(line, text, prompt.get().context());
    } else if (block.isTop()) {
      outside(line, text, indent);
    } else if (lines.unsureIndent(line)) {
      byKnowledge(line, text, block.indent(), true);
    } else if (indent > block.indent()) {
      block.deeper();
      inside(line, text, indent);
    } else if (block.isIndented()) {
      leave(line, text, indent);
    } else {
      byKnowledge(line, text, indent, flat);
    }
  }

  private void emit(Meaning meaning, Context context, int line) {
    out.add(meaning, context, line, scan.column(line));
    lastStatement = out.size() - 1;
  }

  private void unread(int line) {
    out.unread(block.unread(), line, scan.column(line));
    lastStatement = out.size() - 1;
  }

  /** Closes the block by a statement that stands beside it. */
  private void leave(int line, String text, int indent) {
    Meaning meaning = reader.read(Context.TOP, text);
    if (meaning.command() instanceof Command.Exit) {
      emit(meaning, block.context(), line);
      left = block;
      block = Block.top();
      return;
    }
    if (isForeign(line, meaning)) {
      foreign(line, text, meaning);
      return;
    }
    block = Block.top();
    outside(line, text, indent);
  }

  /**
   * Says whether a line beside a port's lines is no header, for lines of a port stand below it: a
   * piece of wrapped text, another line that does not belong here, or a header that is lost.
   */
  private boolean isForeign(int line, Meaning top) {
    return block.context() == Context.PORT
        && !flat
        && !block.isSealed()
        && (Reader.isUnknown(top) || Reader.opensNothing(top))
        && !Reader.isLostHeader(top)
        && holdsPortLines(line);
  }

  private boolean holdsPortLines(int header) {
    for (int line = header + 1; line < end; line++) {
      if (!scan.kind(line).isStatement()) {
        continue;
      }
      if (lines.indent(line) <= block.indent() || scan.prompt(line).isPresent()) {
        return false;
      }
      if (reader.isOfPortsAlone(scan.statement(line))) {
        return true;
      }
    }
    return false;
  }

  /** Keeps the port open: it, or the one whose header is lost, is in doubt from here on. */
  private void foreign(int line, String text, Meaning top) {
    if (Reader.isFact(top)) {
      // It counts for the switch; the lines below it are still nobody's for sure.
      emit(top, Context.TOP, line);
      return;
    }
    emit(Reader.lostHeader(text, top), Context.PORT, line);
  }

  /**
   * Says whether a line is the rest of a list that a terminal wrapped: numbers alone, which no
   * statement of a port is.
   */
  private boolean isWrapped(int line, String text) {
    return block.context() == Context.PORT
        && lastStatement >= 0
        && out.get(lastStatement).context() == Context.PORT
        && Shapes.isListPiece(text)
        && isRightBelow(out.get(lastStatement), line)
        && (Reader.isPortFact(out.get(lastStatement).meaning())
            || Shapes.endsInsideList(scan.statement(line - 1)));
  }

  private boolean isRightBelow(Statement above, int line) {
    int at = line - 1;
    while (at >= 0 && !scan.kind(at).isStatement()) {
      at--;
    }
    return at >= 0 && lines.lines().number(at) == above.lastLine();
  }

  private void wrapped(int line, String text) {
    Statement above = out.get(lastStatement);
    String begun = scan.statement(above.line() - 1);
    Meaning joined = reader.read(Context.PORT, begun + text);
    if (Shapes.endsInsideList(begun)
        && above.line() == above.lastLine()
        && Reader.isPortFact(joined)) {
      out.extend(lastStatement, joined, line);
      return;
    }
    if (!Reader.isUnknown(above.meaning())) {
      out.doubt(lastStatement, Reader.doubtful(above.meaning()));
    }
    emit(reader.garbled(Context.PORT, text), Context.PORT, line);
  }

  private void outside(int line, String text, int indent) {
    Meaning meaning = reader.read(Context.TOP, text);
    if (!left.isTop() && indent > left.indent() && Reader.isUnknown(meaning)) {
      // The block was closed too early: this line is indented as its lines are.
      block = left;
      block.deeper();
      inside(line, text, indent);
      return;
    }
    left = Block.top();
    emit(meaning, Context.TOP, line);
    block = Reader.opened(meaning, indent, line);
  }

  /** A line deeper than the header of the open block. */
  private void inside(int line, String text, int indent) {
    Context context = block.context();
    if (context == Context.OTHER) {
      unread(line);
      return;
    }
    if (block.isInGroup(indent)) {
      emit(grouped(text), context, line);
      return;
    }
    Meaning meaning = reader.read(context, text);
    if (block.isBelowParent(indent)) {
      belowParent(line, meaning);
      return;
    }
    if (Reader.isUnknown(meaning)) {
      Meaning top = reader.read(Context.TOP, text);
      if (Reader.opensPorts(top) || top.command() instanceof Command.End) {
        leave(line, text, indent);
        return;
      }
    }
    emit(meaning, context, line);
    noteHeader(meaning, text, indent);
  }

  private void noteHeader(Meaning meaning, String text, int indent) {
    Optional<String> group =
        block.context() == Context.PORT ? Reader.groupHeader(text) : Optional.empty();
    if (group.isPresent()) {
      block.group(group.get(), indent);
    } else if (Reader.isUnknown(meaning) || Reader.isHarmless(meaning)) {
      block.parent(indent);
    }
  }

  private Meaning grouped(String text) {
    // "exit-vrrp" and the like only close the group.
    return text.startsWith("exit")
        ? reader.read(Context.TOP, "exit")
        : reader.read(block.context(), Reader.joined(block.group(), text));
  }

  /** A line under a line that is not read: a fact here may be about something else. */
  private void belowParent(int line, Meaning meaning) {
    if (Reader.isUnknown(meaning) || Reader.isHarmless(meaning)) {
      out.unread(StatementList.harmless(""), line, scan.column(line));
      lastStatement = out.size() - 1;
    } else {
      emit(Reader.doubtful(meaning), block.context(), line);
    }
  }

  /** A line no deeper than the header of a block that has no deeper line. */
  private void byKnowledge(int line, String text, int indent, boolean pasted) {
    Context context = block.context();
    Meaning top = reader.read(Context.TOP, text);
    if (top.command() instanceof Command.Exit || top.command() instanceof Command.End) {
      leave(line, text, indent);
      return;
    }
    if (context == Context.OTHER) {
      if (pasted && !block.isWeak() && !Reader.isFact(top) && !isOtherHeader(top)) {
        unread(line);
      } else {
        leave(line, text, indent);
      }
      return;
    }
    Meaning inner = reader.read(context, text);
    if (pasted && !block.group().isEmpty() && !Reader.isPortFact(inner)) {
      Meaning grouped = reader.read(context, Reader.joined(block.group(), text));
      if (Reader.isPortFact(grouped)) {
        emit(grouped, context, line);
        return;
      }
    }
    if (Reader.isUnknown(inner)) {
      unknownInside(line, text, indent, pasted, inner, top);
      return;
    }
    // A line without bearing at top level, right below the header, is more likely the block's.
    boolean known = !Reader.isUnknown(top) && (!Reader.isHarmless(top) || block.isCommented());
    boolean open = pasted || context == Context.VLAN_DATABASE || !known;
    if (open && !(Reader.isHarmless(inner) && Reader.isFact(top))) {
      emit(inner, context, line);
      block.taken();
      noteGroup(text, indent);
    } else {
      leave(line, text, indent);
    }
  }

  private void noteGroup(String text, int indent) {
    if (block.context() == Context.PORT) {
      Reader.groupHeader(text).ifPresent(group -> block.group(group, indent));
    }
  }

  private static boolean isOtherHeader(Meaning top) {
    return top.command() instanceof SwitchCommand.OtherBlock;
  }

  private void unknownInside(
      int line, String text, int indent, boolean pasted, Meaning inner, Meaning top) {
    if (pasted && Reader.isUnknown(top) && !Reader.isLostHeader(top)) {
      emit(inner, block.context(), line);
    } else {
      leave(line, text, indent);
    }
  }

  /** A statement typed at a prompt, which shows the kind of block that is open. */
  private void prompted(int line, String text, Context context) {
    if (context == Context.TOP) {
      left = Block.top();
      block = Block.top();
      outside(line, text, 0);
    } else if (context == block.context()) {
      byKnowledge(line, text, 0, true);
    } else if (context == Context.OTHER) {
      emit(StatementList.harmless(""), Context.OTHER, line);
    } else if (Reader.isUnknown(reader.read(context, text))) {
      leave(line, text, 0);
    } else {
      // The session began inside a block whose header is not in this text.
      emit(Reader.doubtful(reader.read(context, text)), Context.TOP, line);
    }
  }

  /** A log message; one that took a header with it leaves lines that belong to no known block. */
  private void log(int line) {
    if (!block.isSealed() || !isDeeperBelow(line)) {
      out.layout(LineKind.LOG.layout(), block.layoutContext(), line);
      return;
    }
    String word = Secrets.mask(Reader.firstWord(scan.statement(line)));
    Command lost = new Command.Unknown(word, List.of("interface"));
    emit(new Meaning(Form.SET, lost, word), Context.TOP, line);
    lastLine = line;
    block = Block.unread("", block.indent(), line);
  }

  /** Says whether the next statement is deeper than the header of the block that was closed. */
  private boolean isDeeperBelow(int line) {
    int below = line + 1;
    while (below < end
        && (scan.kind(below) == LineKind.BLANK || scan.kind(below) == LineKind.LOG)) {
      below++;
    }
    return below < end
        && scan.kind(below) == LineKind.STATEMENT
        && scan.prompt(below).isEmpty()
        && !lines.unsureIndent(below)
        && lines.indent(below) > block.indent();
  }

  private void garbled(int line) {
    String text = scan.statement(line);
    Meaning top = reader.garbled(Context.TOP, text);
    String word = EndUserCommand.word(text, 0);
    boolean header =
        "interface".startsWith(word.substring(0, Math.min(3, word.length())))
            || Shapes.isVlanHeader(text);
    boolean beside =
        !block.isTop() && !flat && lines.indent(line) <= block.indent() && scan.column(line) == 1;
    if (block.isTop() || beside || header || Reader.isLostHeader(top)) {
      emit(top, Context.TOP, line);
      block = Block.unread("", lines.indent(line), line);
    } else if (block.context() == Context.OTHER) {
      unread(line);
    } else {
      emit(reader.garbled(block.context(), text), block.context(), line);
    }
  }

  /** Says whether a line is the rest of a statement that a log message cut in two. */
  private boolean isFragment(String text, int indent) {
    if (lastStatement < 0) {
      return false;
    }
    if (!Character.isLetter(text.charAt(0))) {
      return true;
    }
    return indent == 0
        && !flat
        && block.context() != Context.OTHER
        && !isKnownStart(Context.TOP, text)
        && !isKnownStart(block.context(), text);
  }

  private boolean isKnownStart(Context context, String text) {
    return !(reader.read(context, text).command() instanceof Command.Unknown unknown)
        || !unknown.understood().isEmpty();
  }

  private void fragment(int line, String text) {
    Statement cut = out.get(lastStatement);
    if (!Reader.isUnknown(cut.meaning()) && cut.context() != Context.OTHER) {
      out.doubt(lastStatement, Reader.doubtful(cut.meaning()));
      if (!block.isTop() && cut.line() == lines.lines().number(block.header())) {
        block = Block.unread("", block.indent(), block.header());
      }
    }
    Context context = block.context();
    if (context == Context.OTHER) {
      unread(line);
    } else {
      emit(reader.garbled(context, text), context, line);
    }
  }
}
