package plumbline.syntax;

import java.util.List;
import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.syntax.SwitchSplitter.Part;

/**
 * Cuts the lines of one switch into statements and tells the block of each: by indentation, and by
 * what a statement can belong to where there is none.
 */
final class Cutter {
  private final ScannedLines scan;
  private final CleanLines lines;
  private final Reader reader;
  private final boolean flat;
  private final Cutting out;
  private final WrappedLists wrapped;
  private final LogScars scars;
  private final ForeignLines foreign;
  private Block block = Block.top();
  private Block left = Block.top();
  private boolean afterLog;

  private Cutter(ScannedLines scan, Part part, Reader reader, boolean flat) {
    this.scan = scan;
    this.lines = scan.lines();
    this.reader = reader;
    this.flat = flat;
    this.out = new Cutting(scan);
    this.wrapped = new WrappedLists(scan, reader, out);
    this.scars = new LogScars(scan, part, reader, flat, out);
    this.foreign = new ForeignLines(scan, part, reader, out);
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
    int open = cutter.block.isOpen() ? cutter.block.header() : cutter.out.lastLine();
    return new Cut(cutter.out.list().toList(), Math.max(part.first(), open));
  }

  private void take(int line) {
    LineKind kind = scan.kind(line);
    if (kind.isStatement()) {
      out.reach(line);
    }
    switch (kind) {
      case STATEMENT -> statement(line);
      case GARBLED -> block = scars.garbled(line, block);
      case NAME -> {
        String name = "hostname " + scan.name(line);
        out.name(reader.read(Context.TOP, name), line);
      }
      case COMMENT -> {
        block.comment(lines.indent(line));
        out.layout(kind.layout(), block.layoutContext(), line);
      }
      case BLANK, BANNER, BLOB, NOISE -> out.layout(kind.layout(), block.layoutContext(), line);
      case LOG -> block = scars.log(line, block);
    }
    if (kind != LineKind.BLANK) {
      afterLog = kind == LineKind.LOG || kind == LineKind.GARBLED;
    }
  }

  private void statement(int line) {
    String text = scan.statement(line);
    int indent = lines.indent(line);
    Optional<Prompt> prompt = scan.prompt(line).filter(Prompt::takesStatements);
    if (prompt.isEmpty() && wrapped.holds(line, text, block)) {
      wrapped.join(line, text);
    } else if (afterLog && scars.isFragment(text, indent, block)) {
      block = scars.fragment(line, text, block);
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

  /** Closes the block by a statement that stands beside it. */
  private void leave(int line, String text, int indent) {
    Meaning meaning = reader.read(Context.TOP, text);
    if (meaning.command() instanceof Command.Exit) {
      out.emit(meaning, block.context(), line);
      left = block;
      block = Block.top();
      return;
    }
    if (!flat && foreign.holds(line, meaning, block)) {
      foreign.take(line, text, meaning);
      return;
    }
    block = Block.top();
    outside(line, text, indent);
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
    out.emit(meaning, Context.TOP, line);
    block = Reader.opened(meaning, indent, line);
  }

  /** A line deeper than the header of the open block. */
  private void inside(int line, String text, int indent) {
    Context context = block.context();
    if (context == Context.OTHER) {
      out.unread(block.unread(), line);
      return;
    }
    if (block.isInGroup(indent)) {
      out.emit(grouped(text), context, line);
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
    out.emit(meaning, context, line);
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
      out.unread(StatementList.harmless(""), line);
    } else {
      out.emit(Reader.doubtful(meaning), block.context(), line);
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
        out.unread(block.unread(), line);
      } else {
        leave(line, text, indent);
      }
      return;
    }
    Meaning inner = reader.read(context, text);
    if (pasted && !block.group().isEmpty() && !Reader.isPortFact(inner)) {
      Meaning grouped = reader.read(context, Reader.joined(block.group(), text));
      if (Reader.isPortFact(grouped)) {
        out.emit(grouped, context, line);
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
      out.emit(inner, context, line);
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
      out.emit(inner, block.context(), line);
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
      out.emit(StatementList.harmless(""), Context.OTHER, line);
    } else if (Reader.isUnknown(reader.read(context, text))) {
      leave(line, text, 0);
    } else {
      // The session began inside a block whose header is not in this text.
      out.emit(Reader.doubtful(reader.read(context, text)), Context.TOP, line);
    }
  }
}
