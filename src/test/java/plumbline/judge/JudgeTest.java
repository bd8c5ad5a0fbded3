package plumbline.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.rules.Group;
import plumbline.rules.Outcome;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.rules.Outcome.Undecided.Cause;
import plumbline.rules.RuleInfo;
import plumbline.rules.Subject;
import plumbline.setting.Evidence;
import plumbline.setting.PortMode;
import plumbline.vlan.VlanSet;

/** What is given and what is explained follows "One cause, one finding" of the contract. */
class JudgeTest {
  private static final Subject PORT = port(1);
  private static final String PLACE = "north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0";
  private static final Subject SWITCH = Subject.ofSwitch("north-sw1");

  private static Subject port(int number) {
    PortName name = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, number);
    return Subject.ofPort("north-sw1", name.toString(), name, "vmhost-n" + number + " nic0");
  }

  private static RuleInfo rule(String id) {
    return new RuleInfo(id, Group.PORT, Severity.WEAKENS, "says " + id, "");
  }

  private static Candidate candidate(Subject subject) {
    return Candidate.of(
        subject,
        "designed",
        "found",
        "Something stops.",
        List.of(Proof.of("north-sw1.cfg", new Evidence.Line(7, "interface x"))),
        Optional.empty());
  }

  private static Undecided open(Subject subject, Cause cause) {
    return Undecided.of(
        subject,
        cause,
        "the text does not tell",
        "designed",
        List.of(Proof.of("north-sw1.cfg", new Evidence.Line(9, "interface y"))),
        Optional.empty());
  }

  private static Spoken says(String rule, Outcome outcome) {
    return new Spoken(rule(rule), outcome);
  }

  private static List<String> ids(Spoken... said) {
    return Judge.findings(List.of(said)).stream().map(Finding::id).toList();
  }

  @Test
  void an_absent_port_explains_everything_else_on_it() {
    assertThat(
            ids(
                says("mode-differs", candidate(PORT)),
                says("port-absent", candidate(PORT)),
                says("port-shut", candidate(PORT)),
                says("fast-start-missing", open(PORT, Cause.OWN))))
        .containsExactly("port-absent/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void a_shut_port_explains_the_rest_and_lists_what_remains_once_it_is_open() {
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("tagged-vlan-missing", candidate(PORT).boundTo(PortMode.TRUNK)),
                says("port-shut", candidate(PORT)),
                says("fast-start-missing", candidate(PORT))));
    assertThat(findings).extracting(Finding::rule).containsExactly("port-shut");
    assertThat(findings.get(0).consequence())
        .isEqualTo(
            "Something stops. When this is repaired, more remains: says fast-start-missing; says"
                + " tagged-vlan-missing.");
  }

  @Test
  void settings_that_the_wrong_mode_leaves_without_effect_are_no_findings_and_no_gaps() {
    assertThat(
            ids(
                says("mode-differs", candidate(PORT).spoiling(PortMode.TRUNK)),
                says("native-vlan-differs", candidate(PORT).boundTo(PortMode.TRUNK)),
                says("tagged-vlan-missing", open(PORT, Cause.OWN).boundTo(PortMode.TRUNK)),
                says("fast-start-missing", candidate(PORT))))
        .containsExactly(
            "fast-start-missing/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0",
            "mode-differs/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void causes_on_different_ports_do_not_explain_each_other() {
    assertThat(ids(says("port-shut", candidate(port(2))), says("mode-differs", candidate(port(1)))))
        .hasSize(2);
  }

  @Test
  void a_native_vlan_in_use_replaces_one_that_only_differs() {
    assertThat(
            ids(
                says("native-vlan-differs", candidate(PORT)),
                says("native-vlan-in-use", candidate(PORT))))
        .containsExactly("native-vlan-in-use/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void a_line_that_puts_a_port_into_the_wrong_vlan_explains_who_lives_there() {
    Candidate voice =
        Candidate.of(
            PORT,
            "designed",
            "found",
            "Somebody lives there.",
            List.of(Proof.of("north-sw1.cfg", new Evidence.Line(8, "voice"))),
            Optional.empty());
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("access-vlan-differs", candidate(PORT)),
                says("native-vlan-in-use", candidate(PORT))));
    assertThat(findings)
        .extracting(one -> one.rule() + ": " + one.consequence())
        .containsExactly("access-vlan-differs: Something stops. Something stops.");
    assertThat(ids(says("access-vlan-differs", candidate(PORT)), says("native-vlan-in-use", voice)))
        .as("another line puts somebody there")
        .hasSize(2);
    assertThat(ids(says("voice-vlan-differs", voice), says("native-vlan-in-use", voice)))
        .containsExactly("voice-vlan-differs/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void a_gap_of_the_ports_own_is_an_unverified_finding_at_the_port() {
    List<Finding> findings =
        Judge.findings(List.of(says("tagged-vlan-missing", open(PORT, Cause.OWN))));
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).severity()).isEqualTo(Severity.UNVERIFIED);
    assertThat(findings.get(0).found()).isEqualTo("cannot be told: the text does not tell");
    assertThat(findings.get(0).place().orElseThrow().toString())
        .isEqualTo("north-sw1 GigabitEthernet1/0/1");
  }

  @Test
  void a_script_gives_one_unverified_finding_per_rule_and_switch() {
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("port-shut", open(port(1), Cause.TEXT)),
                says("port-shut", open(port(2), Cause.TEXT)),
                says("fast-start-missing", open(port(2), Cause.TEXT))));
    assertThat(findings)
        .extracting(Finding::id)
        .containsExactly("fast-start-missing/north-sw1//", "port-shut/north-sw1//");
    assertThat(findings.get(1).found())
        .isEqualTo("cannot be told on 2 ports: the text does not tell");
    assertThat(findings.get(1).others())
        .extracting(Place::toString)
        .containsExactly("north-sw1 GigabitEthernet1/0/1", "north-sw1 GigabitEthernet1/0/2");
  }

  @Test
  void a_cut_text_is_one_finding_that_counts_what_it_leaves_open_while_facts_stand() {
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("config-truncated", candidate(SWITCH).at(Severity.UNVERIFIED)),
                says("port-absent", open(port(1), Cause.CUT)),
                says("port-shut", open(port(2), Cause.CUT)),
                says("mode-differs", open(port(2), Cause.CUT)),
                says("access-vlan-differs", candidate(port(3)))));
    assertThat(findings)
        .extracting(Finding::rule)
        .containsExactly("config-truncated", "access-vlan-differs");
    assertThat(findings.get(0).consequence())
        .isEqualTo("Something stops. Left open by it: 3 checks on 2 ports.");
  }

  @Test
  void a_gap_of_the_text_is_never_dropped_when_no_finding_stands_for_it() {
    assertThat(
            ids(
                says("port-shut", open(PORT, Cause.CUT)),
                says("vlan-not-created", open(SWITCH, Cause.VLAN_DATABASE)),
                says("fast-start-missing", open(PORT, Cause.MODE))))
        .containsExactly(
            "vlan-not-created/north-sw1//",
            "fast-start-missing/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0",
            "port-shut/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void an_unknown_vlan_list_and_an_open_mode_are_said_once() {
    assertThat(
            ids(
                says("vlan-database-unknown", candidate(SWITCH)),
                says("vlan-not-created", open(SWITCH, Cause.VLAN_DATABASE)),
                says("negotiation-open", candidate(PORT)),
                says("fast-start-missing", open(PORT, Cause.MODE))))
        .containsExactly(
            "vlan-database-unknown/north-sw1//",
            "negotiation-open/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  private static Undecided byLine(Subject subject, int line) {
    return Undecided.of(
        subject,
        Cause.OWN,
        "line " + line + " is not understood",
        "designed",
        List.of(Proof.of("north-sw1.cfg", new Evidence.Line(line, "switchport"))),
        Optional.empty());
  }

  private static Candidate unknown(int line) {
    return Candidate.of(
        SWITCH,
        "designed",
        "found",
        "Not known.",
        List.of(Proof.of("north-sw1.cfg", new Evidence.Line(line, "switchport"))),
        Optional.empty());
  }

  @Test
  void what_an_unknown_statement_leaves_open_is_told_once_in_its_finding() {
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("tagged-vlan-missing", byLine(port(2), 24).boundTo(PortMode.TRUNK)),
                says("mode-differs", byLine(port(2), 24)),
                says("negotiation-open", byLine(port(2), 24)),
                says("fast-start-missing", byLine(port(1), 24)),
                says("statement-unknown", unknown(24))));
    assertThat(findings).extracting(Finding::rule).containsExactly("statement-unknown");
    assertThat(findings.get(0).consequence())
        .isEqualTo(
            "Not known. Left open by it, and not counted as conforming, are 4 checks:"
                + " fast-start-missing on GigabitEthernet1/0/1; mode-differs, negotiation-open,"
                + " tagged-vlan-missing on GigabitEthernet1/0/2.");
    assertThat(findings.get(0).others())
        .extracting(Place::toString)
        .containsExactly("north-sw1 GigabitEthernet1/0/1", "north-sw1 GigabitEthernet1/0/2");
  }

  @Test
  void what_no_finding_about_unknown_statements_lists_stays_a_finding() {
    Spoken gap = says("port-shut", byLine(PORT, 24));
    assertThat(ids(gap)).containsExactly("port-shut/" + PLACE);
    assertThat(ids(gap, says("statement-unknown", unknown(25))))
        .containsExactly("statement-unknown/north-sw1//", "port-shut/" + PLACE);
    Undecided two =
        Undecided.of(
            PORT,
            Cause.OWN,
            "two lines",
            "designed",
            List.of(
                Proof.of("north-sw1.cfg", new Evidence.Line(24, "switchport")),
                Proof.of("north-sw1.cfg", new Evidence.Line(26, "switchport trunk"))),
            Optional.empty());
    assertThat(ids(says("port-shut", two), says("statement-unknown", unknown(24))))
        .containsExactly("statement-unknown/north-sw1//", "port-shut/" + PLACE);
  }

  @Test
  void an_open_mode_lists_what_depends_on_it() {
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("fast-start-missing", open(PORT, Cause.MODE)),
                says("native-vlan-differs", byLine(PORT, 30).boundTo(PortMode.TRUNK)),
                says("port-shut", byLine(PORT, 31)),
                says("negotiation-open", byLine(PORT, 24)),
                says("mode-differs", byLine(PORT, 24))));
    assertThat(findings)
        .extracting(Finding::rule)
        .containsExactly("mode-differs", "native-vlan-differs", "port-shut");
    assertThat(findings.get(0).consequence())
        .isEqualTo(
            "The text given does not decide this; it is not counted as conforming. Open by the same"
                + " cause: fast-start-missing, negotiation-open.");
  }

  @Test
  void one_line_that_leaves_a_list_open_is_one_finding() {
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("tagged-vlan-extra", byLine(PORT, 24)),
                says("tagged-vlan-missing", byLine(PORT, 24)),
                says("tagged-vlan-missing", byLine(port(2), 24))));
    assertThat(findings)
        .extracting(one -> one.rule() + " " + one.place().orElseThrow())
        .containsExactly(
            "tagged-vlan-missing north-sw1 GigabitEthernet1/0/1",
            "tagged-vlan-missing north-sw1 GigabitEthernet1/0/2");
    assertThat(findings.get(0).consequence())
        .endsWith(" Open by the same cause: tagged-vlan-extra.");
  }

  @Test
  void a_shut_port_names_what_the_text_leaves_open_there() {
    List<Finding> findings =
        Judge.findings(
            List.of(says("port-shut", candidate(PORT)), says("mode-differs", byLine(PORT, 24))));
    assertThat(findings).extracting(Finding::rule).containsExactly("port-shut");
    assertThat(findings.get(0).consequence())
        .isEqualTo("Something stops. Checks that the text leaves open there: mode-differs.");
  }

  @Test
  void a_vlan_that_the_switch_lacks_explains_that_a_trunk_bars_it_and_lists_the_trunk() {
    Candidate gone = candidate(SWITCH).about(VlanSet.of(231));
    Candidate voice = candidate(PORT).about(VlanSet.of(231));
    Candidate more = candidate(port(2)).about(VlanSet.of(220, 231));
    List<Finding> findings =
        Judge.findings(
            List.of(
                says("tagged-vlan-missing", voice),
                says("tagged-vlan-missing", more),
                says("tagged-vlan-extra", voice),
                says("vlan-not-created", gone)));
    assertThat(findings)
        .extracting(one -> one.rule() + " " + one.place().orElseThrow() + ": " + one.consequence())
        .containsExactly(
            "vlan-not-created north-sw1: Something stops. When this is repaired, more remains:"
                + " says tagged-vlan-missing (GigabitEthernet1/0/1).",
            "tagged-vlan-extra north-sw1 GigabitEthernet1/0/1: Something stops.",
            "tagged-vlan-missing north-sw1 GigabitEthernet1/0/2: Something stops.");
    assertThat(
            ids(
                says("vlan-not-created", gone),
                says("vlan-inactive", candidate(SWITCH).about(VlanSet.of(220))),
                says("tagged-vlan-missing", more)))
        .as("between them the two explain all that the trunk bars")
        .containsExactly("vlan-inactive/north-sw1//", "vlan-not-created/north-sw1//");
    assertThat(
            ids(
                says("vlan-not-created", open(SWITCH, Cause.OWN)),
                says("tagged-vlan-missing", voice)))
        .as("whether the switch lacks it is open, that the trunk bars it is not")
        .hasSize(2);
  }

  @Test
  void causes_that_only_together_stop_a_gateway_each_carry_it_at_its_severity() {
    Candidate gateway =
        candidate(SWITCH)
            .about(VlanSet.of(210))
            .at(Severity.BREAKS)
            .derivedFrom(List.of(PORT.place().orElseThrow(), port(2).place().orElseThrow()));
    Candidate barred = candidate(PORT).about(VlanSet.of(210));
    List<Spoken> said =
        List.of(
            says("gateway-not-working", gateway),
            says("tagged-vlan-missing", barred),
            says("port-shut", candidate(port(2))),
            says("fast-start-missing", candidate(PORT)));
    assertThat(Judge.findings(said))
        .extracting(one -> one.severity() + " " + one.rule() + ": " + one.consequence())
        .containsExactly(
            "weakens fast-start-missing: Something stops.",
            "breaks tagged-vlan-missing: Something stops. Until then the designed does not work.",
            "breaks port-shut: Something stops. Until then the designed does not work.");
  }

  @Test
  void what_conforms_gives_no_finding() {
    assertThat(ids(says("port-shut", new Outcome.Conforms(PORT)))).isEmpty();
  }

  @Test
  void findings_stand_in_the_order_of_switch_port_number_and_rule_whatever_the_input_order() {
    List<Spoken> said = new ArrayList<>();
    for (int number : List.of(10, 2, 1)) {
      said.add(says("mode-differs", candidate(port(number))));
      said.add(says("fast-start-missing", candidate(port(number))));
    }
    said.add(says("vlan-not-created", candidate(SWITCH)));
    said.add(says("config-missing", candidate(Subject.ofSwitch("harbour-sw1"))));
    List<Finding> first = Judge.findings(said);
    assertThat(first)
        .extracting(one -> one.rule() + " " + one.place().orElseThrow())
        .containsExactly(
            "config-missing harbour-sw1",
            "vlan-not-created north-sw1",
            "fast-start-missing north-sw1 GigabitEthernet1/0/1",
            "mode-differs north-sw1 GigabitEthernet1/0/1",
            "fast-start-missing north-sw1 GigabitEthernet1/0/2",
            "mode-differs north-sw1 GigabitEthernet1/0/2",
            "fast-start-missing north-sw1 GigabitEthernet1/0/10",
            "mode-differs north-sw1 GigabitEthernet1/0/10");
    for (int seed = 0; seed < 20; seed++) {
      List<Spoken> shuffled = new ArrayList<>(said);
      Collections.shuffle(shuffled, new Random(seed));
      assertThat(Judge.findings(shuffled)).isEqualTo(first);
    }
  }
}
