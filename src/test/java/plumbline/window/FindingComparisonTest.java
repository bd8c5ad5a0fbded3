package plumbline.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.vlan.VlanSet;

class FindingComparisonTest {
  private static final String MISSING = "tagged-vlan-missing";
  private static final Partners PARTNERS =
      new Partners(
          Windows.design(
              """
              roles: {uplink: {fast-start: true}}
              switches: {sw1: {}, sw2: {}}
              hosts:
                host:
                  ports:
                    nic0: {to: sw1 Gi1/0/1, role: uplink}
                    nic1: {to: sw2 Gi1/0/1, role: uplink}
                  pairs: [[nic0, nic1]]
              """));

  private static Finding at(String rule, String name, int port, Severity severity, int... vlans) {
    PortName place = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, port);
    return new Finding(
        rule,
        severity,
        Optional.of(port == 0 ? Place.ofSwitch(name) : Place.ofPort(name, place.toString())),
        port == 0 ? Optional.empty() : Optional.of(place),
        List.of(),
        VlanSet.of(vlans),
        "",
        "",
        "",
        "",
        List.of(),
        Optional.empty());
  }

  private static List<WindowFinding> compare(List<Finding> before, List<Finding> after) {
    return FindingComparison.withNotDone(
        FindingComparison.withUncovered(
            new FindingComparison(Set.of(), Set.of()).of(before, after)),
        PARTNERS);
  }

  private static WindowFinding of(List<WindowFinding> all, String switchName) {
    return all.stream()
        .filter(
            one -> one.finding().switchName().equals(switchName) && one.state() != State.CLEARED)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_vlan_cleared_at_one_port_and_standing_at_another_is_not_done_there() {
    Finding first = at(MISSING, "sw1", 7, Severity.WEAKENS, 20);
    Finding second = at(MISSING, "sw2", 8, Severity.WEAKENS, 20, 30);
    Finding other = at(MISSING, "sw3", 8, Severity.WEAKENS, 30);
    List<WindowFinding> all = compare(List.of(first, second, other), List.of(second, other));
    assertThat(of(all, "sw2").notDone()).isTrue();
    assertThat(of(all, "sw2").isIntroduced()).isFalse();
    assertThat(of(all, "sw3").notDone()).isFalse();
  }

  @Test
  void another_rule_about_the_same_vlan_is_another_matter() {
    Finding first = at("native-vlan-differs", "sw1", 7, Severity.WEAKENS, 20);
    Finding second = at(MISSING, "sw2", 8, Severity.WEAKENS, 20);
    assertThat(of(compare(List.of(first, second), List.of(second)), "sw2").notDone()).isFalse();
  }

  @Test
  void a_finding_about_no_vlan_is_not_done_at_the_port_that_belongs_with_the_one_cleared() {
    Finding first = at("fast-start-missing", "sw1", 1, Severity.WEAKENS);
    Finding pair = at("fast-start-missing", "sw2", 1, Severity.WEAKENS);
    Finding stranger = at("fast-start-missing", "sw3", 1, Severity.WEAKENS);
    List<WindowFinding> all = compare(List.of(first, pair, stranger), List.of(pair, stranger));
    assertThat(of(all, "sw2").notDone()).isTrue();
    assertThat(of(all, "sw3").notDone()).isFalse();
  }

  @Test
  void a_vlan_that_is_created_and_still_not_allowed_was_lacking_all_the_time() {
    Finding whole = at("vlan-not-created", "sw1", 0, Severity.BREAKS, 20);
    Finding port = at(MISSING, "sw1", 1, Severity.WEAKENS, 20);
    WindowFinding left = of(compare(List.of(whole), List.of(port)), "sw1");
    assertThat(left.state()).isEqualTo(State.NEW);
    assertThat(left.notDone()).isTrue();
    assertThat(left.isIntroduced()).isFalse();
  }

  @Test
  void what_the_text_does_not_tell_any_more_is_not_cleared() {
    Finding first = at(MISSING, "sw1", 1, Severity.WEAKENS, 20);
    Finding doubted = at(MISSING, "sw1", 1, Severity.UNVERIFIED, 20);
    assertThat(compare(List.of(first), List.of(doubted)))
        .extracting(WindowFinding::state)
        .containsExactly(State.UNCHECKED);
    assertThat(new FindingComparison(Set.of(), Set.of("sw1")).of(List.of(first), List.of()))
        .extracting(WindowFinding::state)
        .containsExactly(State.UNCHECKED);
    assertThat(new FindingComparison(Set.of("sw1"), Set.of()).of(List.of(), List.of(first)))
        .extracting(WindowFinding::state)
        .containsExactly(State.UNCHECKED);
  }

  @Test
  void a_finding_that_grew_says_by_what() {
    WindowFinding grown =
        of(
            compare(
                List.of(at(MISSING, "sw1", 1, Severity.WEAKENS, 20, 30)),
                List.of(at(MISSING, "sw1", 1, Severity.BREAKS, 30, 40))),
            "sw1");
    assertThat(grown.state()).isEqualTo(State.CHANGED);
    assertThat(grown.newVlans()).isEqualTo(VlanSet.of(40));
    assertThat(grown.clearedVlans()).isEqualTo(VlanSet.of(20));
    assertThat(grown.worse()).isTrue();
  }
}
