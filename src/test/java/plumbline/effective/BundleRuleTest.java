package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** Tests bundles and their members. */
class BundleRuleTest {
  private static final String TRUNK = "switchport mode trunk;switchport trunk allowed vlan 10,20;";
  private static final String MEMBER = "channel-group 1 mode active";

  private static SwitchSettings bundle(String bundle, String... members) {
    StringBuilder text = new StringBuilder("vlan 10,20,30\n").append(stanza("Po1", bundle));
    for (int i = 0; i < members.length; i++) {
      text.append(stanza("Gi1/0/" + (i + 1), members[i]));
    }
    return campus(text.toString());
  }

  @Test
  void a_member_without_any_switching_line_takes_the_bundles() {
    SwitchSettings settings = bundle(TRUNK, MEMBER);
    PortSettings member = port(settings, "Gi1/0/1");
    assertThat(show(member, Keys.BUNDLE)).isEqualTo("1 active");
    assertThat(show(member, Keys.MODE)).isEqualTo("trunk");
    assertThat(show(member, Keys.ALLOWED)).isEqualTo("10,20");
    assertThat(why(member, Keys.ALLOWED))
        .isEqualTo("7: switchport trunk allowed vlan 10,20 | 10: channel-group 1 mode active");
    assertThat(show(member, Keys.SUSPENDED)).isEqualTo("false");
    assertThat(show(member, Keys.CARRIED)).isEqualTo("10,20");
    assertThat(show(port(settings, "Po1"), Keys.CARRIED)).isEqualTo("10,20");
    assertThat(member.hasSwitchingLine()).isTrue();
  }

