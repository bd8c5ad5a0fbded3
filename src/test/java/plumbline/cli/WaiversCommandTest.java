package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.golden.Schemas;

/** A site with two findings, and what waivers cover of them. */
class WaiversCommandTest {
  private static final String HEAD = "format: plumbline-waivers/1\nwaivers:\n";

  @TempDir private Path home;
  private Path design;
  private Path configs;

  /**
   * north-sw2 lacks 231 and 232 on a trunk (weakens), and south-sw1 has a host's only port of a
   * kind shut (breaks).
   */
  @BeforeEach
  void site() throws IOException {
    Path demo = home.resolve("demo");
    DemoFiles.write(demo);
    design = demo.resolve(DemoFiles.DESIGN);
    configs = demo.resolve(DemoFiles.CLEAN);
    Path north = configs.resolve("north-sw2.cfg");
    Files.writeString(
        north,
        Files.readString(north).replaceFirst("allowed vlan 220,231,232", "allowed vlan 220"));
    Path south = configs.resolve("south-sw1.cfg");
    Files.writeString(
        south,
        Files.readString(south)
            .replace(
                "interface GigabitEthernet1/0/3\n", "interface GigabitEthernet1/0/3\n shutdown\n"));
  }

  @Test
  void without_waivers_both_count() throws IOException {
    Run run = audit("");
    assertThat(run.out()).startsWith("DRIFT: breaks 1, weakens 1.\n").doesNotContain("waive");
  }

  @Test
  void a_finding_that_is_covered_wholly_counts_as_waived_only() throws IOException {
    Run run =
        audit(
            waiver("tagged-vlan-missing", "north-sw2", "Gi1/0/1", "vlans: [231-232]", "weakens")
                + waiver("port-shut", "south-*", "GigabitEthernet 1/0/3", "", "breaks"));
    assertThat(run.status()).isZero();
    assertThat(run.out())
        .startsWith("CONFORMS: nothing that counts as drift in this run; 2 waived.")
        .contains("\nWAIVED: 2 findings\n", "accepted by change board", "until 2027-01-31")
        .doesNotContain("Worst:");
  }

  @Test
  void a_waiver_covers_only_the_vlans_that_it_names() throws IOException {
    Run run =
        audit(waiver("tagged-vlan-missing", "north-sw2", "Gi1/0/1", "vlans: [232]", "weakens"));
    assertThat(run.out())
        .startsWith("DRIFT: breaks 1, weakens 1.\n")
        .contains("| waived    VLAN 232 until 2027-01-31", "not VLAN 231: that is open");
    Run two =
        audit(
            waiver("tagged-vlan-missing", "north-sw2", "Gi1/0/1", "vlans: [232]", "weakens")
                + waiver("tagged-vlan-*", "north-sw2", "Gi1/0/*", "vlans: [231]", "weakens"));
    assertThat(two.out()).startsWith("DRIFT: breaks 1, 1 waived.\n");
    Run none = audit(waiver("tagged-vlan-missing", "north-sw2", "Gi1/0/1", "", "weakens"));
    assertThat(flat(none.out()))
        .startsWith("DRIFT: breaks 1, weakens 1, untidy 1.")
        .contains("is about VLANs 231-232, and it names none");
  }

  @Test
  void a_waiver_covers_nothing_that_became_worse_than_it_was_accepted() throws IOException {
    Run run = audit(waiver("port-shut", "south-sw1", "Gi1/0/3", "", "weakens"));
    assertThat(flat(run.out()))
        .startsWith("DRIFT: breaks 1, weakens 1. ")
        .contains("waived not by waivers.yaml:3: accepted as weakens, and it is breaks now");
  }

  @Test
  void an_expired_waiver_brings_its_finding_back_and_is_one_itself() throws IOException {
    String waiver = waiver("port-shut", "south-sw1", "Gi1/0/3", "", "breaks");
    assertThat(audit(waiver.replace("2027-01-31", "2026-11-25")).out())
        .startsWith("DRIFT: weakens 1, 1 waived.\n")
        .contains("(today)");
    assertThat(audit(waiver.replace("2027-01-31", "2026-11-24")).out())
        .startsWith("DRIFT: breaks 1, weakens 1, unverified 1.\n")
        .contains("| found     the waiver ended 1 day ago\n");
    // another one that holds covers it: the old one is left over
    assertThat(audit(waiver.replace("2027-01-31", "2026-11-24") + waiver).out())
        .startsWith("DRIFT: weakens 1, untidy 1, 1 waived.\n");
  }

