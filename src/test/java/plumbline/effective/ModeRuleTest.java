package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** Tests what a port does with frames, its shut state and its negotiation. */
class ModeRuleTest {
  @Test
  void without_a_mode_line_a_campus_port_is_negotiated() {
    PortSettings port = port("switchport access vlan 10");
    assertThat(show(port, Keys.MODE)).isEqualTo("negotiated");
    assertThat(why(port, Keys.MODE)).isEqualTo("campus: mode negotiated");
    assertThat(show(port, Keys.NEGOTIATE)).isEqualTo("true");
  }

  @Test
  void without_a_mode_line_a_data_centre_port_is_an_access_port() {
    PortSettings port = port(dataCentre(stanza("Ethernet1/1", "")), "Ethernet1/1");
    assertThat(show(port, Keys.MODE)).isEqualTo("access");
    assertThat(why(port, Keys.MODE)).isEqualTo("data-centre: mode access");
  }

  @Test
  void a_mode_line_decides_and_is_the_evidence() {
    PortSettings port = port("switchport mode trunk");
    assertThat(show(port, Keys.MODE)).isEqualTo("trunk");
    assertThat(why(port, Keys.MODE)).isEqualTo("5: switchport mode trunk");
  }

  @Test
  void bare_switchport_lines_without_no_switchport_mean_routed_by_default() {
    SwitchSettings settings =
        dataCentre(
            stanza("Ethernet1/1", "switchport;switchport mode trunk") + stanza("Ethernet1/2", ""));
    assertThat(show(port(settings, "Ethernet1/1"), Keys.MODE)).isEqualTo("trunk");
    assertThat(show(port(settings, "Ethernet1/2"), Keys.MODE)).isEqualTo("routed");
    assertThat(why(port(settings, "Ethernet1/2"), Keys.MODE))
        .isEqualTo(
            "5: switchport | ports are routed: `switchport` lines stand and no `no switchport`");
  }

  @Test
  void a_mode_line_without_the_bare_line_that_others_have_leaves_the_mode_open() {
    SwitchSettings settings =
        dataCentre(
            stanza("Ethernet1/1", "switchport;switchport mode trunk")
                + stanza("Ethernet1/2", "switchport mode trunk"));
    assertThat(show(port(settings, "Ethernet1/2"), Keys.MODE))
        .isEqualTo(
            "? a mode line stands without `switchport`, in a text where that line seems to be needed");
  }

  @Test
  void with_both_kinds_of_line_ports_are_switched_by_default() {
    SwitchSettings settings =
        campus(
            stanza("Gi1/0/1", "switchport")
                + stanza("Gi1/0/2", "no switchport")
                + stanza("Gi1/0/3", ""));
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo("negotiated");
    assertThat(show(port(settings, "Gi1/0/2"), Keys.MODE)).isEqualTo("routed");
    assertThat(show(port(settings, "Gi1/0/3"), Keys.MODE)).isEqualTo("negotiated");
  }

  @Test
  void a_system_default_line_decides_over_what_ports_print() {
    SwitchSettings switched =
        dataCentre("system default switchport\n" + stanza("Ethernet1/1", "switchport"));
    assertThat(show(port(switched, "Ethernet1/1"), Keys.MODE)).isEqualTo("access");
    SwitchSettings routed =
        dataCentre("no system default switchport\n" + stanza("Ethernet1/1", ""));
    assertThat(show(port(routed, "Ethernet1/1"), Keys.MODE)).isEqualTo("routed");
    assertThat(why(port(routed, "Ethernet1/1"), Keys.MODE))
        .isEqualTo("4: no system default switchport");
  }

  @Test
  void virtual_interfaces_and_ports_with_an_address_are_routed() {
    SwitchSettings settings =
        campus(
            stanza("Vlan10", "ip address 192.0.2.1 255.255.255.0")
                + stanza("Gi0/0", "ip address 192.0.2.9 255.255.255.0")
                + stanza("Gi0/1.20", "encapsulation dot1Q 20"));
    assertThat(show(port(settings, "Vlan10"), Keys.MODE)).isEqualTo("routed");
    assertThat(why(port(settings, "Vlan10"), Keys.MODE)).isEqualTo("a Vlan interface is routed");
    assertThat(show(port(settings, "Gi0/0"), Keys.MODE)).isEqualTo("routed");
    assertThat(why(port(settings, "Gi0/0"), Keys.MODE))
        .isEqualTo("8: ip address 192.0.2.9 255.255.255.0");
    assertThat(show(port(settings, "Gi0/1.20"), Keys.MODE)).isEqualTo("routed");
  }

  @Test
  void mode_access_closes_negotiation_and_mode_trunk_alone_does_not() {
    assertThat(show(port("switchport mode access"), Keys.NEGOTIATE)).isEqualTo("false");
    assertThat(show(port("switchport mode trunk"), Keys.NEGOTIATE)).isEqualTo("true");
    PortSettings closed = port("switchport mode trunk;switchport nonegotiate");
    assertThat(show(closed, Keys.NEGOTIATE)).isEqualTo("false");
    assertThat(why(closed, Keys.NEGOTIATE)).isEqualTo("6: switchport nonegotiate");
    PortSettings reopened =
        port("switchport mode trunk;switchport nonegotiate;no switchport nonegotiate");
    assertThat(show(reopened, Keys.NEGOTIATE)).isEqualTo("true");
  }

