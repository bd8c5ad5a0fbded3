package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.fabric.Sites.at;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import plumbline.setting.PortMode;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** What passes links, by the settings of both ends. */
class FabricTest {
  private static final Failure NOTHING = new Failure.None();
  private static final VlanId SHOP = new VlanId(10);
  private static final VlanId YARD = new VlanId(20);

  /** Two switches and one link. */
  private static final String PAIR =
      """
      format: plumbline-design/1
      vlans: {shop: {id: 10}, yard: {id: 20}, parked: {id: 999, unused: true}}
      roles: {switch-link: {mode: trunk, tagged: [shop, yard], native: parked}}
      switches: {a: {}, b: {}}
      links:
        - {ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}
      """;

  private static final String VLANS = "vlan 10,20,999\n!\n";

  private static String trunk(String port, String... lines) {
    return VLANS
        + "interface "
        + port
        + "\n switchport mode trunk\n "
        + String.join("\n ", lines)
        + "\n!\n";
  }

  private static Fabric pair(String one, String other) {
    return Sites.fabric(PAIR, Map.of("a", one, "b", other));
  }

  private static Truth joins(Fabric fabric, VlanId vlan) {
    return fabric.graph(vlan).joins(at("a", "Gi1/0/9"), at("b", "Gi1/0/9"), NOTHING);
  }

  @Test
  void a_vlan_crosses_where_both_ends_carry_it() {
    Fabric fabric =
        pair(
            trunk("Gi1/0/1", "switchport trunk allowed vlan 10,20"),
            trunk("Gi1/0/1", "switchport trunk allowed vlan 10"));
    assertThat(fabric.links().get(0).crosses().certain()).hasToString("10");
    assertThat(joins(fabric, SHOP)).isEqualTo(Truth.YES);
    assertThat(joins(fabric, YARD)).isEqualTo(Truth.NO);
  }

  @Test
  void a_vlan_that_a_switch_does_not_have_does_not_cross() {
    Fabric fabric =
        pair(trunk("Gi1/0/1"), trunk("Gi1/0/1").replace("vlan 10,20,999", "vlan 10,999"));
    assertThat(fabric.links().get(0).crosses().certain()).hasToString("1,10,999");
  }

  @Test
  void one_native_vlan_crosses_without_a_tag_and_two_are_a_mismatch() {
    String native10 = trunk("Gi1/0/1", "switchport trunk native vlan 10");
    String native20 = trunk("Gi1/0/1", "switchport trunk native vlan 20");
    assertThat(joins(pair(native10, native10), SHOP)).isEqualTo(Truth.YES);
    FabricLink mixed = pair(native10, native20).links().get(0);
    assertThat(mixed.crossing().mismatch())
        .isEqualTo(Optional.of(new Crossing.Mismatch(SHOP, YARD)));
    assertThat(mixed.crosses().possible()).hasToString("1,999");
    String tagging = "vlan dot1q tag native\n" + native20;
    assertThat(pair(native10, tagging).links().get(0).crossing().mismatch()).isEmpty();
  }

  @Test
  void a_native_vlan_outside_a_list_passes_nothing() {
    String barred =
        trunk("Gi1/0/1", "switchport trunk native vlan 10", "switchport trunk allowed vlan 20");
    FabricLink link = pair(barred, barred).links().get(0);
    assertThat(link.crosses().possible()).hasToString("20");
    assertThat(link.crossing().mismatch()).isEmpty();
  }

  @Test
  void negotiated_ends_settle_together() {
    String asks = VLANS + "interface Gi1/0/1\n switchport mode dynamic desirable\n!\n";
    String answers = VLANS + "interface Gi1/0/1\n switchport mode dynamic auto\n!\n";
    assertThat(joins(pair(asks, answers), SHOP)).isEqualTo(Truth.YES);
    FabricLink dumb = pair(answers, answers).links().get(0);
    assertThat(dumb.first().modeWith(dumb.second())).contains(PortMode.ACCESS);
    assertThat(dumb.crosses().possible()).hasToString("1");
    String unsaid = VLANS + "interface Gi1/0/1\n switchport access vlan 10\n!\n";
    assertThat(joins(pair(unsaid, answers), SHOP)).isEqualTo(Truth.UNKNOWN);
  }

  @Test
  void a_shut_end_carries_nothing_and_an_unread_one_perhaps_everything() {
    assertThat(joins(pair(trunk("Gi1/0/1", "shutdown"), trunk("Gi1/0/1")), SHOP))
        .isEqualTo(Truth.NO);
    Fabric half = Sites.fabric(PAIR, Map.of("a", trunk("Gi1/0/1")));
    assertThat(joins(half, SHOP)).isEqualTo(Truth.UNKNOWN);
    assertThat(joins(half, new VlanId(30))).isEqualTo(Truth.NO);
  }

