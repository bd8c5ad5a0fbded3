package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
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
import plumbline.rules.Group;
import plumbline.rules.RuleCatalogue;

class NarrowedAuditTest {
  private static final int RULES = RuleCatalogue.ALL.size();

  private static final String AGED =
      """
      format: plumbline-design/1
      vlans: {office: {id: 250}}
      roles: {desk: {mode: access, access: office}}
      switches: {sw1: {ports: {Gi1/0/1: desk}}}
      max-age-days: 8
      """;
  private static final String UNDATED =
      """
      hostname sw1
      !
      vlan 250
      !
      interface GigabitEthernet1/0/1
       switchport access vlan 250
       switchport mode access
      !
      end
      """;

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

  /** The report without its line breaks. */
  private static String flat(Run run) {
    return run.out().replaceAll("\\s+(\\| +)?", " ");
  }

  private static List<String> rules(Run run) {
    return run.out()
        .lines()
        .filter(line -> line.startsWith("  | rule"))
        .map(line -> line.substring(14))
        .distinct()
        .toList();
  }

  @Test
  void only_the_rules_asked_are_heard_and_the_report_says_so() {
    Run run = Run.of("audit", design, drifted, "--only", "tagged-vlan-missing,vlan-not-created");
    assertThat(run.status()).isEqualTo(1);
    assertThat(rules(run)).containsExactlyInAnyOrder("tagged-vlan-missing", "vlan-not-created");
    assertThat(flat(run))
        .startsWith("DRIFT: weakens 3")
        .contains(
            "Only 2 of " + RULES + " rules were asked.",
            "Only these rules were asked: tagged-vlan-missing, vlan-not-created. What the "
                + (RULES - 2)
                + " others would report is not told.");
  }

