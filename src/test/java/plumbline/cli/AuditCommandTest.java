package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import plumbline.golden.Schemas;

class AuditCommandTest {
  @TempDir private Path folder;

  private String design;
  private String clean;
  private String drifted;

  @BeforeEach
  void write_the_demo() throws IOException {
    DemoFiles.write(folder);
    design = folder.resolve("design.yaml").toString();
    clean = folder.resolve("clean").toString();
    drifted = folder.resolve("drifted").toString();
  }

  @Test
  void a_site_as_designed_conforms_with_nothing_unverified() {
    Run run = Run.of("audit", design, clean);
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("CONFORMS: nothing differs from the design.");
    assertThat(run.out()).contains("checks on 6 switches");
    assertThat(run.out().lines().count()).isLessThan(45);
  }

  @Test
  void drift_has_its_status() {
    Run run = Run.of("audit", design, drifted);
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("DRIFT: breaks ");
    assertThat(
            run.out().lines().filter(line -> line.startsWith("  | rule      ")).distinct().count())
        .as("different rules that the demo shows")
        .isGreaterThanOrEqualTo(15);
  }

  @Test
  void a_config_on_standard_input_is_audited_alone() throws IOException {
    String config = Files.readString(folder.resolve("clean/north-sw1.cfg"));
    Run run = Run.reading(config, "audit", design, "-");
    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains("Outside this run: core-north, core-south, north-sw2, south-sw1, south-sw2.")
        .contains("  -: north-sw1, 297 lines");
  }

  @Test
  void files_put_only_their_own_switches_in_scope() {
    Run run = Run.of("audit", design, clean + "/north-sw1.cfg", clean + "/north-sw2.cfg");
    assertThat(run.status()).isZero();
    assertThat(run.out())
        .startsWith("CONFORMS")
        .contains("Outside this run: core-north, core-south, south-sw1, south-sw2.");
  }

