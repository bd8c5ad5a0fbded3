package plumbline.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.design.Design;

class SwitchJudgeTest {
  private static final String VLANS =
      """
      vlans:
        a: {id: 10}
        b: {id: 20, name: BLUE}
        c: {id: 30}
        parked: {id: 999, unused: true}
      """;
  private static final String SWITCH =
      "switches: {sw1: {ports: {Gi1/0/1: uplink, Gi1/0/3: desk}}}\n";

  private static Design design(String tagged) {
    return Windows.design(
        VLANS
            + "roles:\n"
            + "  uplink: {mode: trunk, native: parked, tagged: "
            + tagged
            + ", may-carry: [500-599]}\n"
            + "  desk: {mode: access, access: a, bpdu-guard: true}\n"
            + SWITCH);
  }

  private static final String TRUNK =
      """
      vlan 10,20,999
      !
      interface GigabitEthernet1/0/1
       switchport mode trunk
       switchport trunk native vlan 999
       switchport trunk allowed vlan 10
      !
      interface GigabitEthernet1/0/3
       switchport mode access
       switchport access vlan 10
      !
      interface GigabitEthernet1/0/9
       switchport mode access
      !
      """;

  private static List<String> told(String before, String after) {
    return Windows.told(
        Windows.changes(
            Windows.window(Windows.campus(before), Windows.campus(after)), design("[a, b]")));
  }

  private static List<String> told(String before, String after, Design from) {
    return Windows.told(
        Windows.changes(
            Windows.window(Windows.campus(before), Windows.campus(after)),
            design("[a, b]"),
            Optional.of(from)));
  }

  @Test
  void a_default_that_is_typed_out_is_no_change() {
    String typed =
        TRUNK
            .replace(" switchport access vlan 10\n", " switchport access vlan 10\n no shutdown\n")
            .replace("1/0/9\n", "1/0/9\n spanning-tree port-priority 128\n speed auto\n")
            .replace("vlan 10,20,999\n!\n", "vlan 10,20,999\n!\nvlan 10\n name VLAN0010\n!\n");
    assertThat(typed).isNotEqualTo(TRUNK);
    assertThat(told(TRUNK, typed)).isEmpty();
  }

  @Test
  void a_list_is_judged_vlan_by_vlan() {
    assertThat(told(TRUNK, TRUNK.replace("allowed vlan 10", "allowed vlan 20,77")))
        .containsExactly(
            "away GigabitEthernet1/0/1 allowed 10,77: 10 -> 20,77",
            "towards GigabitEthernet1/0/1 allowed 20: 10 -> 20,77",
            "follows GigabitEthernet1/0/1 carried: 10 -> 20");
  }

  @Test
  void what_the_design_lets_pass_is_beside_it() {
    assertThat(told(TRUNK, TRUNK.replace("allowed vlan 10", "allowed vlan 10,500")))
        .containsExactly("beside GigabitEthernet1/0/1 allowed 500: 10 -> 10,500");
  }

  @Test
  void a_change_on_a_port_that_the_design_does_not_cover_is_beside_it() {
    assertThat(told(TRUNK, TRUNK.replace("1/0/9\n", "1/0/9\n shutdown\n")))
        .contains("beside GigabitEthernet1/0/9 shut: no -> yes");
  }

  @Test
  void a_line_for_all_ports_is_judged_where_the_design_speaks_of_it_and_follows_elsewhere() {
    String guarded =
        "spanning-tree portfast default\nspanning-tree portfast bpduguard default\n" + TRUNK;
    assertThat(told(TRUNK, guarded))
        .contains(
            "towards GigabitEthernet1/0/3 bpdu-guard: off -> on",
            "follows GigabitEthernet1/0/9 bpdu-guard: off -> on");
  }

  @Test
  void a_vlan_that_goes_takes_its_name_with_it() {
    String named = TRUNK.replace("vlan 10,20,999\n", "vlan 10,999\n!\nvlan 20\n name BLUE\n");
    String without = TRUNK.replace("vlan 10,20,999", "vlan 10,999");
    assertThat(told(named, without)).containsExactly("away vlan 20: present -> -");
    assertThat(told(without, named)).containsExactly("towards vlan 20: - -> present");
    assertThat(told(without, named.replace("BLUE", "BLEU")))
        .containsExactly("towards vlan 20: - -> present", "beside vlan-name 20: - -> BLEU");
  }

  @Test
  void a_vlan_that_no_design_knows_is_away_from_it() {
    assertThat(told(TRUNK, TRUNK.replace("vlan 10,20,999", "vlan 10,20,77,999")))
        .containsExactly("away vlan 77: - -> present");
  }