  @Test
  void a_waiver_is_called_unused_only_by_a_run_that_looked_at_all_it_may_be_for()
      throws IOException {
    String unused = waiver("bpdu-guard-missing", "north-sw1", "Gi1/0/9", "", "weakens");
    assertThat(flat(audit(unused).out()))
        .startsWith("DRIFT: breaks 1, weakens 1, untidy 1.")
        .contains("the waiver covers nothing: there is no such finding");
    Run one = audit(unused, configs.resolve("south-sw1.cfg").toString());
    assertThat(flat(one.out()))
        .startsWith("DRIFT: breaks 1.")
        .contains("1 waiver; 1 may be for what this run did not check");
    assertThat(audit(unused, configs.toString(), "--only", "port-shut").out())
        .startsWith("DRIFT: breaks 1. Only 1 of ");
    Path north = configs.resolve("north-sw1.cfg");
    String text = Files.readString(north);
    Files.writeString(north, text.substring(0, text.indexOf("interface GigabitEthernet1/0/9")));
    assertThat(audit(unused).out()).doesNotContain("waiver-unused");
    Files.writeString(
        north,
        text.replaceFirst(
            "interface GigabitEthernet1/0/9\n", "interface GigabitEthernet1/0/9\n shutdown\n"));
    // what it is for may be behind the shut port, but the guard there is as designed
    assertThat(audit(unused).out()).contains("waiver-unused");
  }

  @Test
  void a_waiver_for_a_finding_that_another_one_hides_is_not_unused() throws IOException {
    Path north = configs.resolve("north-sw2.cfg");
    Files.writeString(
        north,
        Files.readString(north)
            .replaceFirst(
                "interface GigabitEthernet1/0/1\n", "interface GigabitEthernet1/0/1\n shutdown\n"));
    assertThat(
            audit(waiver("tagged-vlan-missing", "north-sw2", "Gi1/0/1", "vlans: [232]", "weakens"))
                .out())
        .doesNotContain("waiver-unused");
  }

  @Test
  void waivers_that_end_within_thirty_days_are_listed_the_next_first() throws IOException {
    String one = waiver("port-shut", "south-sw1", "Gi1/0/3", "", "breaks");
    assertThat(audit(one.replace("2027-01-31", "2026-12-25")).out())
        .contains(
            "\nWaivers that end within 30 days\n  2026-12-25 (30 days left): port-shut at"
                + " south-sw1 Gi1/0/3, CHG-2060, accepted\n");
    assertThat(audit(one.replace("2027-01-31", "2026-12-26")).out())
        .doesNotContain("end within 30 days");
  }

  @Test
  void the_json_report_says_the_same_and_has_the_published_shape() throws IOException {
    Path report = home.resolve("report.json");
    audit(
        waiver("tagged-vlan-missing", "north-sw2", "Gi1/0/1", "vlans: [232]", "weakens")
            + waiver("port-shut", "south-sw1", "Gi1/0/3", "", "breaks")
                .replace("2027-01-31", "2026-12-01\n    renewed: [2026-06-30, 2026-09-30]"),
        configs.toString(),
        "--report",
        report.toString());
    String json = Files.readString(report);
    assertThat(Schemas.problems("plumbline-report-1.schema.json", json)).isEmpty();
    assertThat(json.replaceAll("\\s+", " "))
        .contains(
            "\"breaks\": 0, \"weakens\": 1, \"unverified\": 0, \"untidy\": 0, \"waived\": 1,",
            "\"whole\": false, \"vlans\": [ 232 ]",
            "\"renewed\": [ \"2026-06-30\", \"2026-09-30\" ]",
            "\"state\": null");
  }

