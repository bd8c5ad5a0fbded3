package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.name;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Tests stanzas opened again or undone, and what scripts, cut-off and garbled texts leave open. */
class StanzasTest {
  private static final String SCRIPT =
      "? the text is a script, in which an absent line is no default";

  @Test
  void an_interface_opened_again_continues_and_later_lines_win() {
    SwitchSettings settings =
        campus(
            stanza("Gi1/0/1", "switchport mode access;switchport access vlan 10")
                + stanza("GigabitEthernet1/0/1", "switchport access vlan 20"));
    assertThat(show(port(settings, "Gi1/0/1"), Keys.ACCESS_VLAN)).isEqualTo("20");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo("access");
    assertThat(port(settings, "Gi1/0/1").header().line()).isEqualTo(4);
  }

  @Test
  void a_range_with_or_without_the_word_sets_all_its_ports() {
    SwitchSettings settings =
        campus(
            stanza("Gi1/0/2", "switchport access vlan 5")
                + stanza("range Gi1/0/1 - 2", "switchport access vlan 10")
                + stanza("Gi1/0/3-4", "switchport access vlan 20"));
    assertThat(show(port(settings, "Gi1/0/2"), Keys.ACCESS_VLAN)).isEqualTo("10");
    assertThat(show(port(settings, "Gi1/0/4"), Keys.ACCESS_VLAN)).isEqualTo("20");
  }

  @Test
  void default_interface_undoes_the_whole_stanza() {
    SwitchSettings settings =
        campus(
            stanza("Gi1/0/1", "switchport mode trunk;shutdown")
                + "default interface Gi1/0/1\n"
                + stanza("Gi1/0/1", "switchport access vlan 7"));
    PortSettings port = port(settings, "Gi1/0/1");
    assertThat(show(port, Keys.MODE)).isEqualTo("negotiated");
    assertThat(why(port, Keys.SHUT))
        .isEqualTo("8: default interface Gi1/0/1 | campus: ports are not shut");
    assertThat(show(port, Keys.ACCESS_VLAN)).isEqualTo("7");
  }

  @Test
  void no_interface_removes_a_virtual_port_and_resets_a_physical_one() {
    SwitchSettings settings =
        campus(
            stanza("Vlan10", "ip address 192.0.2.1 255.255.255.0")
                + stanza("Gi1/0/1", "switchport mode trunk")
                + "no interface Vlan10\nno interface Gi1/0/1\n");
    assertThat(settings.port(name("Vlan10"))).isEmpty();
    assertThat(settings.gateways()).isEmpty();
    assertThat(settings.isPortAbsent(name("Vlan10"))).isEqualTo(Truth.YES);
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo("negotiated");
  }

  @Test
  void the_no_and_default_forms_undo_what_they_name() {
    PortSettings port =
        port(
            "description QUAY;no description;speed 100;default speed;switchport mode trunk;"
                + "no switchport mode;shutdown;no shutdown;switchport access vlan 9;"
                + "default switchport access vlan;switchport voice vlan 20;"
                + "no switchport voice vlan;storm-control broadcast level 1;"
                + "no storm-control broadcast;switchport port-security;no switchport port-security");
    assertThat(show(port, Keys.DESCRIPTION)).isEqualTo("-");
    assertThat(show(port, Keys.SPEED)).isEqualTo("auto");
    assertThat(show(port, Keys.MODE)).isEqualTo("negotiated");
    assertThat(show(port, Keys.SHUT)).isEqualTo("false");
    assertThat(show(port, Keys.ACCESS_VLAN)).isEqualTo("1");
    assertThat(show(port, Keys.VOICE_VLAN)).isEqualTo("-");
    assertThat(show(port, Keys.STORM_CONTROL)).isEqualTo("false");
    assertThat(show(port, Keys.PORT_SECURITY)).isEqualTo("false");
  }

  @Test
  void every_setting_of_every_port_has_evidence_or_says_why_it_is_open() {
    SwitchSettings settings =
        campus(
            "vlan 10\n"
                + stanza("Gi1/0/1", "switchport mode access;channel-group 1 mode on")
                + stanza("Po1", "switchport mode trunk")
                + stanza("Vlan10", "")
                + stanza("Gi1/0/2", ""));
    for (PortSettings port : settings.ports().values()) {
      for (Key<?> key : Keys.ALL) {
        boolean explained =
            !port.get(key).evidence().isEmpty() || port.get(key).reason().isPresent();
        assertThat(explained).as(port.fullName() + " " + key).isTrue();
      }
    }
  }

