package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** Tests how a text's dialect is told, and the defaults that follow from it. */
class DialectDetectorTest {
  private static String detected(String body) {
    SwitchSettings settings = read("hostname sw1\n" + body + "end\n");
    return settings.dialect() + ": " + settings.dialectReason();
  }

  @Test
  void each_dialect_is_told_by_what_only_it_writes() {
    assertThat(detected("feature lacp\n")).isEqualTo("data-centre: `feature` lines, line 2");
    assertThat(detected(stanza("mgmt0", "ip address 192.0.2.9/24")))
        .isEqualTo("data-centre: the management port is called mgmt0, line 2");
    assertThat(detected(stanza("Ethernet1/1", "spanning-tree port type edge")))
        .isEqualTo("data-centre: `spanning-tree port type` lines, line 3");
    assertThat(detected(stanza("1/1/1", "no shutdown")))
        .isEqualTo("two-word: ports that are numbers only, line 2");
    assertThat(detected(stanza("ethernet 1/1", "") + stanza("ethernet 1/2", "")))
        .isEqualTo("two-word: port names of two words throughout");
    assertThat(detected(stanza("Ethernet1", "")))
        .isEqualTo("leaf-spine: ports called Ethernet with one number, line 2");
    assertThat(detected(stanza("Ethernet0/0", "switchport trunk encapsulation dot1q")))
        .isEqualTo("campus: trunk negotiation or encapsulation lines, line 3");
    assertThat(detected(stanza("GigabitEthernet1/0/1", "")))
        .isEqualTo("campus: no line that only another dialect writes");
  }

  /** How dumps name ports and list VLAN 1 is common practice, no source. */
  @Test
  void a_data_centre_dump_without_feature_lines_is_told_by_its_vlan_list_or_its_ports() {
    String ports = stanza("Ethernet1/1", "") + stanza("Ethernet1/2", "switchport mode trunk");
    assertThat(detected("vlan 1,10\n" + ports))
        .isEqualTo("data-centre: a VLAN list that names VLAN 1, line 2");
    assertThat(detected("vlan 1,10\n" + stanza("port-channel1", "")))
        .isEqualTo("data-centre: a VLAN list that names VLAN 1, line 2");
    assertThat(detected("vlan 10,20\n" + ports))
        .isEqualTo("data-centre: ports called Ethernet throughout, in slots from 1 on");
    assertThat(detected("vlan 10,20\n" + stanza("Ethernet101/1/1", "")))
        .isEqualTo("data-centre: ports called Ethernet throughout, in slots from 1 on");
  }

  @Test
  void an_emulated_campus_switch_is_not_taken_for_a_data_centre_one() {
    String none = "campus: no line that only another dialect writes";
    String emulated = stanza("Ethernet0/0", "") + stanza("Ethernet1/3", "switchport mode trunk");
    assertThat(detected(emulated)).isEqualTo(none);
    assertThat(detected("vlan 1\n" + emulated)).isEqualTo(none);
    assertThat(detected(stanza("Ethernet1/0", ""))).isEqualTo(none);
    assertThat(detected("vlan 1,10\n" + stanza("GigabitEthernet1/1", ""))).isEqualTo(none);
    assertThat(detected(stanza("Ethernet1/1", "") + stanza("GigabitEthernet1/1", "")))
        .isEqualTo(none);
    assertThat(detected("vlan 10\n" + stanza("Vlan10", ""))).isEqualTo(none);
  }

  @Test
  void ports_in_lanes_beside_lines_that_no_data_centre_dump_has_do_not_tell() {
    String none = "campus: no line that only another dialect writes";
    String lanes = stanza("Ethernet18/1", "switchport mode trunk");
    assertThat(detected(stanza("Ethernet18/1", "spanning-tree portfast"))).isEqualTo(none);
    assertThat(detected(stanza("Port-Channel10", "") + lanes)).isEqualTo(none);
    assertThat(detected(lanes + stanza("Management1", ""))).isEqualTo(none);
  }

  @Test
  void a_script_that_names_ethernet_ports_does_not_tell_its_dialect() {
    String script = "configure terminal\ninterface Ethernet1/1\nswitchport mode trunk\nend\n";
    assertThat(read(script).dialect()).isEqualTo(Dialect.CAMPUS);
  }

  @Test
  void a_design_overrides_the_detection() {
    SwitchSettings settings =
        read("hostname sw1\n" + stanza("Gi1/0/1", "") + "end\n", Optional.of(Dialect.DATA_CENTRE));
    assertThat(settings.dialectReason()).isEqualTo("the design names it");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo("access");
  }

  @Test
  void ports_are_printed_as_the_dialect_does() {
    assertThat(Dialect.CAMPUS.print(TestSwitch.name("po1"))).isEqualTo("Port-channel1");
    assertThat(Dialect.DATA_CENTRE.print(TestSwitch.name("Po1"))).isEqualTo("port-channel1");
    assertThat(Dialect.TWO_WORD.print(TestSwitch.name("gi1/0/1")))
        .isEqualTo("gigabitethernet 1/0/1");
  }

  @Test
  void the_mtu_is_the_ports_or_the_systems_or_the_dialects() {
    assertThat(show(port("mtu 9000"), Keys.MTU)).isEqualTo("9000");
    assertThat(show(port(""), Keys.MTU)).isEqualTo("1500");
    SwitchSettings jumbo =
        TestSwitch.campus("system mtu jumbo 9198\n" + stanza("Gi1/0/1", "") + stanza("Fa0/1", ""));
    assertThat(show(port(jumbo, "Gi1/0/1"), Keys.MTU)).isEqualTo("9198");
    assertThat(show(port(jumbo, "Fa0/1"), Keys.MTU)).isEqualTo("1500");
    assertThat(
            TestSwitch.campus("system mtu jumbo 9198\n" + stanza("Po1", ""))
                .port(TestSwitch.name("Po1"))
                .orElseThrow()
                .get(Keys.MTU)
                .reason())
        .contains("the jumbo MTU reaches only ports of 1 Gb/s and more");
    SwitchSettings all = TestSwitch.campus("system mtu 9198\n" + stanza("Po1", ""));
    assertThat(show(port(all, "Po1"), Keys.MTU)).isEqualTo("9198");
  }
}
