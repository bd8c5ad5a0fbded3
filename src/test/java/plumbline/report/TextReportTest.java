package plumbline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import plumbline.finding.Finding;
import plumbline.golden.GoldenFile;
import plumbline.result.Result;
import plumbline.text.Display;

class TextReportTest {
  @Test
  void drift_is_told_worst_first() {
    GoldenFile.check("report/drift.txt", TextReport.of(Samples.drift(), false));
  }

  @Test
  void a_run_without_findings_is_short() {
    GoldenFile.check("report/conforms.txt", TextReport.of(Samples.conforms(), false));
  }

  @Test
  void an_incomplete_run_does_not_say_conforms() {
    GoldenFile.check("report/incomplete.txt", TextReport.of(Samples.incomplete(), false));
  }

  @Test
  void ports_that_lack_the_same_in_the_same_words_are_one_block() {
    List<Finding> phones = new ArrayList<>();
    IntStream.rangeClosed(9, 49)
        .filter(port -> port != 12)
        .forEach(port -> phones.add(Samples.phone(port, "desk-phone")));
    phones.add(Samples.phone(12, "ticket-printer"));
    phones.add(Samples.findings().get(5));
    Result row = Samples.with(Samples.drift(), phones.toArray(Finding[]::new));
    GoldenFile.check("report/alike.txt", TextReport.of(row, false));
    assertThat(JsonReport.of(row, "0").split("\"rule\":\\s*\"fast-start-missing\"", -1))
        .hasSize(42);
  }

  @Test
  void a_worse_finding_of_one_port_stands_first_and_its_twin_stays_in_the_block() {
    Finding worse = Samples.at(Samples.findings().get(5), Samples.phone(11, "desk-phone"));
    Result row =
        Samples.with(
            Samples.drift(),
            Samples.phone(10, "desk-phone"),
            worse,
            Samples.phone(11, "desk-phone"));
    String text = TextReport.of(row, false);
    assertThat(text.indexOf("BREAKS  GigabitEthernet1/0/11, desk-phone"))
        .isPositive()
        .isLessThan(text.indexOf("WEAKENS  GigabitEthernet1/0/10-11, 2 ports: desk-phone"));
  }

  @Test
  void the_inputs_of_a_fleet_are_summed_up() {
    GoldenFile.check("report/fleet.txt", TextReport.of(Samples.manyConfigs(60), false));
  }

  @Test
  void the_first_three_lines_tell_whether_to_worry() {
    List<String> head = TextReport.of(Samples.drift(), false).lines().limit(3).toList();
    assertThat(head.get(0)).startsWith("DRIFT: breaks 1, weakens 2");
    assertThat(String.join(" ", head).replaceAll(" +", " "))
        .contains("north-sw2 GigabitEthernet1/0/1", "cannot use nic1");
  }

  @Test
  void no_line_is_wider_than_eighty_columns_and_none_ends_in_a_blank() {
    assertThat(TextReport.of(Samples.drift(), false).lines())
        .allMatch(line -> Display.width(line) <= 80)
        .noneMatch(line -> line.endsWith(" "));
  }

  @Test
  void where_every_key_of_the_design_has_a_rule_the_verdict_needs_no_reserve() {
    Result all = Samples.of(Samples.conforms(), Samples.conforms().configs(), List.of());
    assertThat(TextReport.of(all, false))
        .startsWith("CONFORMS: nothing differs from the design.\n")
        .doesNotContain("No rule of this version");
  }

  @Test
  void a_conforming_run_claims_only_what_was_checked_and_names_the_rest() {
    assertThat(TextReport.of(Samples.conforms(), false))
        .startsWith("CONFORMS: nothing that was checked differs from the design. Not checked")
        .contains("these keys of the design: bundle (9 ports),\n    services (1 service).");
  }

  @Test
  void a_design_without_a_port_of_these_switches_is_said_to_have_checked_none() {
    Result none =
        Samples.of(
            Samples.conforms(),
            List.of(Samples.config("a.cfg", "a", "campus", true, 0)),
            List.of());
    assertThat(TextReport.of(none, false))
        .startsWith("CONFORMS: no port was checked: the design covers none")
        .contains("a.cfg: a, 214 lines, 0 ports in the design, 52 in the config");
  }

  @Test
  void a_run_without_a_switch_of_the_design_says_that_nothing_was_audited() {
    Result none =
        Samples.of(
            Samples.incomplete(),
            List.of(Samples.config("a.cfg", "a", "campus", false, 0)),
            List.of());
    assertThat(TextReport.of(none, false))
        .startsWith("INCOMPLETE: nothing was audited: unverified 1")
        .contains("410 checks on 0 switches")
        .doesNotContain("no drift found");
  }

  @Test
  void switches_that_no_finding_is_about_are_named() {
    List<Result.ConfigFile> configs = new ArrayList<>(Samples.drift().configs());
    configs.add(Samples.config("c.cfg", "pier-dist1", "campus"));
    Result three = Samples.of(Samples.drift(), configs, List.of());
    assertThat(TextReport.of(three, false)).contains("\nWithout a finding\n  pier-dist1\n");
    assertThat(TextReport.of(Samples.drift(), false)).doesNotContain("Without a finding");
  }

