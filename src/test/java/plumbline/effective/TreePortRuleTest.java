package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;

/** Path costs and port priorities of one tree; precedence is common practice, no source. */
class TreePortRuleTest {
  private static final String MST = "spanning-tree mode mst\n";
  private static final String PER_VLAN = "spanning-tree mode rapid-pvst\n";

  private static PortSettings on(String mode, String lines) {
    return port(campus(mode + stanza("Gi1/0/1", lines)), "Gi1/0/1");
  }

  private static Setting<Long> cost(PortSettings port, int vlan) {
    return port.inTree(Keys.COST_BY_TREE, numbers -> numbers.of(new VlanId(vlan)));
  }

  private static Setting<Long> instanceCost(PortSettings port, int instance) {
    return port.inTree(Keys.COST_BY_TREE, numbers -> numbers.of(instance));
  }

  @Test
  void aLineAboutVlansOutweighsOneAboutThePortWhicheverStandsLast() {
    PortSettings port = on(PER_VLAN, "spanning-tree vlan 10-12 cost 5; spanning-tree cost 50");
    assertThat(show(cost(port, 10))).isEqualTo("5");
    assertThat(why(cost(port, 12))).isEqualTo("6: spanning-tree vlan 10-12 cost 5");
    assertThat(show(cost(port, 13))).isEqualTo("50");
    assertThat(show(port, Keys.STP_COST)).isEqualTo("50");
  }

  @Test
  void theLastLineAboutATreeDecidesAndItsUndoingLeavesThePortsOwn() {
    PortSettings port =
        on(
            PER_VLAN,
            "spanning-tree cost 50; spanning-tree vlan 10,20 cost 5; spanning-tree vlan 10 cost 7;"
                + "no spanning-tree vlan 20 cost");
    assertThat(show(cost(port, 10))).isEqualTo("7");
    assertThat(show(cost(port, 20))).isEqualTo("50");
    assertThat(why(cost(port, 20)))
        .isEqualTo("9: no spanning-tree vlan 20 cost | 6: spanning-tree cost 50");
    PortSettings bare =
        on(PER_VLAN, "spanning-tree vlan 10 cost 7; default spanning-tree vlan 10 cost");
    assertThat(show(cost(bare, 10))).isEqualTo("-");
  }

  @Test
  void linesOfTheOtherModeHaveNoEffect() {
    String both = "spanning-tree vlan 10 cost 5; spanning-tree mst 1 cost 9";
    assertThat(show(cost(on(PER_VLAN, both), 10))).isEqualTo("5");
    assertThat(show(instanceCost(on(PER_VLAN, both), 1))).isEqualTo("-");
    assertThat(show(cost(on(MST, both), 10))).isEqualTo("-");
    assertThat(show(instanceCost(on(MST, both), 1))).isEqualTo("9");
    assertThat(show(instanceCost(on(MST, both), 2))).isEqualTo("-");
  }

  @Test
  void whetherThePortsOwnLineReachesEveryInstanceIsOpen() {
    PortSettings port = on(MST, "spanning-tree cost 50; spanning-tree mst 1 cost 9");
    assertThat(show(instanceCost(port, 1))).isEqualTo("9");
    assertThat(show(instanceCost(port, 0)))
        .isEqualTo("? releases differ on whether a cost without an instance reaches all instances");
  }

  @Test
  void aLineThatIsNotUnderstoodLeavesEveryTreeOpenUntilALaterOneIsClear() {
    PortSettings port =
        on(
            PER_VLAN,
            "spanning-tree vlan 10,20 cost 5; spanning-tree vlan 20 cost abc;"
                + "spanning-tree vlan 10 cost 7");
    assertThat(show(cost(port, 10))).isEqualTo("7");
    assertThat(show(cost(port, 20))).isEqualTo("? line 7 is not understood");
    assertThat(show(cost(port, 30))).isEqualTo("? line 7 is not understood");
    assertThat(show(port, Keys.STP_COST)).isEqualTo("-");
  }

  @Test
  void aScriptDecidesOnlyTheTreesItNames() {
    PortSettings port =
        port(
            read(
                "configure terminal\nspanning-tree mode rapid-pvst\n"
                    + stanza("Gi1/0/1", "spanning-tree vlan 10 cost 5; spanning-tree cost 50")),
            "Gi1/0/1");
    assertThat(show(cost(port, 10))).isEqualTo("5");
    assertThat(show(cost(port, 20)))
        .isEqualTo("? the text is a script, in which an absent line is no default");
  }

  @Test
  void aBundlesLinesCountAndAMembersDoNot() {
    SwitchSettings settings =
        campus(
            PER_VLAN
                + stanza("Gi1/0/1", "channel-group 1 mode active; spanning-tree vlan 10 cost 5")
                + stanza("Po1", "switchport mode trunk; spanning-tree vlan 10 cost 8"));
    assertThat(show(cost(port(settings, "Po1"), 10))).isEqualTo("8");
    assertThat(show(cost(port(settings, "Gi1/0/1"), 10))).isEqualTo("8");
    assertThat(why(cost(port(settings, "Gi1/0/1"), 10)))
        .isEqualTo("11: spanning-tree vlan 10 cost 8 | 6: channel-group 1 mode active");
  }

  @Test
  void portPrioritiesGoTheSameWay() {
    PortSettings port =
        on(MST, "spanning-tree mst 1-2 port-priority 64; no spanning-tree mst 2 port-priority");
    assertThat(show(port.inTree(Keys.PORT_PRIORITY_BY_TREE, numbers -> numbers.of(1))))
        .isEqualTo("64");
    assertThat(show(port.inTree(Keys.PORT_PRIORITY_BY_TREE, numbers -> numbers.of(2))))
        .isEqualTo("-");
  }

  @Test
  void aTemplateLeavesTreesWithoutALineOpen() {
    PortSettings port = on(PER_VLAN, "source template DESK; spanning-tree vlan 10 cost 5");
    assertThat(show(cost(port, 10))).isEqualTo("5");
    assertThat(show(cost(port, 20))).isEqualTo("? the port takes lines from template DESK");
  }
}
