package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.setting.Evidence;
import plumbline.setting.Truth;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.vlan.VlanId;

/** Tests gateways, their redundancy groups and whether they work. */
class GatewayRuleTest {
  private static final String PORT = stanza("Gi1/0/1", "switchport mode trunk");
  private static final String ADDRESS = "ip address 192.0.2.2 255.255.255.0";

  private static Gateway gateway(String body) {
    SwitchSettings settings = campus(body);
    assertThat(settings.gateways()).hasSize(1);
    return settings.gateways().get(0);
  }

  private static Gateway svi(String lines) {
    return gateway("ip routing\nvlan 10\n" + PORT + stanza("Vlan10", lines));
  }

  @Test
  void a_gateway_with_all_it_needs_works() {
    Gateway gateway = svi(ADDRESS);
    assertThat(gateway.vlan()).isEqualTo(new VlanId(10));
    assertThat(show(gateway.addresses())).isEqualTo("[192.0.2.2 255.255.255.0]");
    assertThat(show(gateway.works())).isEqualTo("true");
  }

  @Test
  void it_needs_to_be_not_shut_and_to_have_an_address() {
    Gateway shut = svi(ADDRESS + ";shutdown");
    assertThat(show(shut.works())).isEqualTo("false");
    assertThat(why(shut.works())).isEqualTo("11: shutdown");
    Gateway bare = svi("no ip address");
    assertThat(show(bare.works())).isEqualTo("false");
    assertThat(why(bare.works())).isEqualTo("10: no ip address | campus: no address");
  }

  @Test
  void it_may_answer_under_the_address_of_another_interface() {
    String loop = "interface Loopback0\n ip address 192.0.2.9 255.255.255.255\n";
    String vlan = "ip routing\nvlan 10\n" + PORT;
    String borrowing = "interface Vlan10\n ip unnumbered Loopback0\n";
    Gateway borrowed = gateway(vlan + loop + borrowing);
    assertThat(show(borrowed.addresses())).isEqualTo("[192.0.2.9 255.255.255.255]");
    assertThat(why(borrowed.addresses()))
        .contains("ip unnumbered Loopback0")
        .contains("ip address 192.0.2.9 255.255.255.255");
    assertThat(show(borrowed.works())).isEqualTo("true");
    assertThat(show(gateway(vlan + loop + borrowing + " " + ADDRESS + "\n").addresses()))
        .isEqualTo("[192.0.2.2 255.255.255.0]");
    Gateway returned = gateway(vlan + loop + borrowing + " no ip unnumbered\n");
    assertThat(returned.addresses().isDecided()).isTrue();
    assertThat(returned.addresses().value()).isEmpty();
    Gateway ofNobody = gateway(vlan + borrowing);
    assertThat(ofNobody.addresses().reason()).hasValue("the text shows no address of Loopback0");
    assertThat(ofNobody.works().isDecided()).isFalse();
  }

  @Test
  void its_vlan_must_exist_and_be_active() {
    Gateway missing = gateway("ip routing\n" + PORT + stanza("Vlan10", ADDRESS));
    assertThat(show(missing.works())).isEqualTo("false");
    assertThat(missing.works().evidence())
        .contains(
            new Evidence.Default("no stanza for VLAN 10: the switch keeps a list of its own"));
    Gateway suspended =
        gateway("ip routing\nvlan 10\n state suspend\n" + PORT + stanza("Vlan10", ADDRESS));
    assertThat(show(suspended.works())).isEqualTo("false");
    Gateway open = gateway("vtp mode server\nip routing\n" + PORT + stanza("Vlan10", ADDRESS));
    assertThat(show(open.works()))
        .startsWith("? whether VLAN 10 exists cannot be told: a server or client keeps");
  }

  @Test
  void its_vlan_must_reach_an_unshut_port_unless_it_does_not_follow_them() {
    String shutPort = stanza("Gi1/0/1", "switchport mode trunk;shutdown");
    Gateway cut = gateway("ip routing\nvlan 10\n" + shutPort + stanza("Vlan10", ADDRESS));
    assertThat(why(cut.works())).isEqualTo("no open port carries VLAN 10");
    Gateway free =
        gateway("ip routing\nvlan 10\n" + shutPort + stanza("Vlan10", ADDRESS + ";no autostate"));
    assertThat(show(free.works())).isEqualTo("true");
  }