  @Test
  void in_a_script_an_absent_line_is_no_default_and_an_explicit_one_is_a_fact() {
    SwitchSettings settings =
        read("conf t\ninterface Gi1/0/1\nswitchport mode access\nswitchport access vlan 10\nend\n");
    assertThat(settings.script()).isTrue();
    PortSettings port = port(settings, "Gi1/0/1");
    assertThat(show(port, Keys.MODE)).isEqualTo("access");
    assertThat(show(port, Keys.ACCESS_VLAN)).isEqualTo("10");
    assertThat(show(port, Keys.NATIVE_VLAN)).isEqualTo(SCRIPT);
    assertThat(show(port, Keys.SHUT)).isEqualTo(SCRIPT);
    assertThat(show(port, Keys.BPDU_GUARD)).isEqualTo(SCRIPT);
    assertThat(port.carries(new VlanId(10))).isEqualTo(Truth.UNKNOWN);
    assertThat(settings.isPortAbsent(name("Gi1/0/2"))).isEqualTo(Truth.UNKNOWN);
    assertThat(settings.vlans().exists(new VlanId(10))).isEqualTo(Truth.UNKNOWN);
    assertThat(settings.tree().mode().isDecided()).isFalse();
    assertThat(settings.tree().priorityOf(new VlanId(10)).value().isDecided()).isFalse();
    assertThat(settings.routing().isDecided()).isFalse();
  }

  @Test
  void in_a_script_default_interface_puts_the_defaults_back() {
    SwitchSettings settings =
        read("conf t\ndefault interface Gi1/0/1\ninterface Gi1/0/1\nswitchport mode trunk\nend\n");
    PortSettings port = port(settings, "Gi1/0/1");
    assertThat(show(port, Keys.NATIVE_VLAN)).isEqualTo("1");
    assertThat(why(port, Keys.NATIVE_VLAN))
        .isEqualTo("2: default interface Gi1/0/1 | campus: native VLAN 1");
    assertThat(show(port, Keys.ALLOWED)).isEqualTo("1-4094");
  }

  @Test
  void where_a_text_breaks_off_the_last_stanza_and_all_that_is_absent_are_undecided() {
    SwitchSettings settings =
        read(
            "Building configuration...\n\nCurrent configuration : 9000 bytes\n!\nversion 15.2\n"
                + "hostname sw1\nvtp mode transparent\nvlan 10\n!\n"
                + stanza("Gi1/0/1", "switchport mode access;switchport access vlan 10")
                + "interface Gi1/0/2\n switchport mode trunk\n");
    assertThat(settings.truncation()).isPresent();
    assertThat(settings.script()).isFalse();
    PortSettings whole = port(settings, "Gi1/0/1");
    assertThat(show(whole, Keys.MODE)).isEqualTo("access");
    assertThat(show(whole, Keys.NATIVE_VLAN)).isEqualTo("1");
    assertThat(show(whole, Keys.SHUT)).isEqualTo("false");
    assertThat(show(whole, Keys.BPDU_GUARD)).isEqualTo("off");
    PortSettings last = port(settings, "Gi1/0/2");
    for (Key<?> key : Keys.ALL) {
      assertThat(last.get(key).isDecided()).as(key.name()).isFalse();
    }
    assertThat(settings.isPortAbsent(name("Gi1/0/3"))).isEqualTo(Truth.UNKNOWN);
    assertThat(settings.vlans().exists(new VlanId(20))).isEqualTo(Truth.UNKNOWN);
    assertThat(settings.vlans().exists(new VlanId(10))).isEqualTo(Truth.YES);
  }

  /** Dumps print what holds for all ports above the first one (common practice, no source). */
  @Test
  void where_a_dump_breaks_off_below_a_port_what_holds_for_all_ports_stands_above() {
    String port = stanza("Gi1/0/1", "switchport mode access;spanning-tree portfast");
    SwitchSettings below =
        read(
            "version 15.2\nhostname sw1\nspanning-tree portfast bpduguard default\n"
                + port
                + stanza("Gi1/0/2", "")
                + "interface Gi1/0/3\n");
    assertThat(below.truncation()).isPresent();
    assertThat(show(port(below, "Gi1/0/1"), Keys.BPDU_GUARD)).isEqualTo("on");
    assertThat(show(port(below, "Gi1/0/2"), Keys.FAST_START)).isEqualTo("off");
    assertThat(why(port(below, "Gi1/0/2"), Keys.FAST_START))
        .isEqualTo(
            "lines for all ports stand above the first port, which the text holds | "
                + "campus: no fast-start");
    assertThat(show(port(below, "Gi1/0/2"), Keys.MODE)).isEqualTo("negotiated");
    assertThat(show(port(below, "Gi1/0/2"), Keys.SHUT)).isEqualTo("false");
    assertThat(show(port(below, "Gi1/0/3"), Keys.SHUT)).startsWith("? the text breaks off at line");
    assertThat(show(below.tree().mode())).isEqualTo("pvst");
    assertThat(below.routing().isDecided()).isFalse();
    SwitchSettings above = read("version 15.2\nhostname sw1\nvlan 10\n name OFFICE\n");
    assertThat(above.truncation()).isPresent();
    assertThat(above.tree().mode().isDecided()).isFalse();
  }