  @Test
  void what_is_wrong_in_the_file_is_told_at_once_with_its_places() throws IOException {
    Path file =
        Files.writeString(
            home.resolve("waivers.yaml"),
            HEAD
                + """
                  - rule: tagged-vlan-mising
                    switch: north-sw2
                    port: Tw1/0/1
                    vlans: [5000]
                    severity: bad
                    why:
                    accepted-by: ops
                    until: 2027-02-30
                    whatever: 1
                  - rule: waiver-expired
                    severity: untidy
                    why: "x"
                    accepted-by: ops
                    until: 2027-01-31
                    renewed: [2027-03-01]
                  - rule: port-*
                    severity: breaks
                    switch:
                """);
    Run run = Run.of("audit", design.toString(), configs.toString(), "--waivers", file.toString());
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().replace(file.toString(), "w"))
        .isEqualTo(
            """
            w:3:11: unknown rule "tagged-vlan-mising"; did you mean "tagged-vlan-missing"?
            w:5:11: "Tw1/0/1" could be several ports; expected "TwentyFiveGigE" or "TwoGigabitEthernet"
            w:6:13: "vlans" must be numbers from 1 to 4094 and ranges such as 500-599, found "5000"
            w:7:15: "bad" is no severity; expected "breaks", "weakens", "unverified" or "untidy"
            w:8:9: "why" has no value; expected the reason, in words
            w:10:12: "2027-02-30" is no day; expected a day such as 2027-01-31
            w:11:5: unknown key "whatever" in a waiver; expected "subject", "ticket" or "renewed"
            w:12:11: a waiver cannot be waived; give it a new date, or take it out
            w:17:15: "renewed" lists the last days that the waiver had before, oldest first, each before "until"
            w:18:5: a waiver needs the key "accepted-by", who accepted it
            w:18:5: a waiver needs the key "until", the last day on which it holds, a day such as 2027-01-31
            w:18:5: a waiver needs the key "why", the reason, in words
            w:20:12: "switch" has no value; leave it out for any, or write "" for none
            """);
  }

  @Test
  void a_proposal_is_invalid_until_it_is_filled_in_and_then_covers_all() throws IOException {
    Path file = home.resolve("proposal.yaml");
    Run run = audit("", configs.toString(), "--propose-waivers", file.toString());
    assertThat(run.status()).isEqualTo(1);
    String text = Files.readString(file);
    Run empty =
        Run.of("audit", design.toString(), configs.toString(), "--waivers", file.toString());
    assertThat(empty.status()).isEqualTo(64);
    assertThat(empty.err()).hasLineCount(6);
    Files.writeString(
        file,
        text.replace("why:\n", "why: as agreed\n")
            .replace("accepted-by:\n", "accepted-by: change board\n")
            .replace("until:\n", "until: 2027-01-31\n"));
    Run filled =
        Run.of(
            "audit",
            design.toString(),
            configs.toString(),
            "--as-of",
            "2026-11-25",
            "--waivers",
            file.toString());
    assertThat(filled.out()).startsWith("CONFORMS").contains("2 waived");
    Run again = audit("", configs.toString(), "--propose-waivers", file.toString());
    assertThat(again.status()).isEqualTo(64);
    assertThat(again.err()).contains("exists already; a proposal replaces nothing");
    Path clean = home.resolve("none.yaml");
    Run nothing =
        audit("", configs.resolve("core-south.cfg").toString(), "--propose-waivers", "" + clean);
    assertThat(nothing.err()).contains("not written, for nothing is open");
    assertThat(clean).doesNotExist();
  }

  @Test
  void a_file_of_waivers_beside_design_and_configs_is_neither() throws IOException {
    String text = HEAD + waiver("port-shut", "south-sw1", "Gi1/0/3", "", "breaks");
    Files.writeString(configs.resolve("waivers.yaml"), text);
    Path beside = Files.writeString(design.resolveSibling("waivers.yaml"), text);
    Path folder = Files.createDirectory(home.resolve("plan"));
    Files.copy(design, folder.resolve("design.yaml"));
    Files.copy(beside, folder.resolve("waivers.yaml"));
    Run run =
        Run.of(
            "audit",
            folder.toString(),
            configs.toString(),
            "--as-of",
            "2026-11-25",
            "--waivers",
            folder.resolve("waivers.yaml").toString());
    assertThat(run.err()).isEmpty();
    assertThat(flat(run.out()))
        .startsWith("DRIFT: weakens 1, 1 waived.")
        .contains("clean/waivers.yaml: left out, for it is a file of waivers and no config");
  }

  @Test
  void secrets_in_a_reason_stay_hidden() throws IOException {
    String text =
        waiver("port-shut", "south-sw1", "Gi1/0/3", "", "breaks")
            .replace("until cabling", "snmp-server community hunter2 RO");
    assertThat(audit(text).out()).contains("WAIVED").doesNotContain("hunter2");
  }

  private static String waiver(
      String rule, String onSwitch, String port, String vlans, String severity) {
    return "  - rule: "
        + rule
        + "\n    switch: "
        + onSwitch
        + "\n    port: \""
        + port
        + "\"\n"
        + (vlans.isEmpty() ? "" : "    " + vlans + "\n")
        + "    severity: "
        + severity
        + "\n    why: until cabling\n    accepted-by: change board\n    ticket: CHG-2060\n"
        + "    until: 2027-01-31\n";
  }

  private static String flat(String text) {
    return text.replaceAll("\\n  \\|? +", " ").replaceAll("\\s+", " ");
  }

  private Run audit(String waivers, String... more) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("audit", design.toString()));
    arguments.addAll(more.length == 0 ? List.of(configs.toString()) : Arrays.asList(more));
    arguments.addAll(List.of("--as-of", "2026-11-25"));
    Path file = home.resolve("waivers.yaml");
    if (!waivers.isEmpty()) {
      Files.writeString(file, HEAD + waivers);
      arguments.addAll(List.of("--waivers", file.toString()));
    }
    Run run = Run.of(arguments.toArray(String[]::new));
    return new Run(run.status(), run.out().replace(home + "/", ""), run.err());
  }
}