  @Test
  void the_switch_must_route() {
    Gateway still = gateway("vlan 10\n" + PORT + stanza("Vlan10", ADDRESS));
    assertThat(show(still.works())).isEqualTo("false");
    assertThat(why(still.works())).isEqualTo("campus: the switch does not route");
    assertThat(show(campus("no ip routing\n").routing())).isEqualTo("false");
    assertThat(why(dataCentre("").routing())).isEqualTo("data-centre: the switch routes");
  }

  @Test
  void a_sub_interface_with_the_tag_is_a_gateway_and_needs_its_port_open() {
    String sub = stanza("Gi0/0.20", "encapsulation dot1Q 20;" + ADDRESS);
    Gateway works = gateway("ip routing\n" + stanza("Gi0/0", "no ip address") + sub);
    assertThat(works.vlan()).isEqualTo(new VlanId(20));
    assertThat(show(works.works())).isEqualTo("true");
    Gateway shut = gateway("ip routing\n" + stanza("Gi0/0", "no ip address;shutdown") + sub);
    assertThat(show(shut.works())).isEqualTo("false");
  }

  @Test
  void addresses_add_up_and_a_later_first_one_replaces_the_first() {
    Gateway gateway =
        svi(
            ADDRESS
                + ";ip address 192.0.2.130 255.255.255.128 secondary"
                + ";ip address 192.0.2.3 255.255.255.0");
    assertThat(show(gateway.addresses()))
        .isEqualTo("[192.0.2.130 255.255.255.128 secondary, 192.0.2.3 255.255.255.0]");
    assertThat(show(svi("ip address dhcp").addresses())).isEqualTo("[dhcp]");
    assertThat(show(svi(ADDRESS + ";no ip address").addresses())).isEqualTo("-");
  }

  @Test
  void a_vrrp_group_has_the_defaults_of_the_standard() {
    Gateway.Group group = svi(ADDRESS + ";vrrp 7 ip 192.0.2.1").groups().get(0);
    assertThat(group.kind()).isEqualTo(Redundancy.Kind.VRRP);
    assertThat(group.id()).isEqualTo(7);
    assertThat(show(group.address())).isEqualTo("192.0.2.1");
    // RFC 6527, VRRPV3-MIB: priority 100 and preempt true by default.
    assertThat(show(group.priority())).isEqualTo("100");
    assertThat(show(group.preempt())).isEqualTo("true");
    assertThat(group.tracks()).isFalse();
  }

  @Test
  void a_group_has_version_priority_preempt_and_tracking_of_its_own() {
    Gateway.Group group =
        svi(ADDRESS
                + ";standby version 2;standby 7 ip 192.0.2.1;standby 7 priority 110;"
                + "standby 7 preempt;standby 7 track 1 decrement 20")
            .groups()
            .get(0);
    assertThat(group.kind()).isEqualTo(Redundancy.Kind.STANDBY);
    assertThat(show(group.version())).isEqualTo("2");
    assertThat(show(group.priority())).isEqualTo("110");
    assertThat(show(group.preempt())).isEqualTo("true");
    assertThat(group.tracks()).isTrue();
  }

  @Test
  void an_anycast_gateway_has_no_priority_and_its_address_is_one() {
    SwitchSettings settings =
        TestSwitch.read(
            "hostname sw1\nvlan 10\nip routing\n"
                + stanza("Ethernet1", "switchport mode trunk")
                + stanza("Vlan10", "ip address virtual 192.0.2.1/24")
                + "end\n",
            Optional.of(Dialect.LEAF_SPINE));
    Gateway gateway = settings.gateways().get(0);
    Gateway.Group group = gateway.groups().get(0);
    assertThat(group.kind()).isEqualTo(Redundancy.Kind.ANYCAST);
    assertThat(show(group.address())).isEqualTo("192.0.2.1/24");
    assertThat(show(group.priority())).isEqualTo("-");
    assertThat(show(gateway.works())).isEqualTo("true");
  }

