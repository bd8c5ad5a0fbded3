package plumbline.report;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import plumbline.finding.Severity;
import plumbline.result.Result;

/** The forms in which a report is written to a file; the ending of the file's name chooses. */
public enum ReportForm {
  /** A table for spreadsheets, one row for each finding. */
  CSV(".csv"),
  /** All that is known, for programs. */
  JSON(".json"),
  /** What goes into a ticket. */
  MARKDOWN(".md"),
  /** SARIF 2.1.0, for programs that show results beside the text they are about. */
  SARIF(".sarif"),
  /** JUnit XML, for build servers: passes count too. */
  JUNIT(".xml");

  private final String ending;

  ReportForm(String ending) {
    this.ending = ending;
  }

  /**
   * What some forms tell beside the result.
   *
   * @param version the program's own version
   * @param failOn the severity from which on a finding counts as drift
   * @param rules every rule of the program, sorted by id; asked for only by forms that need it
   */
  public record About(String version, Severity failOn, Supplier<List<RuleText>> rules) {}

  /** The ending of file names, with its dot. */
  public String ending() {
    return ending;
  }

  /** The endings of all forms. */
  public static List<String> endings() {
    return Arrays.stream(values()).map(ReportForm::ending).toList();
  }

  /** The whole report in this form: the same result gives the same text. */
  public String write(Result result, About about) {
    return switch (this) {
      case CSV -> CsvReport.of(result);
      case JSON -> JsonReport.of(result, about.version());
      case MARKDOWN -> MarkdownReport.of(result);
      case SARIF -> SarifReport.of(result, about.version(), about.rules().get());
      case JUNIT -> JUnitReport.of(result, about.failOn());
    };
  }

  /** A moment as reports write it: UTC, whole seconds. */
  static String moment(Instant at) {
    return DateTimeFormatter.ISO_INSTANT.format(at.truncatedTo(ChronoUnit.SECONDS));
  }
}
