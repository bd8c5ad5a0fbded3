package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import plumbline.golden.Rendered;
import plumbline.golden.Schemas;
import plumbline.report.ReportForm;

/** Every form of report, of whole runs: the demo, the cases of all rules, conforming sites. */
class ReportFormsTest {
  @TempDir private Path folder;

  /** Reports of one audit in all forms, by ending; with what the run was. */
  private record Written(Run run, Map<ReportForm, String> forms) {
    String get(ReportForm form) {
      return forms.get(form);
    }
  }

  private Written audit(String... arguments) throws IOException {
    List<String> line = new ArrayList<>(List.of("audit", "--as-of", "2026-11-25"));
    for (ReportForm form : ReportForm.values()) {
      line.addAll(List.of("--report", folder.resolve("report" + form.ending()).toString()));
    }
    line.addAll(List.of(arguments));
    Run run = Run.of(line.toArray(String[]::new));
    Map<ReportForm, String> forms = new TreeMap<>();
    for (ReportForm form : ReportForm.values()) {
      Path file = folder.resolve("report" + form.ending());
      forms.put(form, Files.readString(file));
      Files.delete(file);
    }
    return new Written(run, forms);
  }

  @Test
  void every_form_is_in_the_help_the_manual_and_the_page_about_reports() throws IOException {
    String help = Run.of("audit", "--help").out();
    String manual = Files.readString(Path.of("docs/manual.md"));
    String audit = manual.substring(manual.indexOf("\n## plumbline audit"));
    String report = audit.substring(audit.indexOf("- `--report FILE`"), audit.indexOf("- `--only"));
    String page = Files.readString(Path.of("docs/reports.md"));
    for (ReportForm form : ReportForm.values()) {
      assertThat(help).contains(form.ending());
      assertThat(report).contains("`" + form.ending() + "`");
      assertThat(page).contains("\n| `" + form.ending() + "` | ");
    }
    assertThat(page.lines().filter(line -> line.startsWith("| `.")))
        .hasSameSizeAs(ReportForm.values());
  }