  @Test
  void with_a_plan_only_what_the_designs_say_otherwise_is_planned() {
    String done = TRUNK.replace("allowed vlan 10", "allowed vlan 10,20");
    assertThat(told(TRUNK, done, design("[a]")))
        .containsExactly(
            "planned-done GigabitEthernet1/0/1 allowed 20: 10 -> 10,20",
            "follows GigabitEthernet1/0/1 carried: 10 -> 10,20");
    // towards the design, and no part of the plan
    assertThat(told(TRUNK, done, design("[a, b]")))
        .contains("unplanned GigabitEthernet1/0/1 allowed 20: 10 -> 10,20");
  }

  @Test
  void what_is_planned_and_not_done_is_told_though_nothing_changed() {
    assertThat(told(TRUNK, TRUNK, design("[a]")))
        .containsExactly("planned-not-done GigabitEthernet1/0/1 allowed 20: 10 -> 10");
  }

  @Test
  void what_was_done_before_the_window_is_nothing_to_tell() {
    String done = TRUNK.replace("allowed vlan 10", "allowed vlan 10,20");
    assertThat(told(done, done, design("[a]"))).isEmpty();
  }

  @Test
  void a_plan_that_takes_a_vlan_away_is_done_when_it_is_gone() {
    String three = TRUNK.replace("allowed vlan 10", "allowed vlan 10,20,30");
    String two = TRUNK.replace("allowed vlan 10", "allowed vlan 10,20");
    assertThat(told(three, two, design("[a, b, c]")))
        .contains("planned-done GigabitEthernet1/0/1 allowed 30: 10,20,30 -> 10,20");
    assertThat(told(three, three, design("[a, b, c]")))
        .containsExactly("planned-not-done GigabitEthernet1/0/1 allowed 30: 10,20,30 -> 10,20,30");
  }

  @Test
  void a_port_that_is_new_in_the_design_is_planned_with_all_that_it_says() {
    Design from = Windows.design(VLANS + "roles: {desk: {mode: access}}\nswitches: {sw1: {}}\n");
    String described = TRUNK.replace("1/0/3\n", "1/0/3\n description desk\n");
    assertThat(told(TRUNK, described, from))
        .contains("planned-done GigabitEthernet1/0/3 description: - -> desk");
  }

  @Test
  void a_port_that_the_plan_opens_and_no_text_has_is_not_done() {
    Design from = Windows.design(VLANS + "switches: {sw1: {}}\n");
    String none = TRUNK.replaceAll("(?s)interface GigabitEthernet1/0/3.*?!\n", "");
    assertThat(told(none, none, from))
        .contains("planned-not-done GigabitEthernet1/0/3 port: - -> -");
  }

  @Test
  void a_new_port_says_once_that_it_is_there() {
    String more =
        TRUNK + "interface GigabitEthernet1/0/12\n description lab\n switchport mode trunk\n!\n";
    assertThat(told(TRUNK, more))
        .containsExactly(
            "follows GigabitEthernet1/0/12 carried: - -> 1,10,20,999",
            "follows GigabitEthernet1/0/12 description: - -> lab",
            "follows GigabitEthernet1/0/12 mode: - -> trunk",
            "follows GigabitEthernet1/0/12 negotiate: - -> yes",
            "beside GigabitEthernet1/0/12 port: - -> present");
  }

  @Test
  void what_one_text_leaves_open_is_undecided_and_never_the_same() {
    String added = TRUNK.replace("allowed vlan 10", "allowed vlan add 20");
    assertThat(told(TRUNK, added))
        .anyMatch(one -> one.startsWith("undecided GigabitEthernet1/0/1 allowed"));
    assertThat(told(added, added)).isEmpty();
    assertThat(told(added, added.replace("add 20", "add 30")))
        .anyMatch(one -> one.startsWith("undecided GigabitEthernet1/0/1 allowed"));
  }

  @Test
  void gateways_and_spanning_tree_of_the_switch_are_compared() {
    String gateway = "interface Vlan10\n ip address 192.0.2.1 255.255.255.0\n!\n";
    assertThat(
            told(
                TRUNK + gateway,
                "spanning-tree mode mst\nspanning-tree mst 0 priority 4096\n"
                    + TRUNK
                    + gateway.replace("2.1 ", "2.2 ")))
        .anyMatch(one -> one.matches("beside Vlan10 addresses 10: 192.0.2.1.* -> 192.0.2.2.*"))
        .anyMatch(one -> one.startsWith("beside spanning-tree-mode: "))
        .anyMatch(one -> one.contains("bridge-priority of instance 0"));
  }
}
