package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Tests lists, native VLANs and which VLANs cross a port. */
class CarriedRuleTest {
  private static final String VLANS =
      "vlan 10,20,30\nvlan 40\n state suspend\nvlan 50\n shutdown\n";

  private static PortSettings withVlans(String lines) {
    return port(campus(VLANS + stanza("Gi1/0/1", lines)), "Gi1/0/1");
  }

  @Test
  void a_trunk_carries_what_is_allowed_exists_and_is_active() {
    PortSettings port =
        withVlans("switchport mode trunk;switchport trunk allowed vlan 10,20,40,50,60");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo("10,20,40,50,60");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("10,20");
  }

  @Test
  void a_trunk_without_an_allowed_line_allows_all() {
    PortSettings port = withVlans("switchport mode trunk");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo("1-4094");
    assertThat(why(port, Keys.ALLOWED)).isEqualTo("campus: all VLANs allowed");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("1,10,20,30");
  }

  @Test
  void the_negated_list_means_all() {
    PortSettings port =
        withVlans(
            "switchport mode trunk;switchport trunk allowed vlan 10;no switchport trunk allowed vlan");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo("1-4094");
    assertThat(why(port, Keys.ALLOWED))
        .isEqualTo("12: no switchport trunk allowed vlan | campus: all VLANs allowed");
  }

  @Test
  void none_allows_nothing_and_continuations_are_exact() {
    assertThat(show(withVlans("switchport trunk allowed vlan none"), Keys.ALLOWED))
        .isEqualTo("none");
    assertThat(
            show(
                withVlans(
                    "switchport trunk allowed vlan 10-12;switchport trunk allowed vlan add 20;"
                        + "switchport trunk allowed vlan remove 11"),
                Keys.ALLOWED))
        .isEqualTo("10,12,20");
    assertThat(show(withVlans("switchport trunk allowed vlan except 999"), Keys.ALLOWED))
        .isEqualTo("1-998,1000-4094");
  }

  @Test
  void a_change_without_a_list_is_undecided_and_what_it_surely_does_is_kept() {
    PortSettings added = withVlans("switchport mode trunk;switchport trunk allowed vlan add 10");
    assertThat(show(added, Keys.ALLOWED))
        .isEqualTo("? the list is changed by `add` or `remove` and its base is not in this text");
    assertThat(show(added, Keys.CARRIED)).isEqualTo("10 (perhaps 1,20,30)");
    PortSettings removed =
        withVlans("switchport mode trunk;switchport trunk allowed vlan remove 10");
    assertThat(show(removed, Keys.CARRIED)).isEqualTo("none (perhaps 1,20,30)");
    assertThat(removed.carries(new VlanId(10))).isEqualTo(Truth.NO);
    assertThat(removed.carries(new VlanId(20))).isEqualTo(Truth.UNKNOWN);
  }

  @Test
  void a_shut_port_carries_nothing() {
    PortSettings port = withVlans("switchport mode trunk;shutdown");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("none");
    assertThat(why(port, Keys.CARRIED)).isEqualTo("11: shutdown");
  }

  @Test
  void dynamic_pruning_takes_nothing_away() {
    PortSettings port =
        withVlans(
            "switchport mode trunk;switchport trunk allowed vlan 10;switchport trunk pruning vlan 10");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("10");
  }

  @Test
  void an_access_port_carries_its_access_vlan_untagged_and_its_voice_vlan() {
    PortSettings port =
        withVlans("switchport mode access;switchport access vlan 10;switchport voice vlan 20");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("10,20");
    assertThat(show(port.untagged())).isEqualTo("10");
    assertThat(show(port, Keys.VOICE_VLAN)).isEqualTo("20");
  }

  @Test
  void an_access_vlan_that_does_not_exist_or_is_suspended_is_not_carried() {
    assertThat(show(withVlans("switchport mode access;switchport access vlan 60"), Keys.CARRIED))
        .isEqualTo("none");
    assertThat(show(withVlans("switchport mode access;switchport access vlan 40"), Keys.CARRIED))
        .isEqualTo("none");
  }

  @Test
  void a_voice_line_has_no_effect_on_a_trunk() {
    PortSettings port =
        withVlans(
            "switchport mode trunk;switchport trunk allowed vlan 10;switchport voice vlan 20");
    assertThat(show(port, Keys.VOICE_VLAN)).isEqualTo("20");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("10");
  }