  @Test
  void another_ending_is_wrong_usage_and_lists_all_forms() {
    Run run = Run.of("audit", "design.yaml", "x.cfg", "--report", "x.pdf");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err()).contains("\"x.pdf\": the ending chooses the form; expected one of");
    assertThat(run.err()).contains(ReportForm.endings().stream().map(e -> '"' + e + '"').toList());
  }

  /** Standard input can be read once: all the reports are of that one reading. */
  @Test
  void several_reports_cost_one_audit() throws IOException {
    DemoFiles.write(folder);
    String config = Files.readString(folder.resolve("drifted/south-sw1.cfg"));
    List<String> line =
        new ArrayList<>(List.of("audit", folder.resolve("design.yaml").toString(), "-"));
    for (ReportForm form : ReportForm.values()) {
      line.addAll(List.of("--report", folder.resolve("r" + form.ending()).toString()));
    }
    assertThat(Run.reading(config, line.toArray(String[]::new)).status()).isEqualTo(1);
    for (ReportForm form : ReportForm.values()) {
      assertThat(folder.resolve("r" + form.ending())).content().contains("access-vlan-differs");
    }
  }

  @Test
  void a_report_that_cannot_be_written_is_said_and_the_others_are_written() throws IOException {
    DemoFiles.write(folder);
    Path good = folder.resolve("good.sarif");
    Run run =
        Run.of(
            "audit",
            folder.resolve("design.yaml").toString(),
            folder.resolve("drifted").toString(),
            "--report",
            folder.resolve("none/x.md").toString(),
            "--report",
            good.toString());
    assertThat(run.status()).isEqualTo(74);
    assertThat(run.err()).contains("x.md: report cannot be written: its folder does not exist");
    assertThat(run.out()).startsWith("DRIFT");
    assertThat(Schemas.problemsOfSarif(Files.readString(good))).isEmpty();
  }

  @Test
  void the_same_input_gives_the_same_bytes_in_every_form() throws IOException {
    DemoFiles.write(folder);
    String design = folder.resolve("design.yaml").toString();
    String drifted = folder.resolve("drifted").toString();
    assertThat(audit(design, drifted)).isEqualTo(audit(design, drifted));
  }

  @Test
  void reports_kept_beside_the_configs_are_left_out_of_the_next_run() throws IOException {
    DemoFiles.write(folder);
    String design = folder.resolve("design.yaml").toString();
    Path clean = folder.resolve("clean");
    Written before = audit(design, folder.resolve("drifted").toString());
    for (ReportForm form : ReportForm.values()) {
      Files.writeString(clean.resolve("last" + form.ending()), before.get(form));
    }
    Run run = Run.of("audit", design, clean.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("CONFORMS: ");
    String flat = run.out().replaceAll("\\s+", "");
    for (ReportForm form : ReportForm.values()) {
      assertThat(flat)
          .contains("/last" + form.ending() + ":leftout,foritisareportofplumblineandnoconfig");
    }
  }

  @TestFactory
  Stream<DynamicTest> every_report_is_what_its_format_says() throws IOException {
    List<Path> sites = new ArrayList<>();
    for (String root : List.of("testdata/rules", "testdata/sites")) {
      try (Stream<Path> files = Files.walk(Path.of(root))) {
        files
            .filter(file -> file.getFileName().toString().equals("design.yaml"))
            .map(Path::getParent)
            .sorted()
            .forEach(sites::add);
      }
    }
    assertThat(sites).hasSizeGreaterThan(100);
    return Stream.concat(
        Stream.of(
            DynamicTest.dynamicTest(
                "demo",
                () -> {
                  DemoFiles.write(folder);
                  String design = folder.resolve("design.yaml").toString();
                  for (String state : List.of("drifted", "clean")) {
                    check(audit(design, folder.resolve(state).toString()));
                  }
                })),
        sites.stream()
            .map(
                site ->
                    DynamicTest.dynamicTest(
                        site.toString(),
                        () ->
                            check(
                                audit(site.resolve("design.yaml").toString(), site.toString())))));
  }

  private static void check(Written written) throws Exception {
    String json = written.get(ReportForm.JSON);
    assertThat(Schemas.problems("plumbline-report-1.schema.json", json)).isEmpty();
    assertThat(Schemas.problemsOfSarif(written.get(ReportForm.SARIF))).isEmpty();
    List<String> ids = new ArrayList<>();
    JsonNode report = new ObjectMapper().readTree(json);
    report.get("findings").forEach(one -> ids.add(one.get("id").asText()));
    assertThat(ids).doesNotHaveDuplicates();
    List<String> prints = new ArrayList<>();
    JsonNode sarif = new ObjectMapper().readTree(written.get(ReportForm.SARIF)).at("/runs/0");
    sarif
        .get("results")
        .forEach(one -> prints.add(one.at("/fingerprints/plumbline~1findingId~1v1").asText()));
    assertThat(prints).isEqualTo(ids);
    List<String> rows =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(written.get(ReportForm.CSV)))
            .stream()
            .map(row -> row.get("id"))
            .toList();
    assertThat(rows).isEqualTo(ids);
    assertThat(Rendered.foreign(written.get(ReportForm.MARKDOWN))).isEmpty();
    junit(written, report);
  }

  /**
   * What a build server makes of it: the same as the exit status, and nothing checked is a fault.
   */
  private static void junit(Written written, JsonNode report) throws Exception {
    Element suites =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(written.get(ReportForm.JUNIT))))
            .getDocumentElement();
    boolean red =
        !suites.getAttribute("failures").equals("0") || !suites.getAttribute("errors").equals("0");
    boolean nothing = report.at("/verdict/checked").asInt() == 0;
    assertThat(red).isEqualTo(written.run().status() != 0 || nothing);
    assertThat(written.run().status()).isIn(0, 1, 2);
  }
}