  @Test
  void a_negotiated_port_asks_for_a_trunk_or_answers_only() {
    assertThat(show(port("switchport mode dynamic desirable"), Keys.ASKS_FOR_TRUNK))
        .isEqualTo("true");
    assertThat(show(port("switchport mode dynamic auto"), Keys.ASKS_FOR_TRUNK)).isEqualTo("false");
    assertThat(show(port("switchport mode trunk"), Keys.ASKS_FOR_TRUNK)).isEqualTo("-");
    assertThat(port("switchport access vlan 10").get(Keys.ASKS_FOR_TRUNK).isDecided()).isFalse();
  }

  @Test
  void a_dynamic_port_stays_negotiated() {
    assertThat(show(port("switchport mode dynamic desirable"), Keys.MODE)).isEqualTo("negotiated");
    assertThat(show(port("switchport mode dynamic auto"), Keys.MODE)).isEqualTo("negotiated");
  }

  @Test
  void data_centre_trunks_do_not_negotiate() {
    PortSettings port =
        port(dataCentre(stanza("Ethernet1/1", "switchport mode trunk")), "Ethernet1/1");
    assertThat(show(port, Keys.NEGOTIATE)).isEqualTo("false");
    assertThat(why(port, Keys.NEGOTIATE))
        .isEqualTo("data-centre: no trunk negotiation | 5: switchport mode trunk");
  }

  @Test
  void the_shut_state_without_a_line_is_the_dialects() {
    assertThat(show(port(""), Keys.SHUT)).isEqualTo("false");
    assertThat(why(port(""), Keys.SHUT)).isEqualTo("campus: ports are not shut");
    SwitchSettings settings =
        dataCentre(
            stanza("Ethernet1/1", "")
                + stanza("Ethernet1/2", "no switchport")
                + stanza("Vlan10", ""));
    assertThat(show(port(settings, "Ethernet1/1"), Keys.SHUT)).isEqualTo("false");
    assertThat(show(port(settings, "Ethernet1/2"), Keys.SHUT)).isEqualTo("true");
    assertThat(why(port(settings, "Vlan10"), Keys.SHUT))
        .isEqualTo("data-centre: VLAN interfaces are shut");
  }

  @Test
  void a_system_default_line_decides_the_shut_state() {
    SwitchSettings settings =
        dataCentre(
            "system default switchport shutdown\n"
                + stanza("Ethernet1/1", "")
                + stanza("Ethernet1/2", "no shutdown"));
    assertThat(show(port(settings, "Ethernet1/1"), Keys.SHUT)).isEqualTo("true");
    assertThat(why(port(settings, "Ethernet1/1"), Keys.SHUT))
        .isEqualTo("4: system default switchport shutdown");
    assertThat(show(port(settings, "Ethernet1/2"), Keys.SHUT)).isEqualTo("false");
  }

  @Test
  void what_shuts_ports_for_lack_of_a_line_leaves_bundles_open() {
    SwitchSettings settings =
        dataCentre(
            "system default switchport shutdown\n"
                + stanza("port-channel20", "switchport mode trunk")
                + stanza("port-channel21", "no switchport")
                + stanza("port-channel22", "shutdown")
                + stanza("Ethernet1/1", "channel-group 20 mode active"));
    assertThat(show(port(settings, "port-channel20"), Keys.SHUT)).isEqualTo("false");
    assertThat(why(port(settings, "port-channel20"), Keys.SHUT))
        .isEqualTo(
            "data-centre: bundles are not shut; lines and defaults that shut ports reach physical"
                + " ones");
    assertThat(show(port(settings, "port-channel21"), Keys.SHUT)).isEqualTo("false");
    assertThat(show(port(settings, "port-channel22"), Keys.SHUT)).isEqualTo("true");
    assertThat(show(port(settings, "Ethernet1/1"), Keys.SHUT)).isEqualTo("true");
  }

  @Test
  void where_families_of_a_dialect_differ_the_shut_state_follows_what_the_text_prints() {
    String head = "hostname sw1\n";
    SwitchSettings prints =
        read(head + stanza("1/1/1", "no shutdown;vlan access 10") + stanza("1/1/2", "") + "end\n");
    assertThat(prints.dialect()).isEqualTo(Dialect.TWO_WORD);
    assertThat(show(port(prints, "1/1/2"), Keys.SHUT)).isEqualTo("true");
    SwitchSettings silent =
        read(head + stanza("1/1/1", "vlan access 10") + stanza("1/1/2", "") + "end\n");
    assertThat(show(port(silent, "1/1/2"), Keys.SHUT))
        .isEqualTo("? the default of the shut state of ports differs in the two-word dialect");
  }

  @Test
  void a_mode_that_is_not_modelled_is_said_to_be_other() {
    PortSettings port = port("switchport mode private-vlan host");
    assertThat(show(port, Keys.MODE)).isEqualTo("other");
    assertThat(show(port, Keys.CARRIED)).isEqualTo("? the port's mode is not modelled");
  }

  @Test
  void spellings_that_imply_a_mode_set_it() {
    SwitchSettings settings =
        read(
            "hostname sw1\n"
                + stanza("1/1/1", "no shutdown;vlan access 10")
                + stanza("1/1/2", "no shutdown;vlan trunk native 99;vlan trunk allowed 10,40")
                + "end\n");
    assertThat(show(port(settings, "1/1/1"), Keys.MODE)).isEqualTo("access");
    assertThat(show(port(settings, "1/1/2"), Keys.MODE)).isEqualTo("trunk");
    assertThat(show(port(settings, "1/1/2"), Keys.NATIVE_VLAN)).isEqualTo("99");
    assertThat(show(port(settings, "1/1/2"), Keys.ALLOWED)).isEqualTo("10,40");
  }
}
