package plumbline.cli;

import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import plumbline.text.Page;

/** The option that decides about colour, for commands that print a report. */
final class ColourOption {
  private static final List<String> WORDS = List.of("always", "never", "auto");

  @Option(
      names = {"--colour", "--color"},
      paramLabel = "WHEN",
      converter = Converter.class,
      description = {
        "Colour the text: always, never, or auto (the default): on a terminal, unless the"
            + " variable NO_COLOR is set. Colour never carries meaning of its own."
      })
  private String when = "auto";

  /** How pages look on this console. */
  Page.Look look(Console console) {
    boolean colour =
        switch (when) {
          case "always" -> true;
          case "never" -> false;
          default -> console.colourful();
        };
    return new Page.Look(colour, console.columns());
  }

  /** Takes one of the three words. */
  static final class Converter implements ITypeConverter<String> {
    @Override
    public String convert(String word) {
      if (!WORDS.contains(word)) {
        throw new TypeConversionException(
            "\"" + word + "\" is no choice; expected always, never or auto");
      }
      return word;
    }
  }
}
