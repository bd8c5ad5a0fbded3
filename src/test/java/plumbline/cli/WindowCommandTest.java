package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.golden.GoldenFile;
import plumbline.golden.Schemas;

class WindowCommandTest {
  private static final String SITE = "testdata/window/site/";
  private static final String DESIGN = SITE + "design.yaml";
  private static final String FROM = SITE + "planned-before.yaml";
  private static final String BEFORE = SITE + "before";
  private static final String NORTH_1 = BEFORE + "/north-sw1.cfg";
  private static final String NORTH_1_AFTER = SITE + "after/north-sw1.cfg";

  @TempDir private Path folder;

  private static Run window(String before, String after, String... more) {
    return Run.of(
        Stream.concat(
                Stream.of(
                    "window",
                    DESIGN,
                    "--before",
                    before,
                    "--after",
                    after,
                    "--as-of",
                    "2026-11-25"),
                Stream.of(more))
            .toArray(String[]::new));
  }

  /** The first sentence of the report without its line breaks. */
  private static String verdict(Run run) {
    return run.out().substring(0, run.out().indexOf("\nChanges: ")).replaceAll("\\s+", " ");
  }

  private static String flat(Run run) {
    return run.out().replaceAll("\\s+(\\| +)?", " ");
  }

  private String edited(String file, String part, String other) throws IOException {
    String text = Files.readString(Path.of(file));
    assertThat(text).contains(part);
    Path copy = folder.resolve("edited.cfg");
    Files.writeString(copy, text.replace(part, other));
    return copy.toString();
  }