  @Test
  void colour_adds_nothing_but_colour() {
    String coloured = TextReport.of(Samples.drift(), true);
    assertThat(coloured).contains("\u001b[1;31mBREAKS\u001b[0m");
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", ""))
        .isEqualTo(TextReport.of(Samples.drift(), false));
  }

  @Test
  void no_control_character_of_a_config_reaches_the_terminal() {
    String report = TextReport.of(Samples.drift(), false);
    assertThat(report.chars().filter(c -> Character.isISOControl(c) && c != '\n')).isEmpty();
    assertThat(report).doesNotContain("\u202e").contains("Fähre 渡し船");
  }

  @Test
  void edge_port_is_said_once_and_beside_fast_start() {
    assertThat(TextReport.of(Samples.drift(), false))
        .containsOnlyOnce("edge port")
        .containsOnlyOnce("fast-start (edge port)");
  }

  @Test
  void every_finding_is_told_with_both_places() {
    String report = TextReport.of(Samples.drift(), false);
    assertThat(report)
        .contains("configs/north-sw2.cfg:61: switchport mode access", "design.yaml:17");
    assertThat(Samples.findings()).allMatch(finding -> report.contains(finding.rule()));
  }

  @Test
  void the_worst_finding_is_the_one_that_touches_most() {
    Finding port = Samples.findings().get(1);
    Finding two = Samples.findings().get(2);
    Finding device = Samples.findings().get(4);
    assertThat(FindingOrder.worst(List.of(port, two))).contains(two);
    assertThat(FindingOrder.worst(List.of(port, Samples.findings().get(5), two)))
        .contains(Samples.findings().get(5));
    assertThat(FindingOrder.worst(List.of(Samples.findings().get(0), device))).contains(device);
    assertThat(FindingOrder.worst(List.of(Samples.findings().get(3), device))).contains(device);
  }

  @Test
  void only_the_severities_that_occur_are_explained_at_the_end() {
    assertThat(TextReport.of(Samples.incomplete(), false))
        .endsWith(
            """

            What the severities mean
              unverified  the text that was given does not tell; the finding says why
              untidy      not as designed, without effect on traffic
            """);
    assertThat(TextReport.of(Samples.conforms(), false)).doesNotContain("What the severities");
    assertThat(TextReport.of(Samples.drift(), false))
        .contains("  breaks ", "  weakens ", "  unverified ", "  untidy ");
  }

  @Test
  void a_run_without_a_check_says_so() {
    Result nothing = Samples.unchecked();
    assertThat(TextReport.of(nothing, false))
        .startsWith("INCOMPLETE: nothing was checked: no rule that was asked applies to what was");
  }

  @Test
  void a_finding_about_the_network_is_no_file() {
    Finding about = Samples.nobodys("call-control");
    Finding service =
        new Finding(
            "service-single-point",
            about.severity(),
            about.place(),
            about.portOrder(),
            about.others(),
            about.vlans(),
            about.subject(),
            about.designed(),
            about.found(),
            about.consequence(),
            about.evidence(),
            about.design());
    assertThat(TextReport.of(Samples.with(Samples.drift(), service), false))
        .contains(
            "Worst: call-control: ", "The network as a whole\n", "  UNVERIFIED  call-control\n")
        .doesNotContain("the file call-control");
  }

  @Test
  void a_finding_about_a_file_without_a_switch_names_the_file() {
    Result file = Samples.with(Samples.drift(), Samples.nobodys("nosuch.cfg"));
    assertThat(TextReport.of(file, false))
        .contains("Worst: the file nosuch.cfg: ", "  UNVERIFIED  the file nosuch.cfg\n");
    Result input = Samples.with(Samples.drift(), Samples.nobodys("-"));
    assertThat(TextReport.of(input, false))
        .contains("Worst: standard input: ", "  UNVERIFIED  standard input\n");
  }

  @Test
  void of_many_lines_in_one_finding_the_text_names_a_dozen_and_counts_the_others() {
    String lines =
        IntStream.rangeClosed(1, 40)
            .mapToObj(number -> "line " + number + " \"frobnicate\"")
            .collect(Collectors.joining(", "));
    Finding many = Samples.unknown(lines);
    Result result = Samples.with(Samples.drift(), many);
    String text = TextReport.of(result, false).replaceAll("\\n  \\|? +", " ");
    assertThat(text)
        .contains("line 12 \"frobnicate\" and 28 more")
        .doesNotContain("line 13 \"frobnicate\"");
    assertThat(JsonReport.of(result, "0")).contains("line 40 \\\"frobnicate");
    String dozen = lines.substring(0, lines.indexOf(", line 13"));
    assertThat(
            TextReport.of(Samples.with(Samples.drift(), Samples.unknown(dozen)), false)
                .replaceAll("\\n  \\|? +", " "))
        .contains(dozen);
  }
}
