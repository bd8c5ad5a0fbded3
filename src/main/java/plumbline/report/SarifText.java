package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.regex.Pattern;
import plumbline.text.Display;

/** Text in SARIF messages, where braces and brackets have a meaning. */
final class SarifText {
  private static final Pattern HEADING = Pattern.compile("(?m)^#+ ");

  private SarifText() {}

  /**
   * The text as a message string that stands for itself: braces doubled, or they would be
   * placeholders (SARIF 3.11.5, from memory), and no link of a config's or a design's making
   * (3.11.6, from memory).
   */
  static String plain(String text) {
    return braces(Display.clean(text)).replace("](", "] (");
  }

  private static String braces(String text) {
    return text.replace("{", "{{").replace("}", "}}");
  }

  /** Writes a message that is plain text. */
  static void message(JsonGenerator json, String name, String text) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeStringField("text", plain(text));
    json.writeEndObject();
  }

  /**
   * Writes our own words in both forms.
   *
   * @param text several lines, Markdown that can be read as it is once its headings are bare
   */
  static void both(JsonGenerator json, String name, String text) throws IOException {
    json.writeObjectFieldStart(name);
    json.writeStringField("text", braces(HEADING.matcher(text).replaceAll("")));
    json.writeStringField("markdown", braces(text));
    json.writeEndObject();
  }
}
