package plumbline.inspect;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.effective.PortSettings;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.text.Cells;
import plumbline.text.Display;
import plumbline.wish.Wish;

/**
 * Effective settings as a table for spreadsheets (RFC 4180): one row for each setting of each port.
 */
public final class SettingsCsv {
  private static final List<String> COLUMNS =
      List.of(
          "switch",
          "file",
          "dialect",
          "port",
          "setting",
          "value",
          "evidence",
          "designed",
          "as designed");

  private static final CsvFactory FACTORY = new CsvFactory();

  private SettingsCsv() {}

  /** The table with its header; rows end in CR LF, as RFC 4180 section 2 asks. */
  public static String of(List<SwitchView> switches) {
    if (switches.stream().allMatch(view -> view.ports().isEmpty())) {
      return String.join(",", COLUMNS) + "\r\n";
    }
    CsvSchema.Builder schema = CsvSchema.builder().setLineSeparator("\r\n").setUseHeader(true);
    COLUMNS.forEach(schema::addColumn);
    StringWriter text = new StringWriter();
    try (JsonGenerator csv = FACTORY.createGenerator(text)) {
      csv.setSchema(schema.build());
      for (SwitchView view : switches) {
        for (PortSettings port : view.ports()) {
          for (Key<?> key : Keys.ALL) {
            row(csv, cells(view, port, key));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a document in memory cannot fail", e);
    }
    return text.toString();
  }

  private static List<String> cells(SwitchView view, PortSettings port, Key<?> key) {
    Setting<?> setting = port.get(key);
    Optional<Wish> wish = view.wish(port, key);
    return List.of(
        view.name(),
        view.settings().file(),
        view.settings().dialect().word(),
        port.fullName(),
        key.name(),
        Values.words(port, key),
        Values.evidence(setting),
        wish.map(Wish::words).orElse(""),
        wish.map(Wish::same).map(same -> same.name().toLowerCase(Locale.ROOT)).orElse(""));
  }

  private static void row(JsonGenerator csv, List<String> cells) throws IOException {
    csv.writeStartObject();
    for (int column = 0; column < cells.size(); column++) {
      csv.writeStringField(COLUMNS.get(column), Cells.neutral(Display.clean(cells.get(column))));
    }
    csv.writeEndObject();
  }
}
