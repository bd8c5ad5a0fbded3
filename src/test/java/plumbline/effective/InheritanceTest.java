package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import java.util.List;
import org.junit.jupiter.api.Test;
import plumbline.setting.Key;
import plumbline.setting.Keys;

/**
 * Tests ports that take lines which do not stand in their stanza (common practice, no source: such
 * lines apply beneath the port's own).
 */
class InheritanceTest {
  private static final String WHY = "? the port takes lines from template DESK";
  private static final List<Key<?>> DECIDED_BY_LINES =
      List.of(
          Keys.MODE,
          Keys.ACCESS_VLAN,
          Keys.VOICE_VLAN,
          Keys.NATIVE_VLAN,
          Keys.ALLOWED,
          Keys.FAST_START,
          Keys.BPDU_GUARD,
          Keys.BPDU_FILTER,
          Keys.ROOT_GUARD,
          Keys.LOOP_GUARD,
          Keys.UDLD,
          Keys.SHUT,
          Keys.BUNDLE,
          Keys.SPEED,
          Keys.DUPLEX,
          Keys.MTU,
          Keys.QOS_TRUST,
          Keys.POLICY_IN,
          Keys.POLICY_OUT,
          Keys.STORM_CONTROL,
          Keys.PORT_SECURITY,
          Keys.SNOOPING_TRUST,
          Keys.INSPECTION_TRUST,
          Keys.DESCRIPTION,
          Keys.STP_COST,
          Keys.STP_PORT_PRIORITY,
          Keys.LINK_TYPE);

  @Test
  void aPortWithATemplateHasNoDefaults() {
    PortSettings port = port("source template DESK");
    for (Key<?> key : DECIDED_BY_LINES) {
      assertThat(show(port, key)).as("%s", key).startsWith("? ").contains(WHY.substring(2));
      assertThat(why(port, key)).as("%s", key).contains("source template DESK");
    }
  }

  @Test
  void onlyThatPortIsLeftOpen() {
    SwitchSettings settings =
        campus(
            stanza("Gi1/0/1", "source template DESK")
                + stanza("Gi1/0/2", "switchport mode access"));
    assertThat(show(port(settings, "Gi1/0/2"), Keys.ACCESS_VLAN)).isEqualTo("1");
    assertThat(show(port(settings, "Gi1/0/2"), Keys.SHUT)).isEqualTo("false");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.SHUT)).isEqualTo(WHY);
  }

  @Test
  void aLineOfThePortsOwnDecidesOverItsTemplate() {
    PortSettings port =
        port(
            "switchport mode trunk; switchport trunk native vlan 999;"
                + "switchport trunk allowed vlan 10,20; no shutdown; source template DESK");
    assertThat(show(port, Keys.MODE)).isEqualTo("trunk");
    assertThat(show(port, Keys.NATIVE_VLAN)).isEqualTo("999");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo("10,20");
    assertThat(show(port, Keys.SHUT)).isEqualTo("false");
    assertThat(show(port, Keys.FAST_START)).isEqualTo(WHY);
  }

  @Test
  void aLineThatUndoesOneOfThePortsOwnBringsTheTemplateToTheFore() {
    PortSettings port =
        port(
            "source template DESK; switchport access vlan 20; no switchport access vlan;"
                + "switchport trunk allowed vlan 5; no switchport trunk allowed vlan;"
                + "default shutdown; no switchport mode");
    assertThat(show(port, Keys.ACCESS_VLAN)).isEqualTo(WHY);
    assertThat(show(port, Keys.ALLOWED)).isEqualTo(WHY);
    assertThat(show(port, Keys.SHUT)).isEqualTo(WHY);
    assertThat(show(port, Keys.MODE)).isEqualTo(WHY);
  }

  @Test
  void anAddedListStandsOnWhatTheTemplateAllows() {
    PortSettings port = port("source template DESK; switchport trunk allowed vlan add 30");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo(WHY);
    assertThat(why(port, Keys.ALLOWED))
        .isEqualTo("5: source template DESK | 6: switchport trunk allowed vlan add 30");
  }

  @Test
  void aTemplateThatIsTakenOffLeavesTheDefaults() {
    assertThat(show(port("source template DESK; no source template DESK"), Keys.SHUT))
        .isEqualTo("false");
    assertThat(show(port("source template DESK; no source template"), Keys.ACCESS_VLAN))
        .isEqualTo("1");
    assertThat(show(port("source template DESK; no source template PHONE"), Keys.SHUT))
        .isEqualTo(WHY);
    SwitchSettings reset =
        campus(stanza("Gi1/0/1", "source template DESK") + "default interface Gi1/0/1\n");
    assertThat(show(port(reset, "Gi1/0/1"), Keys.ACCESS_VLAN)).isEqualTo("1");
  }

  @Test
  void aPortProfileIsSuchATemplateToo() {
    SwitchSettings settings =
        dataCentre(
            "port-profile type ethernet HOSTS\n  switchport mode trunk\n  state enabled\n"
                + stanza("Ethernet1/1", "inherit port-profile HOSTS")
                + stanza("Ethernet1/2", "inherit port-profile HOSTS; no inherit port-profile HOSTS")
                + stanza("Ethernet1/3", "profile HOSTS UPLINKS"));
    assertThat(show(port(settings, "Ethernet1/1"), Keys.MODE))
        .isEqualTo("? the port takes lines from port-profile HOSTS");
    assertThat(show(port(settings, "Ethernet1/2"), Keys.MODE)).isEqualTo("access");
    assertThat(show(port(settings, "Ethernet1/3"), Keys.MODE))
        .isEqualTo(
            "? the port takes lines from profile HOSTS; the port takes lines from profile UPLINKS");
  }

  @Test
  void aRoutedPortByDefaultMayBeSwitchedByItsProfile() {
    SwitchSettings settings =
        dataCentre(
            "no system default switchport\n"
                + stanza("Ethernet1/1", "inherit port-profile HOSTS; switchport mode trunk")
                + stanza("Ethernet1/2", "no switchport"));
    assertThat(show(port(settings, "Ethernet1/1"), Keys.MODE))
        .isEqualTo("? the port takes lines from port-profile HOSTS");
  }

  @Test
  void aGuardOfItsOwnMayBeDisarmedByAFilterOfTheTemplate() {
    PortSettings port =
        port("switchport mode access; spanning-tree bpduguard enable; source template DESK");
    assertThat(show(port, Keys.BPDU_GUARD))
        .isEqualTo(
            "? a BPDU filter on the port would disarm it: the port takes lines from template DESK");
  }

  @Test
  void aMemberThatTakesLinesFromElsewhereIsNotTakenToFollowItsBundle() {
    SwitchSettings settings =
        campus(
            stanza("Port-channel1", "switchport mode trunk")
                + stanza("Gi1/0/1", "source template DESK; channel-group 1 mode active"));
    assertThat(show(port(settings, "Gi1/0/1"), Keys.SUSPENDED)).isEqualTo(WHY);
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo(WHY);
  }

  @Test
  void aGarbledLineOfThatKindLeavesThePortOpenToo() {
    PortSettings port = port("source templ?te DESK");
    assertThat(show(port, Keys.SHUT)).isEqualTo("? line 5 is not understood");
  }

  @Test
  void aScriptStaysAScript() {
    SwitchSettings settings =
        read("conf t\ninterface Gi1/0/1\nsource template DESK\nswitchport mode access\nexit\n");
    assertThat(settings.script()).isTrue();
    assertThat(show(port(settings, "Gi1/0/1"), Keys.SHUT))
        .isEqualTo("? the text is a script, in which an absent line is no default");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo("access");
  }
}