  @Test
  void a_planned_change_that_is_done_is_as_planned() {
    Run run = window(BEFORE, SITE + "after", "--from", FROM, "--rest", SITE + "rest");
    assertThat(verdict(run))
        .isEqualTo("AS-PLANNED: all 6 planned changes are done, and nothing else changed.");
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).doesNotContain("Without --rest");
  }

  @Test
  void a_change_forgotten_on_one_switch_of_a_pair_is_named_in_the_first_line() {
    Run planned = window(BEFORE, SITE + "forgotten", "--from", FROM, "--rest", SITE + "rest");
    assertThat(planned.out().lines().findFirst())
        .contains("NOT-AS-PLANNED: not done at north-sw2 GigabitEthernet1/0/1: VLAN 232 not");
    assertThat(planned.status()).isEqualTo(1);
    Run open = window(BEFORE, SITE + "forgotten");
    assertThat(open.out().lines().findFirst())
        .contains("NOT-AS-PLANNED: not done at north-sw2 GigabitEthernet1/0/1: voice-b (232) not");
    assertThat(open.status()).isEqualTo(1);
    assertThat(flat(open)).contains("1 not done, 0 introduced");
  }

  @Test
  void a_change_beside_the_plan_is_named_in_the_first_line() {
    Run run = window(BEFORE, SITE + "beside", "--from", FROM, "--rest", SITE + "rest");
    assertThat(verdict(run))
        .isEqualTo(
            "NOT-AS-PLANNED: unplanned at north-sw1 GigabitEthernet1/0/6: access-vlan 250 ->"
                + " 210.");
    assertThat(run.status()).isEqualTo(1);
    assertThat(flat(run)).contains("north-sw1, ip access-list ...: 1 added");
  }

  @Test
  void lines_that_nobody_can_judge_leave_it_open_whether_all_is_as_planned() throws IOException {
    String after = edited(NORTH_1_AFTER, " permit 192.0.2.0", " permit 198.51.100.0");
    Run run = window(NORTH_1, after);
    assertThat(verdict(run))
        .isEqualTo(
            "INCOMPLETE: lines that are not judged changed on north-sw1: ip access-list ...");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void a_plan_for_a_switch_that_was_not_given_is_not_taken_for_done() {
    Run run = window(NORTH_1, NORTH_1_AFTER, "--from", FROM);
    assertThat(verdict(run))
        .startsWith(
            "INCOMPLETE: core-north: the plan changes this switch, and no config of it was given");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void nothing_changed_is_as_planned_only_where_nothing_was_left_to_do() throws IOException {
    String copy = edited(NORTH_1_AFTER, "!\nend\n", "!\n! the same\nend\n");
    Run done = window(NORTH_1_AFTER, copy);
    assertThat(verdict(done)).isEqualTo("AS-PLANNED: nothing changed, and nothing was left to do.");
    assertThat(done.status()).isZero();
    String open = edited(NORTH_1, "!\nend\n", "!\n! the same\nend\n");
    Run left = window(NORTH_1, open);
    assertThat(verdict(left))
        .isEqualTo(
            "INCOMPLETE: nothing changed, and 1 finding stands; whether that was the plan only"
                + " --from can tell.");
    assertThat(left.status()).isEqualTo(2);
    Run planned = window(NORTH_1, open, "--from", FROM);
    assertThat(verdict(planned)).startsWith("NOT-AS-PLANNED: not done at north-sw1: VLAN 232 not");
  }

  @Test
  void standard_input_serves_for_one_switch() throws IOException {
    String text = Files.readString(Path.of(NORTH_1_AFTER));
    Run run =
        Run.reading(
            text, "window", DESIGN, "--before", NORTH_1, "--after", "-", "--as-of", "2026-11-25");
    assertThat(verdict(run))
        .isEqualTo("AS-PLANNED: 3 changes, all towards the design, and nothing else.");
    assertThat(run.status()).isZero();
    assertThat(flat(run))
        .contains(
            "Without --rest, links, pairs and services that reach core-north, north-sw2 are"
                + " unchecked.");
    Run first =
        Run.reading(
            Files.readString(Path.of(NORTH_1)),
            "window",
            DESIGN,
            "--after",
            NORTH_1_AFTER,
            "--before",
            "-",
            "--as-of",
            "2026-11-25");
    assertThat(verdict(first)).isEqualTo(verdict(run));
  }

  @Test
  void the_rest_leaves_out_the_switches_of_the_window() {
    Run run = window(NORTH_1, NORTH_1_AFTER, "--rest", BEFORE, "--rest", SITE + "rest");
    assertThat(flat(run)).contains("left out of --rest, for the window is about them: north-sw1");
    // the forgotten switch is among the rest
    assertThat(verdict(run)).startsWith("NOT-AS-PLANNED: not done at north-sw2");
  }

  @Test
  void a_switch_that_the_design_does_not_have_is_compared_all_the_same() throws IOException {
    String before = edited(NORTH_1, "NORTH-SW1", "SHED-SW9");
    Path after = folder.resolve("after.cfg");
    Files.writeString(
        after, Files.readString(Path.of(before)).replace("access vlan 250", "access vlan 210"));
    Run run = window(before, after.toString());
    assertThat(flat(run))
        .contains("SHED-SW9: the design does not have this switch")
        .contains("SHED-SW9 GigabitEthernet1/0/5-6 (2 ports): access-vlan");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void fail_on_decides_which_introduced_findings_count() throws IOException {
    String after =
        edited(
            NORTH_1_AFTER,
            "!\nversion",
            "! NVRAM config last updated at 22:05:00 UTC Mon Nov 23 2026\n!\nversion");
    Run strict = window(NORTH_1, after);
    assertThat(verdict(strict))
        .startsWith("NOT-AS-PLANNED: introduced at north-sw1: changed 2026-11-25");
    assertThat(strict.status()).isEqualTo(1);
    Run lax = window(NORTH_1, after, "--fail-on", "breaks");
    assertThat(verdict(lax)).startsWith("AS-PLANNED: 3 changes");
    assertThat(flat(lax)).contains("1 introduced");
    assertThat(lax.status()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--before - --after - | standard input (-) is given twice",
        "--before x | --after is missing; expected a config, a folder, or -",
        "--before x --after y --report z.svg | the ending chooses the form",
        "--before x --after y --from nowhere.yaml | nowhere.yaml: the design does not exist",
        "--before x --after y --fail-on bad | is no severity"
      })
  void wrong_usage_is_refused(String arguments, String complaint) {
    Run run =
        Run.of(
            Stream.concat(Stream.of("window", DESIGN), Stream.of(arguments.split(" ", -1)))
                .toArray(String[]::new));
    assertThat(run.err()).contains(complaint);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
  }

  @Test
  void a_report_never_replaces_an_input() {
    for (String input : List.of(DESIGN, FROM)) {
      Path copy = folder.resolve("input.json");
      assertThat(copy).doesNotExist();
      Run run = window(NORTH_1, NORTH_1_AFTER, "--from", FROM, "--report", input);
      assertThat(run.status()).isEqualTo(64);
    }
  }

  @Test
  void the_json_form_has_the_published_shape_and_the_same_bytes_each_time() throws IOException {
    String first = json("one.json");
    assertThat(Schemas.problems("plumbline-window-1.schema.json", first)).isEmpty();
    GoldenFile.check("window/beside.json", first);
    assertThat(json("two.json")).isEqualTo(first);
    assertThat(
            Schemas.problems(
                "plumbline-window-1.schema.json", first.replace("\"unplanned\",", "\"odd\",")))
        .isNotEmpty();
  }

  private String json(String name) throws IOException {
    Path file = folder.resolve(name);
    Run run =
        window(
            BEFORE,
            SITE + "beside",
            "--from",
            FROM,
            "--rest",
            SITE + "rest",
            "--report",
            file.toString());
    assertThat(run.status()).isEqualTo(1);
    return Files.readString(file);
  }

  @Test
  void no_secret_of_a_config_is_shown_in_any_form() throws IOException {
    String after =
        edited(
            NORTH_1_AFTER,
            "username watch privilege 15 secret 9 $9$m//7r3.kx54uxbi2qgv/.pru2uqtbb/9xqgu91v4iu8",
            "username watch privilege 15 secret 0 Drawbridge7\nfrobnicate key Sluice99gate\n"
                + "snmp-server community Ferry8bell RO");
    Path file = folder.resolve("report.json");
    Run run = window(NORTH_1, after, "--report", file.toString());
    String all = run.out() + run.err() + Files.readString(file);
    assertThat(all)
        .contains("frobnicate")
        .doesNotContain("Drawbridge7", "Sluice99gate", "Ferry8bell", "$9$m");
  }
}
