package plumbline.syntax;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import plumbline.statement.Context;
import plumbline.statement.Meaning;

/** The statements of {@code testdata/syntax/statements.txt} with what each of them means. */
final class Samples {
  private static final Path FILE = Path.of("testdata/syntax/statements.txt");
  private static final String ARROW = "  =>  ";

  private Samples() {}

  /** One statement and what it means. */
  record Sample(Context context, String text, String expected) {
    @Override
    public String toString() {
      return context + ": " + text;
    }
  }

  static List<Sample> all() {
    List<Sample> samples = new ArrayList<>();
    for (String line : lines()) {
      if (line.isBlank() || line.startsWith("//")) {
        continue;
      }
      int bar = line.indexOf(": ");
      int arrow = line.lastIndexOf(ARROW);
      String text = line.substring(bar + 2, arrow < 0 ? line.length() : arrow);
      String expected = arrow < 0 ? "" : line.substring(arrow + ARROW.length());
      samples.add(new Sample(Context.valueOf(line.substring(0, bar)), text, expected));
    }
    return samples;
  }

  /** Writes the file anew with the meanings that the parser gives. */
  static void renew(StatementParser parser) {
    List<String> renewed = new ArrayList<>();
    for (String line : lines()) {
      int bar = line.indexOf(": ");
      if (line.isBlank() || line.startsWith("//")) {
        renewed.add(line);
        continue;
      }
      int arrow = line.lastIndexOf(ARROW);
      String statement = arrow < 0 ? line : line.substring(0, arrow);
      Context context = Context.valueOf(line.substring(0, bar));
      renewed.add(statement + ARROW + shown(parser.read(context, statement.substring(bar + 2))));
    }
    try {
      Files.write(FILE, renewed);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String shown(Meaning meaning) {
    String command = meaning.command().toString();
    return meaning.form()
        + " "
        + command.replace(", text=***]", "]").replace(", candidates=[]", "");
  }

  private static List<String> lines() {
    try {
      return Files.readAllLines(FILE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