  @Test
  void a_group_is_all_its_rules_and_the_option_can_be_given_again() {
    String[] ofPorts =
        RuleCatalogue.ALL.stream()
            .map(rule -> rule.info())
            .filter(rule -> rule.group() == Group.PORT)
            .map(rule -> rule.id())
            .toArray(String[]::new);
    Run run = Run.of("audit", design, clean, "--only", "port", "--only", "statement-unknown");
    assertThat(run.status()).isZero();
    assertThat(flat(run))
        .contains("Only these rules were asked: " + String.join(", ", ofPorts).substring(0, 40))
        .contains("statement-unknown");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "tagged-vlan-mising|\"tagged-vlan-mising\" is no rule and no group of rules; did you mean"
            + " \"tagged-vlan-missing\"?",
        "prot|\"prot\" is no rule and no group of rules; did you mean \"port\"?",
        "port,nonsense|\"nonsense\" is no rule and no group of rules; expected \"port\", ",
      })
  void a_word_that_is_no_rule_is_refused_with_the_nearest(String only, String words) {
    Run run = Run.of("audit", design, drifted, "--only", only);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("plumbline: --only: " + words);
  }

  @Test
  void a_run_in_which_nothing_was_checked_does_not_conform() throws IOException {
    Path plan = Files.writeString(folder.resolve("plan.yaml"), AGED);
    Path config = Files.writeString(folder.resolve("sw1.cfg"), UNDATED);
    Run run = Run.of("audit", plan.toString(), config.toString(), "--only", "config-stale");
    assertThat(run.status()).isZero();
    assertThat(flat(run))
        .startsWith(
            "INCOMPLETE: nothing was checked: no rule that was asked applies to what was given."
                + " Only 1 of "
                + RULES
                + " rules was asked. 0 checks on 1 switch");
  }

  @Test
  void a_text_that_does_not_tell_its_age_is_named_where_the_design_sets_one() throws IOException {
    Path plan = Files.writeString(folder.resolve("plan.yaml"), AGED);
    Path config = Files.writeString(folder.resolve("sw1.cfg"), UNDATED);
    Path report = folder.resolve("age.json");
    String told =
        "The design sets max-age-days, but the text of 1 switch does not tell how old it is: sw1.";
    assertThat(
            flat(
                Run.of("audit", plan.toString(), config.toString(), "--report", report.toString())))
        .contains(told);
    assertThat(Schemas.problems("plumbline-report-1.schema.json", Files.readString(report)))
        .isEmpty();
    assertThat(Files.readString(report).replaceAll("\\s", "")).contains("\"ageUnknown\":[\"sw1\"]");
    assertThat(flat(Run.of("audit", plan.toString(), config.toString(), "--only", "port-shut")))
        .doesNotContain("max-age-days");
    Files.writeString(
        config, "! Last configuration change at 10:00:00 UTC Tue Nov 24 2026\n" + UNDATED);
    assertThat(flat(Run.of("audit", plan.toString(), config.toString(), "--as-of", "2026-11-25")))
        .startsWith("CONFORMS")
        .doesNotContain("how old");
  }

  @Test
  void the_one_switch_asked_for_is_that_of_a_single_text_without_hostname() throws IOException {
    Path plan =
        Files.writeString(
            folder.resolve("plan.yaml"), AGED.replace("switches: {", "switches: {sw2: {}, "));
    String text = UNDATED.replace("hostname sw1\n", "");
    Run piped = Run.reading(text, "audit", plan.toString(), "-", "--switch", "sw1");
    assertThat(piped.status()).isZero();
    assertThat(flat(piped)).contains("checks on 1 switch", "-: sw1, ");
    for (String name : List.of("capture.txt", "sw2.cfg")) {
      String file = Files.writeString(folder.resolve(name), text).toString();
      Run run = Run.of("audit", plan.toString(), file, "--switch", "SW1");
      assertThat(run.status()).as(name).isZero();
      assertThat(flat(run)).contains(file + ": sw1, ");
    }
    assertThat(
            Run.reading("hostname sw2\n" + text, "audit", plan.toString(), "-", "--switch", "sw1"))
        .extracting(Run::status)
        .isEqualTo(2);
  }

  @Test
  void a_run_that_asks_one_rule_claims_no_more_than_that() {
    Run run = Run.of("audit", design, clean, "--only", "port-shut");
    assertThat(run.status()).isZero();
    assertThat(flat(run))
        .startsWith(
            "CONFORMS: nothing that was checked differs from the design. Only 1 of "
                + RULES
                + " rules was asked.");
  }

  @Test
  void a_finding_at_a_shut_port_is_given_and_says_when_it_holds() throws IOException {
    Path file = folder.resolve("drifted/north-sw2.cfg");
    String port = "interface GigabitEthernet1/0/1\n";
    Files.writeString(file, Files.readString(file).replace(port, port + " shutdown\n"));
    String[] audit = {"audit", design, file.toString()};
    assertThat(Run.of(audit).out())
        .contains("  | rule      port-shut")
        .doesNotContain("vlan 220,231");
    Run run = Run.of("audit", design, file.toString(), "--only", "tagged-vlan-missing");
    assertThat(run.status()).isEqualTo(1);
    assertThat(rules(run)).containsExactly("tagged-vlan-missing");
    assertThat(flat(run))
        .contains("1 port in doubt for a rule that was not asked")
        .contains(
            "A rule that was not asked, port-shut, differs here too (a port that the design uses is"
                + " shut): this holds once that is repaired.")
        .contains(
            "Not asked, but it bears on what was asked: port-shut at north-sw2"
                + " GigabitEthernet1/0/1.");
  }

  @ParameterizedTest
  @CsvSource({"shutdown,port-shut", "switchport mode access,mode-differs"})
  void a_port_that_another_rule_stands_in_front_of_does_not_conform(String line, String rule)
      throws IOException {
    Path file = folder.resolve("clean/north-sw2.cfg");
    String text = Files.readString(file);
    int port = text.indexOf("interface GigabitEthernet1/0/1\n");
    int end = text.indexOf("!\n", port);
    Files.writeString(file, text.substring(0, end) + " " + line + "\n" + text.substring(end));
    Run run = Run.of("audit", design, file.toString(), "--only", "tagged-vlan-missing");
    assertThat(run.status()).isZero();
    assertThat(flat(run))
        .startsWith(
            "INCOMPLETE: no drift found, but not everything could be decided: 1 port in doubt for"
                + " a rule that was not asked.")
        .contains("Not asked, but it bears on what was asked: " + rule + " at north-sw2");
    assertThat(Run.of("audit", design, file.toString(), "--only", "vlan-not-created").out())
        .startsWith("CONFORMS");
  }

  @Test
  void an_absent_port_leaves_open_what_is_asked_of_ports() throws IOException {
    Path file = folder.resolve("clean/north-sw2.cfg");
    String text = Files.readString(file);
    int port = text.indexOf("interface GigabitEthernet1/0/1\n");
    Files.writeString(
        file, text.substring(0, port) + text.substring(text.indexOf("!\n", port) + 2));
    Run run = Run.of("audit", design, file.toString(), "--only", "fast-start-missing");
    assertThat(flat(run)).startsWith("INCOMPLETE").contains("port-absent at north-sw2");
    assertThat(Run.of("audit", design, file.toString(), "--only", "port-absent").status())
        .isEqualTo(1);
  }

  @Test
  void rules_that_the_design_switches_off_are_not_switched_on() throws IOException {
    Files.writeString(
        Path.of(design), Files.readString(Path.of(design)) + "rules: {silent: [port-shut]}\n");
    Run run = Run.of("audit", design, drifted, "--only", "port-shut");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err())
        .startsWith(
            "plumbline: --only: the design switches off all that is asked (rules.silent):"
                + " port-shut\n");
    assertThat(flat(Run.of("audit", design, drifted, "--only", "port-shut,port-absent")))
        .contains("Only these rules were asked: port-absent. What the " + (RULES - 2));
  }

  @Test
  void the_json_names_what_the_run_was_narrowed_to() throws IOException {
    Path report = folder.resolve("report.json");
    Run.of("audit", design, drifted, "--report", report.toString());
    assertThat(Files.readString(report))
        .contains("\"only\": null", "\"onlySwitches\": null", "\"inFront\": []");
    Run.of(
        "audit",
        design,
        drifted,
        "--only",
        "tagged-vlan-missing",
        "--switch",
        "south-sw2",
        "--report",
        report.toString());
    String json = Files.readString(report);
    assertThat(Schemas.problems("plumbline-report-1.schema.json", json)).isEmpty();
    assertThat(json.replaceAll("\\s+", ""))
        .contains("\"only\":[\"tagged-vlan-missing\"],\"onlySwitches\":[\"south-sw2\"]")
        .contains(
            "\"inFront\":[{\"rule\":\"port-shut\",\"at\":[{\"switch\":\"south-sw2\",\"port\":"
                + "\"GigabitEthernet1/0/2\"}]}]");
  }

  @ParameterizedTest
  @ValueSource(strings = {"north-sw1", "NORTH-SW1", "North-Sw1"})
  void one_switch_of_a_folder_is_audited_alone(String name) throws IOException {
    Files.delete(folder.resolve("drifted/south-sw1.cfg"));
    Run run = Run.of("audit", design, drifted, "--switch", name);
    assertThat(run.err()).isEmpty();
    assertThat(run.status()).isEqualTo(1);
    assertThat(flat(run))
        .contains("checks on 1 switch of ")
        .contains("Only these switches were asked for: north-sw1.")
        .contains("Outside this run: core-north, core-south, north-sw2, south-sw1, south-sw2.")
        .contains("4 files are left out: they are of no switch that was asked for")
        .doesNotContain("config-missing");
  }

  @Test
  void a_switch_that_is_asked_for_must_have_a_config_also_where_files_are_given() {
    Run run =
        Run.of(
            "audit",
            design,
            clean + "/north-sw1.cfg",
            "--switch",
            "north-sw2",
            "--switch",
            "north-sw1");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err()).isEqualTo("north-sw2: no config of this switch was given\n");
    assertThat(run.out()).startsWith("INCOMPLETE").contains("config-missing");
  }

  @Test
  void a_file_that_cannot_be_read_counts_while_it_may_be_the_one_asked_for() throws IOException {
    Files.writeString(folder.resolve("clean/unnamed.cfg"), "");
    Files.writeString(folder.resolve("clean/south-sw1.cfg"), "");
    assertThat(Run.of("audit", design, clean, "--switch", "north-sw1").status()).isZero();
    assertThat(Run.of("audit", design, clean, "--switch", "south-sw1").err())
        .isEqualTo(clean + "/south-sw1.cfg: is empty\n");
    Files.delete(folder.resolve("clean/north-sw1.cfg"));
    Run run = Run.of("audit", design, clean, "--switch", "north-sw1");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(2).anyMatch(line -> line.contains("unnamed.cfg: "));
  }

  @Test
  void an_unknown_switch_is_refused_with_the_nearest() {
    Run run = Run.of("audit", design, clean, "--switch", "nort-sw1");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err())
        .startsWith(
            "plumbline: --switch: the design has no switch \"nort-sw1\"; did you mean"
                + " \"north-sw1\"?\n");
  }
}
