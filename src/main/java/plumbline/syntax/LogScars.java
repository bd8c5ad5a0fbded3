package plumbline.syntax;

import java.util.List;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;
import plumbline.syntax.SwitchSplitter.Part;
import plumbline.text.Secrets;

/**
 * Takes the lines that log messages leave in a config: the messages, lines glued to one, and the
 * rest of a statement that one cut in two. Each tells which block is open behind the line.
 */
final class LogScars {
  private final ScannedLines scan;
  private final CleanLines lines;
  private final Part part;
  private final Reader reader;
  private final boolean flat;
  private final Cutting out;

  LogScars(ScannedLines scan, Part part, Reader reader, boolean flat, Cutting out) {
    this.scan = scan;
    this.lines = scan.lines();
    this.part = part;
    this.reader = reader;
    this.flat = flat;
    this.out = out;
  }

  /** A log message; one that took a header with it leaves lines that belong to no known block. */
  Block log(int line, Block block) {
    if (!block.isSealed() || !isDeeperBelow(line, block)) {
      out.layout(LineKind.LOG.layout(), block.layoutContext(), line);
      return block;
    }
    String word = Secrets.mask(Reader.firstWord(scan.statement(line)));
    Command lost = new Command.Unknown(word, List.of("interface"));
    out.emit(new Meaning(Form.SET, lost, word), Context.TOP, line);
    out.reach(line);
    return Block.unread("", block.indent(), line);
  }

  /** Says whether the next statement is deeper than the header of the block that was closed. */
  private boolean isDeeperBelow(int line, Block block) {
    int below = line + 1;
    while (below < part.end()
        && (scan.kind(below) == LineKind.BLANK || scan.kind(below) == LineKind.LOG)) {
      below++;
    }
    return below < part.end()
        && scan.kind(below) == LineKind.STATEMENT
        && scan.prompt(below).isEmpty()
        && !lines.unsureIndent(below)
        && lines.indent(below) > block.indent();
  }

  /** A line that a log message is glued to. */
  Block garbled(int line, Block block) {
    String text = scan.statement(line);
    Meaning top = reader.garbled(Context.TOP, text);
    String word = EndUserCommand.word(text, 0);
    boolean header =
        "interface".startsWith(word.substring(0, Math.min(3, word.length())))
            || Shapes.isVlanHeader(text);
    boolean beside =
        !block.isTop() && !flat && lines.indent(line) <= block.indent() && scan.column(line) == 1;
    if (block.isTop() || beside || header || Reader.isLostHeader(top)) {
      out.emit(top, Context.TOP, line);
      return Block.unread("", lines.indent(line), line);
    }
    if (block.context() == Context.OTHER) {
      out.unread(block.unread(), line);
    } else {
      out.emit(reader.garbled(block.context(), text), block.context(), line);
    }
    return block;
  }

  /** Says whether a line below a log message is the rest of a statement that it cut in two. */
  boolean isFragment(String text, int indent, Block block) {
    if (!out.hasStatement()) {
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

  /** The rest of a statement: both parts of it are in doubt. */
  Block fragment(int line, String text, Block block) {
    Statement cut = out.lastStatement();
    Block open = block;
    if (!Reader.isUnknown(cut.meaning()) && cut.context() != Context.OTHER) {
      out.doubtLast();
      if (!block.isTop() && cut.line() == lines.lines().number(block.header())) {
        open = Block.unread("", block.indent(), block.header());
      }
    }
    if (open.context() == Context.OTHER) {
      out.unread(open.unread(), line);
    } else {
      out.emit(reader.garbled(open.context(), text), open.context(), line);
    }
    return open;
  }
}
