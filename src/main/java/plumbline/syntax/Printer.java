package plumbline.syntax;

import java.util.List;
import plumbline.statement.Command;
import plumbline.statement.Meaning;
import plumbline.statement.PortCommand;
import plumbline.statement.SwitchCommand;

/** Writes meanings as canonical statements: keywords in full, blanks single, one spelling each. */
final class Printer {
  /** Stands where the unknown part of a statement stood; the grammar takes it nowhere. */
  private static final String HOLE = " ?";

  private Printer() {}

  static String print(Meaning meaning) {
    String prefix = meaning.form().prefix();
    Command command = meaning.command();
    if (command instanceof Command.Harmless
        || command instanceof SwitchCommand.OtherBlock
        || command instanceof Command.Layout) {
      return meaning.quote();
    }
    if (command instanceof PortCommand port) {
      return prefix + PortPrinter.print(port, meaning.form());
    }
    if (command instanceof SwitchCommand wide) {
      return prefix + SwitchPrinter.print(wide);
    }
    if (command instanceof Command.Unknown unknown) {
      return unknown(prefix, unknown);
    }
    return prefix + (command instanceof Command.End ? "end" : "exit");
  }

  private static String unknown(String prefix, Command.Unknown unknown) {
    if (unknown.firstWord().isEmpty()) {
      return prefix.strip();
    }
    StringBuilder text = new StringBuilder(prefix).append(unknown.firstWord());
    unknown.understood().stream().skip(1).forEach(word -> text.append(' ').append(word));
    if (unknown.candidates().isEmpty()) {
      return text.append(HOLE).toString();
    }
    if (!unknown.understood().isEmpty()) {
      text.append(' ').append(abbreviation(unknown.candidates()));
    }
    return text.toString();
  }

  /** The longest word that abbreviates all of several keywords and is none of them. */
  private static String abbreviation(List<String> keywords) {
    String first = keywords.get(0);
    int length = first.length();
    for (String keyword : keywords) {
      while (!keyword.startsWith(first.substring(0, length))) {
        length--;
      }
    }
    String common = first.substring(0, length);
    return keywords.contains(common) ? common.substring(0, length - 1) : common;
  }
}