  @Test
  void left_overs_of_the_other_mode_have_no_effect() {
    PortSettings port =
        withVlans(
            "switchport access vlan 30;switchport trunk allowed vlan 10,20;switchport mode access");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("30");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo("10,20");
  }

  @Test
  void voice_words_other_than_a_number_tag_no_vlan_of_their_own() {
    assertThat(show(withVlans("switchport voice vlan dot1p"), Keys.VOICE_VLAN)).isEqualTo("dot1p");
    assertThat(show(withVlans("switchport voice vlan untagged"), Keys.VOICE_VLAN))
        .isEqualTo("untagged");
    PortSettings none = withVlans("switchport voice vlan 20;switchport voice vlan none");
    assertThat(show(none, Keys.VOICE_VLAN)).isEqualTo("-");
    assertThat(why(none, Keys.VOICE_VLAN)).isEqualTo("11: switchport voice vlan none");
  }

  @Test
  void a_negotiated_port_carries_for_certain_only_what_both_outcomes_carry() {
    PortSettings port = withVlans("switchport access vlan 10;switchport trunk allowed vlan 10,20");
    assertThat(show(port, Keys.MODE)).isEqualTo("negotiated");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("10 (perhaps 20)");
    assertThat(show(port.untagged())).isEqualTo("? the port's mode leaves it open");
  }

  @Test
  void a_routed_port_carries_nothing() {
    assertThat(show(withVlans("no switchport"), Keys.CARRIED)).isEqualTo("none");
  }

  @Test
  void a_line_that_is_not_modelled_leaves_open_what_is_carried() {
    PortSettings port = withVlans("switchport mode trunk;switchport trunk group UPLINKS");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("? a line of the port is not modelled");
    assertThat(why(port, Keys.CARRIED)).contains("11: switchport trunk group");
  }

  @Test
  void an_access_or_voice_vlan_by_name_or_by_lookup_leaves_just_that_vlan_open() {
    PortSettings dynamic = withVlans("switchport mode access;switchport access vlan dynamic");
    assertThat(show(dynamic, Keys.ACCESS_VLAN)).isEqualTo("? line 11 is not modelled");
    assertThat(why(dynamic, Keys.ACCESS_VLAN)).isEqualTo("11: switchport access vlan dynamic");
    assertThat(show(dynamic, Keys.ALLOWED)).isEqualTo("1-4094");
    assertThat(show(dynamic, Keys.CARRIED)).startsWith("none (perhaps 1,10,");
    PortSettings named = withVlans("sw mo acc;sw acc vl name OFFICE");
    assertThat(show(named, Keys.ACCESS_VLAN)).isEqualTo("? line 11 is not modelled");
    PortSettings voice = withVlans("switchport mode access;switchport voice vlan name TALK");
    assertThat(show(voice, Keys.VOICE_VLAN)).isEqualTo("? line 11 is not modelled");
    assertThat(show(voice, Keys.ACCESS_VLAN)).isEqualTo("1");
    PortSettings decided =
        withVlans(
            "switchport access vlan dynamic;switchport access vlan 10;switchport mode access");
    assertThat(show(decided, Keys.ACCESS_VLAN)).isEqualTo("10");
    PortSettings trunk =
        withVlans(
            "switchport mode trunk;switchport access vlan dynamic;"
                + "switchport trunk allowed vlan 10,20");
    assertThat(show(trunk, Keys.CARRIED)).isEqualTo("10,20");
  }

  @Test
  void the_native_vlan_is_1_unless_set() {
    assertThat(show(withVlans("switchport mode trunk"), Keys.NATIVE_VLAN)).isEqualTo("1");
    assertThat(why(withVlans("switchport mode trunk"), Keys.NATIVE_VLAN))
        .isEqualTo("campus: native VLAN 1");
    PortSettings port = withVlans("switchport mode trunk;switchport trunk native vlan 30");
    assertThat(show(port, Keys.NATIVE_VLAN)).isEqualTo("30");
    assertThat(show(port.untagged())).isEqualTo("30");
    PortSettings undone =
        withVlans(
            "switchport mode trunk;switchport trunk native vlan 30;no switchport trunk native vlan");
    assertThat(why(undone, Keys.NATIVE_VLAN))
        .isEqualTo("12: no switchport trunk native vlan | campus: native VLAN 1");
  }