  @Test
  void what_it_needs_is_told_one_by_one() {
    assertThat(svi(ADDRESS + ";shutdown").has(Gateway.Need.Kind.OPEN)).isEqualTo(Truth.NO);
    assertThat(svi(ADDRESS + ";shutdown").has(Gateway.Need.Kind.ADDRESS)).isEqualTo(Truth.YES);
    assertThat(svi(ADDRESS).has(Gateway.Need.Kind.PARENT)).isEqualTo(Truth.YES);
    assertThat(svi(ADDRESS).need(Gateway.Need.Kind.PARENT)).isEmpty();
  }

  @Test
  void a_packet_filter_is_seen() {
    assertThat(show(svi(ADDRESS + ";ip access-group VOICE-IN in").filtered())).isEqualTo("true");
    assertThat(show(svi(ADDRESS).filtered())).isEqualTo("false");
    assertThat(show(svi(ADDRESS + ";ip access-group A in;no ip access-group B out").filtered()))
        .isEqualTo("true");
    assertThat(show(svi(ADDRESS + ";no ip access-group A in;ip access-group B out").filtered()))
        .isEqualTo("true");
    assertThat(show(svi(ADDRESS + ";ip access-group A out;no ip access-group A out").filtered()))
        .isEqualTo("false");
  }

  private static final String ON_VLAN =
      "? a filter stands on the VLAN itself, and what it filters is not read";

  private static String filtered(String linesOutside) {
    return show(
        gateway("ip routing\nvlan 10\n" + linesOutside + PORT + stanza("Vlan10", ADDRESS))
            .filtered());
  }

  @Test
  void a_filter_on_the_vlan_leaves_open_whether_the_gateway_is_filtered() {
    Gateway gateway =
        gateway(
            "ip routing\nvlan 10\nvlan filter M vlan-list 8-10\n"
                + PORT
                + stanza("Vlan10", ADDRESS));
    assertThat(show(gateway.filtered())).isEqualTo(ON_VLAN);
    assertThat(why(gateway.filtered())).isEqualTo("6: vlan filter M vlan-list 8-10");
    assertThat(filtered("vlan filter M vlan-list all\n")).isEqualTo(ON_VLAN);
    assertThat(filtered(" ip access-group LIST in\n")).isEqualTo(ON_VLAN);
    assertThat(filtered(" apply access-list ip LIST routed-in\n")).isEqualTo(ON_VLAN);
  }

  @Test
  void a_filter_on_other_vlans_or_one_that_is_taken_off_again_says_nothing_of_this_gateway() {
    assertThat(filtered("vlan filter M vlan-list 8-9,11\n")).isEqualTo("false");
    assertThat(filtered("vlan filter M vlan-list 8-10\nno vlan filter M vlan-list 10\n"))
        .isEqualTo("false");
    assertThat(filtered("vlan filter M vlan-list 10\nno vlan filter M\n")).isEqualTo("false");
    assertThat(filtered("vlan filter M vlan-list 10\nno vlan filter N vlan-list 10\n"))
        .isEqualTo(ON_VLAN);
    assertThat(filtered(" ip access-group LIST in\n no ip access-group LIST in\n"))
        .isEqualTo("false");
    assertThat(filtered("!\nvlan 11\n ip access-group LIST in\n")).isEqualTo("false");
  }

  @Test
  void a_list_of_filtered_vlans_that_cannot_be_read_leaves_every_gateway_open() {
    assertThat(filtered("vlan filter M vlan-list 8-,1x\n")).isEqualTo("? line 6 is not understood");
  }

  @Test
  void a_filter_on_the_interface_counts_beside_one_on_the_vlan() {
    Gateway gateway =
        gateway(
            "ip routing\nvlan 10\nvlan filter M vlan-list 10\n"
                + PORT
                + stanza("Vlan10", ADDRESS + ";ip access-group A in"));
    assertThat(show(gateway.filtered())).isEqualTo("true");
  }
}
