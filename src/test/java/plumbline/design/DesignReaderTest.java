package plumbline.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.PortMode;
import plumbline.vlan.VlanSet;

/** What merging and resolving make of designs that are not only wrong. */
class DesignReaderTest {
  private static final String HEAD = "format: plumbline-design/1\n";

  private static List<String> merged(String... texts) {
    return Designs.messages(Designs.read(sources(texts)));
  }

  private static List<DesignSource> sources(String... texts) {
    List<DesignSource> sources = new java.util.ArrayList<>();
    for (String text : texts) {
      String name = "abc".charAt(sources.size()) + (text.startsWith("{") ? ".json" : ".yaml");
      sources.add(new DesignSource(name, "00", text));
    }
    return sources;
  }

  private static Design good(String... texts) {
    DesignReading reading = Designs.read(sources(texts));
    assertThat(Designs.messages(reading)).isEmpty();
    return reading.design().orElseThrow();
  }

  @Test
  void several_files_are_one_design_whatever_file_a_name_is_declared_in() {
    Design design =
        good(
            HEAD + "site: North\nother-vlans: [5-6]\nharmless: [a]\nroles: {r: {access: office}}\n",
            "{\"format\": \"plumbline-design/1\", \"vlans\": {\"office\": {\"id\": 250}},"
                + " \"other-vlans\": [8, \"10-11\"]}",
            HEAD
                + "revision: 2041\nharmless: [b]\nrules: {silent: [mode-differs]}\n"
                + "switches: {sw: {ports: {Gi1/0/1: r}}}\n");
    assertThat(design.site()).contains("North");
    assertThat(design.revision()).contains("2041");
    assertThat(design.otherVlans()).isEqualTo(VlanSet.of(5, 6, 8, 10, 11));
    assertThat(design.harmless()).containsExactly("a", "b");
    assertThat(design.files())
        .extracting(Design.SourceFile::file)
        .containsExactly("a.yaml", "b.json", "c.yaml");
    assertThat(design.portsOf("sw").get(0).role().value(RoleKeys.ACCESS).map(DesignVlan::at))
        .hasValueSatisfying(at -> assertThat(at.file()).isEqualTo("b.json"));
  }

  @Test
  void what_two_files_give_twice_is_reported_with_both_places() {
    assertThat(
            merged(
                HEAD + "site: North\nvlans: {office: {id: 250}}\nmax-age-days: 3\n",
                HEAD
                    + "site: South\nrevision: x\nvlans:\n  office: {id: 251}\n  lab: {id: 250}\n"
                    + "max-age-days: 3\n"))
        .containsExactly(
            "b.yaml:2:1: key \"site\" is given twice; first at a.yaml:2:1",
            "b.yaml:5:3: key \"office\" is given twice; first at a.yaml:3:9",
            "b.yaml:6:13: VLAN id 250 is given twice; first at a.yaml:3:22",
            "b.yaml:7:1: key \"max-age-days\" is given twice; first at a.yaml:4:1");
  }

  @Test
  void every_file_must_say_its_format() {
    assertThat(merged(HEAD, "vlans: {office: {id: 250}}\n"))
        .containsExactly(
            "b.yaml:1:1: a design needs the key \"format\" with \"plumbline-design/1\"");
  }

  @Test
  void references_are_not_judged_while_a_file_is_broken() {
    assertThat(
            merged(
                HEAD + "roles: {r: {access: office, paint: red}}\n",
                HEAD + "vlans: {office: {id: 250}\n"))
        .containsExactly(
            "a.yaml:2:29: unknown key \"paint\" in a role; expected \"like\", \"mode\", \"voice\","
                + " \"native\", \"tagged\" or 19 more",
            "b.yaml:2:8: this map is never closed, or a comma is missing in it; expected \",\" or"
                + " \"}\"");
  }

  @Test
  void a_role_inherits_and_drops_what_its_own_mode_leaves_without_effect() {
    Design design =
        good(
            HEAD
                + "vlans: {office: {id: 250}, parked: {id: 999}}\n"
                + "roles:\n"
                + "  desk: {like: edge, access: office}\n"
                + "  edge: {mode: access, fast-start: true, mtu: 1500}\n"
                + "  trunk: {like: desk, mode: trunk, native: parked, mtu: 9000}\n");
    Role trunk = design.roles().get("trunk");
    assertThat(trunk.value(RoleKeys.MODE)).contains(PortMode.TRUNK);
    assertThat(trunk.value(RoleKeys.ACCESS)).isEmpty();
    assertThat(trunk.value(RoleKeys.FAST_START)).contains(true);
    assertThat(trunk.get(RoleKeys.MTU))
        .hasValueSatisfying(
            mtu -> {
              assertThat(mtu.value()).isEqualTo(9000);
              assertThat(mtu.at().line()).isEqualTo(6);
            });
    assertThat(design.roles().keySet()).containsExactly("desk", "edge", "trunk");
  }

  @Test
  void an_outside_router_takes_the_role_of_a_sheet_or_of_a_link_to_outside() {
    Design design =
        good(
            HEAD
                + "vlans: {office: {id: 250}}\n"
                + "roles: {out: {mode: trunk}}\n"
                + "switches: {sw: {ports: {Gi1/0/1: out}}}\n"
                + "links: [{ends: [outside, sw Gi1/0/2], role: out}]\n"
                + "gateways: {edge: {at: [sw Gi1/0/1, sw gig1/0/2, sw Gi1/0/3], vlans: [office]}}\n");
    assertThat(design.gateways().get("edge").outside())
        .extracting(port -> port.role().name() + ", " + port.subject())
        .containsExactly("out, out", "out, link to outside", "gateway, gateway edge");
  }

  @Test
  void a_file_with_every_key_is_read_whole() {
    Design design = good(Designs.text(Path.of("testdata/design/every-key.yaml")));
    DesignSwitch first = design.switches().get("south-sw1");
    assertThat(first.tree().bridgeAddress().map(Wanted::value)).contains("00:00:5e:00:53:01");
    assertThat(first.tree().mst().orElseThrow().value().instances().get(1))
        .extracting(DesignVlan::name)
        .containsExactly("hypervisor", "voice-a");
    Host.HostPort nic = design.hosts().get("vmhost-s1").ports().get("nic0");
    assertThat(nic.lengthMetres()).hasValue(7.5);
    assertThat(nic.to().role().value(RoleKeys.MTU)).contains(1500);
    assertThat(nic.to().role().value(RoleKeys.SPEED)).contains("10000");
    assertThat(nic.to().role().value(RoleKeys.QOS).flatMap(Qos::trust)).contains("dscp");
    assertThat(design.links().get(1).members()).hasSize(2);
    assertThat(design.links().get(1).first().port())
        .isEqualTo(PortName.of(PortKind.PORT_CHANNEL, 2));
    assertThat(design.links().get(1).members().get(1).second()).isEmpty();
    assertThat(design.gateways().get("edge-router").vlans().get(0).address())
        .contains("2001:db8::1");
    assertThat(design.roles().get("uplink").value(RoleKeys.MAY_CARRY))
        .contains(VlanSet.ofRange(500, 599).plus(VlanSet.of(210, 700)));
  }

  @Test
  void more_problems_than_anyone_reads_are_counted() {
    List<String> messages = merged(HEAD + "x: 1\n" + "other-vlans: [" + "0, ".repeat(700) + "1]\n");
    assertThat(messages).hasSize(Problems.MOST + 1);
    assertThat(messages.get(Problems.MOST)).endsWith(": 201 more problems are not listed");
  }
}