  @Test
  void a_native_vlan_outside_the_allowed_list_passes_no_traffic() {
    PortSettings port =
        withVlans(
            "switchport mode trunk;switchport trunk native vlan 30;switchport trunk allowed vlan 10");
    assertThat(port.carries(new VlanId(30))).isEqualTo(Truth.NO);
    assertThat(show(port.untagged())).isEqualTo("-");
  }

  @Test
  void with_native_tagging_untagged_frames_are_dropped_and_the_native_is_still_carried() {
    PortSettings global =
        port(
            campus(VLANS + "vlan dot1q tag native\n" + stanza("Gi1/0/1", "switchport mode trunk")),
            "Gi1/0/1");
    assertThat(show(global, Keys.NATIVE_TAGGING)).isEqualTo("true");
    assertThat(show(global.untagged())).isEqualTo("-");
    assertThat(global.carries(new VlanId(1))).isEqualTo(Truth.YES);
    PortSettings overridden =
        port(
            campus(
                VLANS
                    + "vlan dot1q tag native\n"
                    + stanza(
                        "Gi1/0/1", "switchport mode trunk;no switchport trunk native vlan tag")),
            "Gi1/0/1");
    assertThat(show(overridden, Keys.NATIVE_TAGGING)).isEqualTo("false");
    assertThat(
            show(
                withVlans("switchport mode trunk;switchport trunk native vlan tag"),
                Keys.NATIVE_TAGGING))
        .isEqualTo("true");
  }

  @Test
  void with_an_unknown_database_an_allowed_vlan_without_a_stanza_is_perhaps_carried() {
    SwitchSettings settings =
        campus(
            "vtp mode server\nvlan 10\n"
                + stanza("Gi1/0/1", "switchport mode trunk;switchport trunk allowed vlan 10,20"));
    assertThat(show(port(settings, "Gi1/0/1"), Keys.CARRIED)).isEqualTo("10 (perhaps 20)");
  }

  @Test
  void reserved_vlans_are_neither_carried_nor_missing() {
    PortSettings port = withVlans("switchport mode trunk;switchport trunk allowed vlan 10,1002");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("10");
    // 1002 to 1005 are reserved in many implementations (common practice, no source).
    assertThat(campus(VLANS).vlans().exists(new VlanId(1002))).isEqualTo(Truth.UNKNOWN);
    assertThat(dataCentre(VLANS).vlans().exists(new VlanId(1006))).isEqualTo(Truth.NO);
  }

  @Test
  void the_three_ports_of_a_hypervisor_host_read_as_the_trade_means_them() {
    // Common practice, no source: management controller on an access port, two alike trunks with an
    // unused native VLAN, edge fast-start for trunks and no bundle.
    String uplink =
        "switchport trunk native vlan 999;switchport trunk allowed vlan 220,231,232;"
            + "switchport mode trunk;switchport nonegotiate;spanning-tree portfast trunk";
    SwitchSettings settings =
        campus(
            "vlan 210,220,231,232,999\n"
                + stanza(
                    "Gi1/0/18",
                    "switchport access vlan 210;switchport mode access;spanning-tree portfast")
                + stanza("Gi1/0/1", uplink)
                + stanza("Gi1/0/2", uplink));
    PortSettings controller = port(settings, "Gi1/0/18");
    assertThat(show(controller, Keys.CARRIED)).isEqualTo("210");
    assertThat(show(controller, Keys.FAST_START)).isEqualTo("on");
    for (String name : new String[] {"Gi1/0/1", "Gi1/0/2"}) {
      PortSettings trunk = port(settings, name);
      assertThat(show(trunk, Keys.CARRIED)).isEqualTo("220,231-232");
      assertThat(show(trunk, Keys.FAST_START)).isEqualTo("on");
      assertThat(show(trunk, Keys.NEGOTIATE)).isEqualTo("false");
      assertThat(show(trunk, Keys.BUNDLE)).isEqualTo("-");
      assertThat(show(trunk.untagged())).isEqualTo("-");
    }
  }
}
