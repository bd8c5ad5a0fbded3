package plumbline.syntax;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import plumbline.port.PortNames;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.LineMarks;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;
import plumbline.syntax.SwitchSplitter.Part;

/**
 * Marks the lines of a text. What the grammar understands is marked by its canonical form; of all
 * else the keywords are written in full where the grammar knows them, and blanks are made single.
 */
final class Marking {
  private final StatementSource source;
  private final ScannedLines scan;
  private final MessageDigest digest;

  private Marking(StatementSource source, ScannedLines scan) {
    this.source = source;
    this.scan = scan;
    try {
      this.digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** The marks of the lines of one switch. */
  static LineMarks of(StatementSource source, ScannedLines scan, Part part, SwitchText text) {
    Marking marking = new Marking(source, scan);
    boolean onOneLine = text.firstLine() == text.lastLine() && part.end() - part.first() > 1;
    if (onOneLine) {
      return new LineMarks(text.firstLine(), marking.whole(part));
    }
    long[] marks = new long[part.end() - part.first()];
    for (Statement statement : text.statements()) {
      for (int line = statement.line(); line <= statement.lastLine(); line++) {
        int at = line - text.firstLine();
        marks[at] = marking.mark(statement, line, part.first() + at);
      }
    }
    return new LineMarks(text.firstLine(), marks);
  }

  /** A text that stands on one line with its line ends spelled out has one mark. */
  private long whole(Part part) {
    StringBuilder all = new StringBuilder();
    for (int line = part.first(); line < part.end(); line++) {
      all.append(single(scan.statement(line))).append('\n');
    }
    return hash(all.toString());
  }

  private long mark(Statement statement, int number, int line) {
    Command command = statement.command();
    String content = scan.statement(line);
    if (command instanceof Command.Layout || statement.context() == Context.OTHER) {
      return hash(single(content));
    }
    boolean understood =
        command instanceof PortCommand
            || (command instanceof SwitchCommand && !(command instanceof SwitchCommand.OtherBlock));
    if (understood) {
      return number == statement.line() ? hash(canonical(statement)) : 0;
    }
    return hash(single(source.inFull(statement.context(), content)));
  }

  /** A port's name is printed as it is spelled, and has many spellings. */
  private static String canonical(Statement statement) {
    return statement.command() instanceof SwitchCommand.Interface header
            && header.ports() instanceof PortNames.Reading.Ports ports
        ? statement.form().prefix() + "interface " + ports.names()
        : Printer.print(statement.meaning());
  }

  private static String single(String text) {
    return text.strip().replaceAll("[ \t]+", " ");
  }

  private long hash(String text) {
    return ByteBuffer.wrap(digest.digest(text.getBytes(StandardCharsets.UTF_8))).getLong() | 1;
  }
}
