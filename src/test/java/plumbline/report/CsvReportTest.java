package plumbline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import plumbline.finding.Finding;
import plumbline.golden.GoldenFile;

/** Read back by another library than the one that writes it. */
class CsvReportTest {
  private static List<CSVRecord> read(String csv) throws IOException {
    try (CSVParser parser =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(csv))) {
      return parser.getRecords();
    }
  }

  @Test
  void each_finding_is_a_row_with_the_documented_columns() throws IOException {
    String csv = CsvReport.of(Samples.drift());
    GoldenFile.check("report/drift.csv", csv);
    List<CSVRecord> rows = read(csv);
    assertThat(rows).extracting(row -> row.get("id")).isEqualTo(ids());
    assertThat(rows.get(0).getParser().getHeaderNames()).isEqualTo(CsvReport.COLUMNS);
    CSVRecord trunk = rows.get(2);
    assertThat(trunk.get("format")).isEqualTo("plumbline-findings/1");
    assertThat(trunk.get("at")).isEqualTo("2026-11-25T02:10:00Z");
    assertThat(trunk.get("severity")).isEqualTo("weakens");
    assertThat(trunk.get("port")).isEqualTo("GigabitEthernet1/0/2");
    assertThat(trunk.get("vlans")).isEqualTo("231");
    assertThat(trunk.get("others")).isEqualTo("north-sw2 GigabitEthernet1/0/2");
    assertThat(trunk.get("config file")).isEqualTo("configs/north-sw1.cfg");
    assertThat(trunk.get("config line")).isEqualTo("47");
    assertThat(trunk.get("design line")).isEqualTo("18");
    assertThat(rows.get(1).get("evidence"))
        .isEqualTo("line 38: interface GigabitEthernet1/0/1; default, campus: fast-start off");
  }

  private static List<String> ids() {
    return Samples.findings().stream().map(Finding::id).toList();
  }

  /** RFC 4180 section 2: rules 1 (CRLF), 4 (the same number of fields), 6 and 7 (quotes). */
  @Test
  void the_table_is_as_rfc_4180_asks() throws IOException {
    String csv = CsvReport.of(Samples.drift());
    assertThat(csv).endsWith("\r\n");
    assertThat(csv.replace("\r\n", "")).doesNotContain("\n", "\r");
    assertThat(read(csv)).allMatch(row -> row.size() == CsvReport.COLUMNS.size());
    assertThat(csv).contains("\"a description like \"\"vmhost-n2*\"\"\"");
  }

  @Test
  void a_run_without_findings_is_the_header() throws IOException {
    String csv = CsvReport.of(Samples.conforms());
    assertThat(csv.lines()).containsExactly(String.join(",", CsvReport.COLUMNS));
    assertThat(read(csv)).isEmpty();
  }

  @Test
  void the_columns_are_documented_in_their_order() throws IOException {
    String page = Files.readString(Path.of("docs/reports.md"));
    String section = page.substring(page.indexOf("\n## CSV"));
    Matcher rows =
        Pattern.compile("(?m)^\\| `([a-z ]+)` \\|")
            .matcher(section.substring(0, section.indexOf("\n## ", 1)));
    List<String> documented = new ArrayList<>();
    while (rows.find()) {
      documented.add(rows.group(1));
    }
    assertThat(documented).isEqualTo(CsvReport.COLUMNS);
  }
}
