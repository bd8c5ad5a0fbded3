package plumbline.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import plumbline.design.DesignSwitch.RackPlace;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.PortMode;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** The design that the product's contract gives as its example means what the contract says. */
class NorthDesignTest {
  private static final String FILE = "testdata/design/north.yaml";
  private static Design design;

  @BeforeAll
  static void read() {
    DesignReading reading = Designs.read(FILE, Designs.text(Path.of(FILE)));
    assertThat(Designs.messages(reading)).isEmpty();
    design = reading.design().orElseThrow();
  }

  private static PortName gigabit(int port) {
    return PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, port);
  }

  private static DesignPort port(String switchName, PortName port) {
    return design.ports().get(switchName).get(port);
  }

  @Test
  void the_head_names_site_change_and_source() {
    assertThat(design.files()).containsExactly(new Design.SourceFile(FILE, "00"));
    assertThat(design.site()).contains("Saltmarsh Ferries, north terminal");
    assertThat(design.revision()).contains("CHG-2041");
    assertThat(design.maxAgeDays()).contains(new Wanted<>(8, new Position(FILE, 52, 15)));
    assertThat(design.silentRules()).containsExactly("description-differs");
    assertThat(design.harmless()).containsExactly("load-interval *");
    assertThat(design.otherVlans()).isEqualTo(VlanSet.ofRange(500, 599));
  }

  @Test
  void vlans_keep_their_order_and_promises() {
    assertThat(design.vlans().keySet())
        .containsExactly(
            "lights-out", "hypervisor", "voice-a", "voice-b", "office", "rehearsal", "parked");
    DesignVlan voice = design.vlans().get("voice-a");
    assertThat(voice.id().number()).isEqualTo(231);
    assertThat(voice.gateway()).isEqualTo(GatewayNeed.REQUIRED);
    assertThat(voice.telephony()).isTrue();
    assertThat(voice.filter()).isTrue();
    assertThat(voice.apartFrom()).containsExactly("voice-b");
    assertThat(voice.deviceName()).contains("VOICE-A");
    assertThat(voice.oneDomain()).isFalse();
    assertThat(voice.at()).isEqualTo(new Position(FILE, 7, 3));
    assertThat(design.vlans().get("hypervisor").oneDomain()).isTrue();
    assertThat(design.vlans().get("parked").unused()).isTrue();
    assertThat(design.vlans().get("rehearsal").gateway()).isEqualTo(GatewayNeed.FORBIDDEN);
  }

  @Test
  void a_host_uplink_wants_exactly_its_vlans_tagged() {
    DesignPort uplink = port("north-sw1", gigabit(1));
    Role role = uplink.role();
    assertThat(uplink.subject()).isEqualTo("vmhost-n1 nic0");
    assertThat(uplink.place()).isEqualTo(DesignPort.Place.HOST);
    assertThat(role.name()).isEqualTo("host-uplink");
    assertThat(role.value(RoleKeys.MODE)).contains(PortMode.TRUNK);
    assertThat(role.value(RoleKeys.NATIVE).map(DesignVlan::name)).contains("parked");
    assertThat(role.value(RoleKeys.TAGGED)).contains(VlanSet.of(220, 231, 232));
    assertThat(role.value(RoleKeys.FAST_START)).contains(true);
    assertThat(role.value(RoleKeys.BUNDLE)).contains(RoleKeys.BundleWish.NONE);
    assertThat(role.value(RoleKeys.NEGOTIATE)).contains(false);
    assertThat(role.value(RoleKeys.QOS))
        .contains(new Qos(Optional.of("none"), Optional.empty(), Optional.empty()));
    assertThat(role.value(RoleKeys.MTU)).isEmpty();
    assertThat(design.roles().get("switch-link").value(RoleKeys.MAY_CARRY))
        .contains(VlanSet.ofRange(500, 599));
  }

  @Test
  void a_cabled_port_is_placed_at_the_word_that_names_it() {
    String line = Designs.text(Path.of(FILE)).lines().toList().get(34);
    assertThat(line).contains("nic0:       {to: north-sw1 Gi1/0/1,");
    assertThat(port("north-sw1", gigabit(1)).at())
        .isEqualTo(new Position(FILE, 35, line.indexOf("Gi1/0/1") + 1));
  }

  @Test
  void the_port_sheet_expands_ranges_and_overrides_in_place() {
    DesignPort spare = port("north-sw1", gigabit(24));
    assertThat(spare.role().isSpare()).isTrue();
    assertThat(spare.subject()).isEqualTo("spare");
    DesignPort phone = port("north-sw1", gigabit(40));
    assertThat(phone.place()).isEqualTo(DesignPort.Place.SHEET);
    assertThat(phone.subject()).isEqualTo("desk-phone");
    assertThat(phone.role().value(RoleKeys.ACCESS).map(DesignVlan::name)).contains("rehearsal");
    assertThat(phone.role().value(RoleKeys.VOICE).map(DesignVlan::name)).contains("voice-a");
    assertThat(phone.role().at().line()).isEqualTo(28);
    assertThat(design.roles().get("desk-phone").value(RoleKeys.ACCESS).map(DesignVlan::name))
        .contains("office");
    // 5 spare, 11 phones, 3 host ports, the bundle, its 2 members, the way out, the edge router
    assertThat(design.portsOf("north-sw1")).hasSize(24);
    assertThat(design.portsOf("north-sw2")).hasSize(5);
  }

  @Test
  void switches_have_their_stack_place_and_trees() {
    DesignSwitch first = design.switches().get("north-sw1");
    assertThat(first.hostname()).isEqualTo("NORTH-SW1");
    assertThat(first.dialect().map(Wanted::value)).contains("campus");
    assertThat(first.stack()).containsExactly(1, 2);
    assertThat(first.managementVlan().map(vlan -> vlan.value().name())).contains("lights-out");
    assertThat(first.place()).contains(new RackPlace("N1", 40));
    assertThat(first.tree().mode().map(Wanted::value)).contains("rapid-pvst");
    assertThat(first.tree().rootOf().stream().map(vlan -> vlan.value().name()))
        .containsExactly("hypervisor", "voice-a");
    assertThat(first.tree().secondFor().stream().map(vlan -> vlan.value().name()))
        .containsExactly("voice-b");
    assertThat(design.switches().get("north-sw2").hostname()).isEqualTo("north-sw2");
    assertThat(design.switches().get("north-sw2").stack()).isEmpty();
  }

  @Test
  void hosts_have_cables_and_pairs() {
    Host host = design.hosts().get("vmhost-n1");
    assertThat(host.ports().keySet()).containsExactly("controller", "nic0", "nic1");
    assertThat(host.ports().get("nic0").cable()).contains("N-0101");
    assertThat(host.ports().get("nic0").medium()).contains("cat6a");
    assertThat(host.ports().get("nic0").lengthMetres()).hasValue(3);
    assertThat(host.ports().get("nic1").lengthMetres()).isEmpty();
    assertThat(host.pairs())
        .containsExactly(new Host.Pair("nic0", "nic1", new Position(FILE, 37, 13)));
  }

  @Test
  void links_name_the_far_end_and_their_members() {
    PortName bundle = PortName.of(PortKind.PORT_CHANNEL, 1);
    Link between = design.links().get(0);
    assertThat(between.first().subject()).isEqualTo("link to north-sw2 Port-channel1");
    assertThat(between.second().map(DesignPort::subject))
        .contains("link to north-sw1 Port-channel1");
    assertThat(between.first().place()).isEqualTo(DesignPort.Place.LINK);
    assertThat(between.members()).hasSize(2);
    DesignPort member = between.members().get(1).second().orElseThrow();
    assertThat(member).isEqualTo(port("north-sw2", gigabit(50)));
    assertThat(member.place()).isEqualTo(DesignPort.Place.MEMBER);
    assertThat(member.subject()).isEqualTo("member of link to north-sw1 Port-channel1");
    assertThat(member.role().name()).isEqualTo("switch-link");
    assertThat(design.links().get(1).second()).isEmpty();
    assertThat(design.links().get(1).first().subject()).isEqualTo("link to outside");
    assertThat(design.multiChassis())
        .containsExactly(
            new MultiChassis("north-sw1", "north-sw2", bundle, new Position(FILE, 48, 17)));
  }

  @Test
  void gateways_are_switches_or_behind_a_port() {
    Map<String, DesignGateway> gateways = design.gateways();
    assertThat(gateways.get("north-sw1").vlans().stream().map(one -> one.vlan().name()))
        .containsExactly("lights-out", "hypervisor", "voice-a", "office");
    DesignGateway.Served served = gateways.get("north-sw2").vlans().get(1);
    assertThat(served.address()).contains("192.0.2.1");
    assertThat(served.active()).contains(true);
    assertThat(gateways.get("north-sw2").vlans().get(0).active()).isEmpty();
    DesignPort behind = port("north-sw1", gigabit(47));
    assertThat(gateways.get("edge-router").outside()).containsExactly(behind);
    assertThat(behind.place()).isEqualTo(DesignPort.Place.GATEWAY);
    assertThat(behind.subject()).isEqualTo("gateway edge-router");
    assertThat(behind.role().wishes()).isEmpty();
  }

  @Test
  void services_say_what_they_survive() {
    Service calls = design.services().get("call-control");
    assertThat(calls.members())
        .isEqualTo(
            List.of(
                new Service.Member("vmhost-n1", design.vlans().get("voice-a")),
                new Service.Member("vmhost-n2", design.vlans().get("voice-b"))));
    assertThat(calls.needs()).isEqualTo(1);
    assertThat(calls.survives()).isEqualTo(Set.of(Service.Failure.values()));
  }
}