  @Test
  void a_dump_that_lacks_bytes_before_its_end_may_lack_a_line_for_all_ports() {
    SwitchSettings settings =
        read(
            "Building configuration...\n\nCurrent configuration : 9000 bytes\n!\nversion 15.2\n"
                + "hostname sw1\n!\n"
                + stanza("Gi1/0/1", "switchport mode access;spanning-tree portfast")
                + "end\n");
    assertThat(settings.truncation()).isPresent();
    PortSettings port = port(settings, "Gi1/0/1");
    assertThat(show(port, Keys.SHUT)).isEqualTo("false");
    assertThat(show(port, Keys.BPDU_GUARD)).startsWith("? the text breaks off at line ");
    assertThat(settings.tree().mode().isDecided()).isFalse();
  }

  @Test
  void a_data_centre_dump_that_breaks_off_below_a_port_has_no_further_system_default() {
    SwitchSettings below =
        read(
            "version 9.3(8)\nfeature lacp\nhostname sw1\nvlan 1,10\n"
                + stanza("Ethernet1/1", "description QUAY")
                + "interface Ethernet1/2\n  switchport trunk allowed vlan 10,");
    assertThat(below.truncation()).isPresent();
    assertThat(show(port(below, "Ethernet1/1"), Keys.SHUT)).isEqualTo("false");
    assertThat(show(port(below, "Ethernet1/1"), Keys.MODE)).isEqualTo("access");
  }

  @Test
  void facts_after_a_banner_that_never_closes_are_undecided() {
    SwitchSettings settings =
        read(
            "version 15.2\nhostname sw1\nvlan 10\n"
                + stanza("Gi1/0/1", "switchport mode access")
                + "banner motd ^C\nwelcome aboard\n"
                + stanza("Gi1/0/2", "switchport mode access")
                + "vlan 20\nend\n");
    assertThat(settings.truncation()).isPresent();
    assertThat(show(port(settings, "Gi1/0/1"), Keys.MODE)).isEqualTo("access");
    assertThat(show(port(settings, "Gi1/0/1"), Keys.BPDU_GUARD)).isEqualTo("off");
    assertThat(show(port(settings, "Gi1/0/2"), Keys.MODE))
        .startsWith("? the text breaks off at line ");
    assertThat(settings.vlans().exists(new VlanId(20))).isEqualTo(Truth.UNKNOWN);
  }

  @Test
  void a_garbled_line_puts_in_doubt_what_its_keywords_govern_until_a_clear_line_decides() {
    PortSettings doubled = port("switchport mode trunk;switchport trunk allowed vlan vlan 20,22");
    assertThat(show(doubled, Keys.ALLOWED)).isEqualTo("? line 6 is not understood");
    assertThat(show(doubled, Keys.NATIVE_VLAN)).isEqualTo("1");
    assertThat(why(doubled, Keys.ALLOWED)).isEqualTo("6: switchport");
    assertThat(doubled.unknown()).containsExactly(new UnknownLine(6, "switchport"));
    PortSettings decided =
        port(
            "switchport mode trunk;switchport trunk allowed vlan vlan 20,22;"
                + "switchport trunk allowed vlan 20");
    assertThat(show(decided, Keys.ALLOWED)).isEqualTo("20");
    PortSettings access = port("switchport mode access;switchport acess vlan 10");
    assertThat(show(access, Keys.ACCESS_VLAN)).isEqualTo("? line 6 is not understood");
    assertThat(show(access, Keys.MODE)).isEqualTo("? line 6 is not understood");
    PortSettings tree = port("switchport mode access;spanning-tree portfst");
    assertThat(show(tree, Keys.FAST_START)).isEqualTo("? line 6 is not understood");
    assertThat(show(tree, Keys.BPDU_GUARD)).isEqualTo("? line 6 is not understood");
    assertThat(show(tree, Keys.MODE)).isEqualTo("access");
    assertThat(show(port("channel-group x"), Keys.BUNDLE)).isEqualTo("? line 5 is not understood");
  }

  @Test
  void a_statement_of_an_unknown_kind_is_only_counted() {
    PortSettings port = port("switchport mode access;frobnicate 7");
    assertThat(port.unknown()).containsExactly(new UnknownLine(6, "frobnicate"));
    for (Key<?> key : Keys.ALL) {
      assertThat(port.get(key).isDecided()).as(key.name()).isTrue();
    }
  }

  @Test
  void a_header_that_names_no_clear_port_leaves_unopened_ports_undecided() {
    SwitchSettings settings =
        campus(stanza("Gi1/0/1", "") + stanza("tw1/0/1", "switchport mode trunk"));
    assertThat(settings.doubtfulHeaders()).hasSize(1);
    assertThat(settings.isPortAbsent(name("TwoGigabitEthernet1/0/1"))).isEqualTo(Truth.UNKNOWN);
    assertThat(settings.isPortAbsent(name("Gi1/0/1"))).isEqualTo(Truth.NO);
    assertThat(campus(stanza("Gi1/0/1", "")).isPortAbsent(name("Gi1/0/2"))).isEqualTo(Truth.YES);
  }

  @Test
  void the_stem_names_a_switch_without_hostname() {
    SwitchSettings settings = read("version 15.2\n" + stanza("Gi1/0/1", "shutdown") + "end\n");
    assertThat(settings.name()).isEqualTo("sw1");
    assertThat(show(settings.hostname())).isEqualTo("-");
  }
}
