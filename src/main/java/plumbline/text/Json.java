package plumbline.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;

/** JSON documents as text: indented by two, line feeds only, so that version control likes them. */
public final class Json {
  private static final JsonFactory FACTORY = new JsonFactory();
  private static final CharacterEscapes VISIBLE = new Visible();

  private Json() {}

  /** Writes one document's content. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes it.
     *
     * @param json where to
     * @throws IOException never, as the document is kept in memory
     */
    void write(JsonGenerator json) throws IOException;
  }

  /** The document as text that ends in a line feed. */
  public static String write(Content content) {
    StringWriter text = new StringWriter();
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withSeparators(
                Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                    .withObjectEmptySeparator("")
                    .withArrayEmptySeparator(""));
    printer.indentArraysWith(indenter);
    printer.indentObjectsWith(indenter);
    try (JsonGenerator json = FACTORY.createGenerator(text)) {
      json.setPrettyPrinter(printer);
      json.setCharacterEscapes(VISIBLE);
      content.write(json);
    } catch (IOException e) {
      throw new UncheckedIOException("a document in memory cannot fail", e);
    }
    return text.append('\n').toString();
  }

  /**
   * Also escapes what RFC 8259 lets pass and nobody sees: the document shows what it holds, and
   * nothing in it steers the terminal or turns round the line in which it is looked at.
   */
  private static final class Visible extends CharacterEscapes {
    private static final long serialVersionUID = 1L;
    private static final int DELETE = 0x7f;

    @Override
    public int[] getEscapeCodesForAscii() {
      int[] codes = standardAsciiEscapesForJSON();
      codes[DELETE] = ESCAPE_STANDARD;
      return codes;
    }

    @Override
    public SerializableString getEscapeSequence(int c) {
      return switch (Character.getType(c)) {
        case Character.CONTROL,
            Character.FORMAT,
            Character.LINE_SEPARATOR,
            Character.PARAGRAPH_SEPARATOR ->
            new SerializedString(String.format(Locale.ROOT, "\\u%04X", c));
        default -> null;
      };
    }
  }
}
