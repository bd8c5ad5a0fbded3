package plumbline.report;

import static java.util.stream.Collectors.joining;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.result.Result;
import plumbline.setting.Evidence;
import plumbline.text.Cells;
import plumbline.text.Display;

/**
 * Findings as a table for spreadsheets (RFC 4180), one row each: {@code plumbline-findings/1}, see
 * docs/reports.md.
 */
public final class CsvReport {
  private static final String FORMAT = "plumbline-findings/1";

  /** Only ever added to at the end, as long as the format has this number. */
  static final List<String> COLUMNS =
      List.of(
          "format",
          "at",
          "revision",
          "severity",
          "switch",
          "port",
          "subject",
          "rule",
          "vlans",
          "found",
          "designed",
          "consequence",
          "others",
          "config file",
          "config line",
          "evidence",
          "design file",
          "design line",
          "id");

  private static final CsvFactory FACTORY = new CsvFactory();

  private CsvReport() {}

  /** The table with its header; rows end in CR LF, as RFC 4180 section 2 asks. */
  public static String of(Result result) {
    if (result.findings().isEmpty()) {
      return String.join(",", COLUMNS) + "\r\n";
    }
    CsvSchema.Builder schema = CsvSchema.builder().setLineSeparator("\r\n").setUseHeader(true);
    COLUMNS.forEach(schema::addColumn);
    StringWriter text = new StringWriter();
    try (JsonGenerator csv = FACTORY.createGenerator(text)) {
      csv.setSchema(schema.build());
      for (Finding finding : result.findings()) {
        row(csv, cells(result, finding));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a document in memory cannot fail", e);
    }
    return text.toString();
  }

  private static List<String> cells(Result result, Finding finding) {
    Optional<Proof> line =
        finding.evidence().stream().filter(proof -> number(proof).isPresent()).findFirst();
    return List.of(
        FORMAT,
        ReportForm.moment(result.at()),
        result.revision().orElse(""),
        finding.severity().toString(),
        finding.switchName(),
        finding.place().flatMap(Place::port).orElse(""),
        finding.subject(),
        finding.rule(),
        finding.vlans().isEmpty() ? "" : finding.vlans().toString(),
        finding.found(),
        finding.designed(),
        finding.consequence(),
        finding.others().stream().map(Place::toString).collect(joining("; ")),
        line.flatMap(Proof::file).orElse(""),
        line.flatMap(CsvReport::number).orElse(""),
        finding.evidence().stream().map(CsvReport::words).collect(joining("; ")),
        finding.design().map(at -> at.file()).orElse(""),
        finding.design().map(at -> Integer.toString(at.line())).orElse(""),
        finding.id());
  }

  private static Optional<String> number(Proof proof) {
    return proof.evidence() instanceof Evidence.Line line
        ? Optional.of(Integer.toString(line.line()))
        : Optional.empty();
  }

  private static String words(Proof proof) {
    if (proof.evidence() instanceof Evidence.Line line) {
      return "line " + line.line() + ": " + line.text();
    }
    String name = ((Evidence.Default) proof.evidence()).name();
    return proof.file().isPresent() ? name : "default, " + name;
  }

  private static void row(JsonGenerator csv, List<String> cells) throws IOException {
    csv.writeStartObject();
    for (int column = 0; column < cells.size(); column++) {
      csv.writeStringField(COLUMNS.get(column), Cells.neutral(Display.clean(cells.get(column))));
    }
    csv.writeEndObject();
  }
}
