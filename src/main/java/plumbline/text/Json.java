package plumbline.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** JSON documents as text: indented by two, line feeds only, so that version control likes them. */
public final class Json {
  private static final JsonFactory FACTORY = new JsonFactory();

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
      content.write(json);
    } catch (IOException e) {
      throw new UncheckedIOException("a document in memory cannot fail", e);
    }
    return text.append('\n').toString();
  }
}