  @Test
  void a_folder_puts_the_whole_design_in_scope() throws IOException {
    Files.delete(folder.resolve("clean/south-sw2.cfg"));
    Run run = Run.of("audit", design, clean);
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).startsWith("INCOMPLETE: ").contains("config-missing");
    assertThat(run.err()).isEqualTo("south-sw2: no config of this switch was given\n");
  }

  @Test
  void the_design_in_the_folder_of_the_configs_is_no_config() throws IOException {
    Files.move(folder.resolve("design.yaml"), folder.resolve("clean/design.yaml"));
    Run run = Run.of("audit", clean + "/design.yaml", clean);
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
  }

  @Test
  void of_two_configs_of_one_switch_the_first_is_audited_and_the_second_is_named() {
    String first = clean + "/north-sw1.cfg";
    String second = drifted + "/north-sw1.cfg";
    Run run = Run.of("audit", design, first, second);
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).startsWith("INCOMPLETE: ");
    assertThat(run.err())
        .isEqualTo(
            second
                + ": a second config of north-sw1; the one in "
                + first
                + " was audited, this one was not\n");
  }

  @Test
  void a_hostname_in_another_case_is_the_same_switch() throws IOException {
    Path file = folder.resolve("clean/north-sw1.cfg");
    String text = Files.readString(file);
    Files.writeString(file, text.replace("hostname NORTH-SW1", "hostname north-Sw1"));
    assertThat(Run.of("audit", design, clean).status()).isZero();
  }

  @Test
  void a_text_without_hostname_is_of_the_switch_its_file_is_named_after() throws IOException {
    Path file = folder.resolve("clean/north-sw1.cfg");
    Files.writeString(file, Files.readString(file).replace("hostname NORTH-SW1\n", ""));
    assertThat(Run.of("audit", design, file.toString()).out())
        .contains(file + ": north-sw1, 296 lines");
  }

  @Test
  void a_named_config_of_no_designed_switch_does_not_pass_for_conforming() throws IOException {
    Path file = Files.writeString(folder.resolve("x.cfg"), "hostname ELSEWHERE\nvlan 7\nend\n");
    Run run = Run.of("audit", design, file.toString());
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).startsWith("INCOMPLETE");
    assertThat(run.err())
        .isEqualTo(file + ": no switch of the design has the hostname \"ELSEWHERE\"\n");
  }

  @Test
  void a_config_cut_short_is_said_with_its_line() throws IOException {
    Path file = folder.resolve("clean/north-sw1.cfg");
    String text = Files.readString(file);
    Files.writeString(file, text.substring(0, text.indexOf("interface GigabitEthernet1/0/20")));
    Run run = Run.of("audit", design, file.toString());
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).startsWith("INCOMPLETE").contains("config-truncated");
    assertThat(run.out()).doesNotContain("port-absent", "mode-differs");
    assertThat(run.err()).contains("the text of north-sw1 is cut short");
  }

  @Test
  void every_fault_of_a_design_is_told_at_once_in_gnu_form() throws IOException {
    String broken =
        Files.readString(Path.of(design))
            .replace("role: host-uplink", "role: host-uplnk")
            .replace("gateway: forbidden", "gateway: never");
    Path file = Files.writeString(folder.resolve("broken.yaml"), broken);
    Run run = Run.of("audit", file.toString(), clean);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines().count()).isGreaterThan(2);
    assertThat(run.err().lines())
        .allMatch(
            line ->
                line.matches(java.util.regex.Pattern.quote(file.toString()) + ":\\d+:\\d+: .*"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"nowhere.yaml", "empty", "."})
  void a_design_that_is_none_is_said_in_one_line(String name) throws IOException {
    Files.createDirectory(folder.resolve("empty"));
    Files.deleteIfExists(folder.resolve("design.yaml"));
    Run run = Run.of("audit", folder.resolve(name).toString(), clean);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
  }

  @Test
  void a_design_in_several_files_of_a_folder_is_one_design() throws IOException {
    String text = Files.readString(Path.of(design));
    int cut = text.indexOf("\nhosts:");
    Path parts = Files.createDirectories(folder.resolve("parts"));
    Files.writeString(parts.resolve("a.yaml"), text.substring(0, cut + 1));
    Files.writeString(parts.resolve("b.yml"), "format: plumbline-design/1\n" + text.substring(cut));
    Files.writeString(parts.resolve("README.txt"), "not a design");
    Run run = Run.of("audit", parts.toString(), clean);
    assertThat(run.status()).isZero();
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("Design: " + parts + "/a.yaml, " + parts + "/b.yml");
  }

  @Test
  void reports_fit_the_schema_and_equal_runs_give_equal_bytes() throws IOException {
    Path one = folder.resolve("one.json");
    Path two = folder.resolve("two.json");
    Run run =
        Run.of(
            "audit",
            design,
            drifted,
            "--as-of",
            "2026-11-25",
            "--report",
            one.toString(),
            "--report",
            two.toString());
    assertThat(run.status()).isEqualTo(1);
    String json = Files.readString(one);
    assertThat(Schemas.problems("plumbline-report-1.schema.json", json)).isEmpty();
    assertThat(json).contains("\"at\": \"2026-11-25T00:00:00Z\"");
    assertThat(two).hasContent(json);
    Run again = Run.of("audit", design, drifted, "--as-of", "2026-11-25T00:00:00Z");
    assertThat(again.out()).isEqualTo(run.out());
  }

  @Test
  void a_report_that_cannot_be_written_does_not_keep_back_the_text() {
    String lost = folder.resolve("nowhere/x.json").toString();
    Run run = Run.of("audit", design, drifted, "--report", lost);
    assertThat(run.status()).isEqualTo(74);
    assertThat(run.out()).startsWith("DRIFT");
    assertThat(run.err())
        .isEqualTo(lost + ": report cannot be written: its folder does not exist\n");
  }

  @Test
  void a_report_never_replaces_an_input() throws IOException {
    Path input = Files.copy(Path.of(design), folder.resolve("design.json"));
    byte[] before = Files.readAllBytes(input);
    Run run = Run.of("audit", input.toString(), clean, "--report", input.toString());
    assertThat(run.status()).isEqualTo(64);
    assertThat(Files.readAllBytes(input)).isEqualTo(before);
  }

  @ParameterizedTest
  @CsvSource({"breaks,1,DRIFT", "weakens,1,DRIFT", "unverified,1,DRIFT", "untidy,1,DRIFT"})
  void a_break_is_drift_whatever_the_threshold(String failOn, int status, String word) {
    Run run = Run.of("audit", design, drifted, "--fail-on", failOn);
    assertThat(run.status()).isEqualTo(status);
    assertThat(run.out()).startsWith(word);
  }

  @Test
  void a_finding_below_the_threshold_is_reported_and_is_no_drift() throws IOException {
    Path file = folder.resolve("clean/north-sw1.cfg");
    Files.writeString(
        file, Files.readString(file).replaceFirst(" spanning-tree portfast trunk\n", ""));
    assertThat(Run.of("audit", design, file.toString()).status()).isEqualTo(1);
    Run run = Run.of("audit", design, file.toString(), "--fail-on", "breaks");
    assertThat(run.status()).isZero();
    assertThat(run.out())
        .startsWith("CONFORMS: nothing that counts as drift in this run; weakens 1.");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--fail-on|weakes|did you mean \"weakens\"?",
        "--as-of|25.11.2026|is no date",
        "--as-of|2026-02-30|is no date",
        "--as-of|1969-12-31|out of range; expected a year from 1970 to 9999",
        "--as-of|+999999999-12-31|out of range; expected a year from 1970 to 9999",
        "--as-of|-0001-01-01|out of range; expected a year from 1970 to 9999",
        "--as-of|+10000-01-01T00:00:00Z|out of range; expected a year from 1970 to 9999",
        "--report|x.pdf|expected one of \".csv\", \".json\", \".md\", \".sarif\", \".xml\"",
        "--colour|pink|expected always, never or auto"
      })
  void a_wrong_value_is_said_with_what_was_expected(String option, String value, String words) {
    Run run = Run.of("audit", design, clean, option, value);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(option, words);
    assertThat(run.err().lines()).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource({"1970-01-01,1970-01-01 00:00 UTC", "9999-12-31T23:59:59Z,9999-12-31 23:59 UTC"})
  void the_first_and_the_last_day_that_a_report_can_write_are_taken(String day, String words) {
    assertThat(Run.of("audit", design, clean, "--as-of", day).out().replaceAll("\\s+", " "))
        .contains("as of " + words);
  }

  @Test
  void standard_input_cannot_be_given_twice() {
    assertThat(Run.of("audit", design, "-", "-").status()).isEqualTo(64);
  }

  @Test
  void colour_comes_only_when_asked() {
    assertThat(Run.of("audit", design, drifted).out()).doesNotContain("\u001b");
    assertThat(Run.of("audit", design, drifted, "--colour", "never").out())
        .doesNotContain("\u001b");
    assertThat(Run.of("audit", design, drifted, "--colour", "always").out()).contains("\u001b[");
  }

  @Test
  void settings_of_a_site_come_in_three_forms() throws IOException {
    Path json = folder.resolve("s.json");
    Path csv = folder.resolve("s.csv");
    Run run =
        Run.of(
            "settings",
            drifted,
            "--design",
            design,
            "--report",
            json.toString(),
            "--report",
            csv.toString());
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("DIFFERS  designed: parked (999)").contains("edge port");
    assertThat(Schemas.problems("plumbline-settings-1.schema.json", Files.readString(json)))
        .isEmpty();
    List<String> rows = List.of(Files.readString(csv, StandardCharsets.UTF_8).split("\r\n", -1));
    assertThat(rows.get(0)).startsWith("switch,file,dialect,port,setting,value");
    assertThat(rows.size()).isGreaterThan(1000);
  }

  @ParameterizedTest
  @ValueSource(strings = {"gi1/0/2", "GigabitEthernet 1/0/2", "gig1/0/2", "GIGABITETHERNET1/0/2"})
  void one_port_is_found_in_any_spelling(String port) {
    Run run = Run.of("settings", drifted + "/north-sw1.cfg", "--at", port);
    assertThat(run.status()).isZero();
    assertThat(run.out()).contains("\n  GigabitEthernet1/0/2\n").doesNotContain("1/0/3");
  }

  @ParameterizedTest
  @CsvSource({
    "gi9/0/1,no config given opens port",
    "tw1/1,could be several",
    "banana,is not one port"
  })
  void a_port_that_cannot_be_shown_is_said(String port, String words) {
    Run run = Run.of("settings", drifted, "--at", port);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("--at", words);
  }

  @Test
  void settings_of_a_file_that_is_not_there_are_incomplete() {
    Run run = Run.of("settings", drifted + "/north-sw1.cfg", drifted + "/nobody.cfg");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).startsWith("NORTH-SW1\n");
    assertThat(run.err()).isEqualTo(drifted + "/nobody.cfg: does not exist\n");
  }

  @Test
  void the_demo_writes_its_files_and_is_done_whatever_it_finds() {
    Path home = folder.resolve("demo");
    Run first = Run.of("demo", home.toString());
    assertThat(first.status()).isZero();
    assertThat(first.err()).isEmpty();
    assertThat(first.out()).startsWith("DRIFT: ").contains("plumbline audit " + home);
    assertThat(home.resolve("clean/core-north.cfg")).exists();
    assertThat(Run.of("demo", home.toString()).status()).isZero();
  }

  @Test
  void the_demo_overwrites_nothing_of_yours() throws IOException {
    Path home = Files.createDirectories(folder.resolve("demo"));
    Path yours = Files.writeString(home.resolve("design.yaml"), "mine");
    Run run = Run.of("demo", home.toString());
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(yours + " exists and is not the demo's");
    assertThat(yours).hasContent("mine");
    assertThat(home.resolve("clean")).doesNotExist();
  }

  @Test
  void the_demo_that_cannot_be_written_says_so() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "");
    assertThat(Run.of("demo", file.toString()).status()).isEqualTo(74);
  }
}