  @Test
  void a_bundle_is_no_member_of_itself() {
    SwitchSettings settings = bundle(TRUNK + MEMBER, MEMBER);
    assertThat(show(port(settings, "Po1"), Keys.CARRIED)).isEqualTo("10,20");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.CARRIED)).isEqualTo("10,20");
  }

  @Test
  void a_member_with_equal_lines_of_its_own_is_not_suspended() {
    PortSettings member = port(bundle(TRUNK, TRUNK + MEMBER), "Gi1/0/1");
    assertThat(show(member, Keys.SUSPENDED)).isEqualTo("false");
    assertThat(show(member, Keys.CARRIED)).isEqualTo("10,20");
  }

  @Test
  void a_member_whose_complete_settings_differ_is_suspended_and_carries_nothing() {
    PortSettings member = port(bundle(TRUNK, "switchport mode trunk;" + MEMBER, MEMBER), "Gi1/0/1");
    assertThat(show(member, Keys.SUSPENDED)).isEqualTo("true");
    assertThat(why(member, Keys.SUSPENDED))
        .isEqualTo(
            "campus: all VLANs allowed | 7: switchport trunk allowed vlan 10,20"
                + " | 11: channel-group 1 mode active");
    assertThat(show(member, Keys.CARRIED)).isEqualTo("none");
  }

  @Test
  void a_difference_that_the_mode_leaves_without_effect_is_undecided() {
    PortSettings member =
        port(bundle(TRUNK, TRUNK + "switchport access vlan 30;" + MEMBER), "Gi1/0/1");
    assertThat(show(member, Keys.SUSPENDED))
        .isEqualTo(
            "? member and bundle differ in access-vlan, which their mode leaves without effect:"
                + " releases differ on whether it counts");
    assertThat(show(member, Keys.CARRIED)).isEqualTo("none (perhaps 10,20)");
  }

  @Test
  void a_routed_member_of_a_switched_bundle_is_suspended() {
    assertThat(show(port(bundle(TRUNK, "no switchport;" + MEMBER), "Gi1/0/1"), Keys.SUSPENDED))
        .isEqualTo("true");
    PortSettings routed = port(bundle("no switchport", "no switchport;" + MEMBER), "Gi1/0/1");
    assertThat(show(routed, Keys.SUSPENDED)).isEqualTo("false");
    assertThat(show(routed, Keys.MODE)).isEqualTo("routed");
  }

  @Test
  void likewise_speed_and_duplex() {
    SwitchSettings settings =
        bundle(TRUNK + "speed 1000;duplex full", "speed 100;" + MEMBER, MEMBER);
    PortSettings slow = port(settings, "Gi1/0/1");
    assertThat(show(slow, Keys.SUSPENDED)).isEqualTo("true");
    assertThat(why(slow, Keys.SUSPENDED)).startsWith("12: speed 100 | 8: speed 1000");
    PortSettings silent = port(settings, "Gi1/0/2");
    assertThat(show(silent, Keys.SPEED)).isEqualTo("1000");
    assertThat(show(silent, Keys.SUSPENDED)).isEqualTo("false");
    assertThat(show(silent, Keys.DUPLEX)).isEqualTo("full");
  }

  @Test
  void a_port_that_does_not_negotiate_has_the_one_speed_of_its_optics_where_that_is_known() {
    // IEEE Std 802.3 clause 37: auto-negotiation of 1000BASE-X settles duplex and pause, not speed
    PortSettings fibre = port("speed nonegotiate");
    assertThat(show(fibre, Keys.SPEED)).isEqualTo("1000");
    assertThat(why(fibre, Keys.SPEED)).isEqualTo("5: speed nonegotiate");
    assertThat(show(port("speed nonegotiate;no speed nonegotiate"), Keys.SPEED)).isEqualTo("auto");
    SwitchSettings ten = campus(stanza("Te1/1/1", "speed nonegotiate"));
    assertThat(show(port(ten, "Te1/1/1"), Keys.SPEED))
        .isEqualTo("? the speed of a port that does not negotiate stands in no line");
  }

  @Test
  void members_that_differ_in_speed_under_a_silent_bundle_are_undecided() {
    SwitchSettings settings = bundle(TRUNK, "speed 100;" + MEMBER, "speed 1000;" + MEMBER);
    assertThat(show(port(settings, "Gi1/0/1"), Keys.SUSPENDED))
        .isEqualTo("? the members differ in speed and the bundle has no such line");
  }

  @Test
  void spanning_tree_lines_on_a_member_have_no_effect() {
    PortSettings member =
        port(
            bundle(
                TRUNK + "spanning-tree guard root",
                "spanning-tree portfast trunk;spanning-tree bpduguard enable;" + MEMBER),
            "Gi1/0/1");
    assertThat(show(member, Keys.FAST_START)).isEqualTo("off");
    assertThat(show(member, Keys.BPDU_GUARD)).isEqualTo("off");
    assertThat(show(member, Keys.ROOT_GUARD)).isEqualTo("on");
  }

  @Test
  void without_a_stanza_for_the_bundle_the_members_lines_count_and_no_port_is_invented() {
    SwitchSettings settings = campus("vlan 10,20\n" + stanza("Gi1/0/1", TRUNK + MEMBER));
    assertThat(show(port(settings, "Gi1/0/1"), Keys.CARRIED)).isEqualTo("10,20");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.SUSPENDED)).isEqualTo("false");
    assertThat(settings.port(TestSwitch.name("Po1"))).isEmpty();
  }

  @Test
  void a_shut_bundle_takes_its_members_down_and_a_shut_member_only_itself() {
    SwitchSettings shut = bundle(TRUNK + "shutdown", MEMBER);
    assertThat(show(port(shut, "Gi1/0/1"), Keys.CARRIED)).isEqualTo("none");
    SwitchSettings one = bundle(TRUNK, MEMBER + ";shutdown", MEMBER);
    assertThat(show(port(one, "Gi1/0/1"), Keys.CARRIED)).isEqualTo("none");
    assertThat(show(port(one, "Gi1/0/2"), Keys.CARRIED)).isEqualTo("10,20");
    assertThat(show(port(one, "Po1"), Keys.CARRIED)).isEqualTo("10,20");
  }

  @Test
  void a_bundle_with_too_few_members_up_carries_nothing() {
    SwitchSettings all = bundle(TRUNK, MEMBER + ";shutdown");
    assertThat(show(port(all, "Po1"), Keys.CARRIED)).isEqualTo("none");
    assertThat(why(port(all, "Po1"), Keys.CARRIED)).endsWith("no member of the bundle is up");
    SwitchSettings few = bundle(TRUNK + "port-channel min-links 2", MEMBER + ";shutdown", MEMBER);
    assertThat(show(port(few, "Po1"), Keys.CARRIED)).isEqualTo("none");
    assertThat(why(port(few, "Po1"), Keys.CARRIED)).endsWith("too few members are up");
  }

  @Test
  void a_membership_that_is_undone_is_none() {
    PortSettings port = port(bundle(TRUNK, MEMBER + ";no channel-group 1"), "Gi1/0/1");
    assertThat(show(port, Keys.BUNDLE)).isEqualTo("-");
    assertThat(show(port, Keys.MODE)).isEqualTo("negotiated");
  }
}