  /** One bundle of two cables. */
  private static final String BUNDLED =
      """
      format: plumbline-design/1
      vlans: {shop: {id: 10}, yard: {id: 20}}
      roles: {switch-link: {mode: trunk, tagged: [shop, yard], bundle: lacp}}
      switches: {a: {stack: [1, 2]}, b: {}}
      links:
        - {ends: [a Po1, b Po1], role: switch-link, members: [[Gi1/0/1, Gi1/0/1], [Gi2/0/1, Gi1/0/2]]}
      """;

  private static String bundle(String extra, String one, String mode1, String two, String mode2) {
    return VLANS
        + "interface Port-channel1\n switchport mode trunk\n"
        + extra
        + "!\n"
        + "interface "
        + one
        + "\n channel-group 1 mode "
        + mode1
        + "\n!\n"
        + "interface "
        + two
        + "\n channel-group 1 mode "
        + mode2
        + "\n!\n";
  }

  private static Fabric bundled(String extra, String mode1, String mode2) {
    return Sites.fabric(
        BUNDLED,
        Map.of(
            "a", bundle(extra, "Gi1/0/1", mode1, "Gi2/0/1", mode2),
            "b", bundle("", "Gi1/0/1", "passive", "Gi1/0/2", "passive")));
  }

  @Test
  void a_bundle_is_up_while_enough_of_its_cables_form() {
    assertThat(bundled("", "active", "active").links().get(0).isUp()).isEqualTo(Truth.YES);
    assertThat(bundled("", "passive", "active").links().get(0).isUp()).isEqualTo(Truth.YES);
    assertThat(bundled("", "passive", "passive").links().get(0).isUp()).isEqualTo(Truth.NO);
    assertThat(bundled("", "on", "on").links().get(0).crosses().possible().isEmpty()).isTrue();
    String two = " port-channel min-links 2\n";
    assertThat(bundled(two, "active", "active").links().get(0).isUp()).isEqualTo(Truth.YES);
    assertThat(bundled(two, "active", "passive").links().get(0).isUp()).isEqualTo(Truth.NO);
  }

  /**
   *
   *
   * <pre>
   *   a: member 1 === member 2      b hangs on both members by one cable each,
   *         |             |         so either member may fail
   *         +----- b -----+
   * </pre>
   */
  @Test
  void a_bundle_over_a_stack_survives_one_member() {
    Failure one = new Failure.OfSwitch("a", OptionalInt.of(1));
    VlanGraph graph = bundled("", "active", "active").graph(SHOP);
    assertThat(graph.joins(at("a", "Gi2/0/9"), at("b", "Gi1/0/9"), one)).isEqualTo(Truth.YES);
    assertThat(graph.joins(at("a", "Gi1/0/9"), at("b", "Gi1/0/9"), one)).isEqualTo(Truth.NO);
    assertThat(graph.joins(at("a", "Gi1/0/9"), at("b", "Gi1/0/9"), new Failure.OfCable(0, 0)))
        .isEqualTo(Truth.YES);
    assertThat(graph.joins(at("a", "Gi1/0/9"), at("b", "Gi1/0/9"), new Failure.OfLink(0)))
        .isEqualTo(Truth.NO);
    VlanGraph needsBoth = bundled(" port-channel min-links 2\n", "active", "active").graph(SHOP);
    assertThat(needsBoth.joins(at("a", "Gi2/0/9"), at("b", "Gi1/0/9"), one)).isEqualTo(Truth.NO);
    assertThat(needsBoth.joins(at("a", "Gi2/0/9"), at("b", "Gi1/0/9"), new Failure.OfCable(0, 0)))
        .isEqualTo(Truth.NO);
    VlanGraph lame = bundled("", "active", "on").graph(SHOP);
    assertThat(lame.joins(at("a", "Gi2/0/9"), at("b", "Gi1/0/9"), one)).isEqualTo(Truth.NO);
  }

  @Test
  void failures_are_those_of_every_box_link_and_cable() {
    assertThat(bundled("", "active", "active").failures())
        .containsExactly(
            new Failure.OfSwitch("a", OptionalInt.of(1)),
            new Failure.OfSwitch("a", OptionalInt.of(2)),
            new Failure.OfSwitch("b", OptionalInt.empty()),
            new Failure.OfLink(0),
            new Failure.OfCable(0, 0),
            new Failure.OfCable(0, 1));
  }
}
