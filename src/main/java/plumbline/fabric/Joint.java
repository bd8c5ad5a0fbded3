package plumbline.fabric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import plumbline.effective.SpanningTree;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * A link whose untagged frames leave in one VLAN and arrive in another: where nothing notices it,
 * the two VLANs are one broadcast domain there.
 *
 * @param link index of the link
 * @param vlans the VLAN at its first and at its second end
 * @param up whether it carries both for certain
 * @param unnoticed whether spanning tree fails to notice it; where it does, both are blocked
 * @param forwards whether spanning tree lets frames over the link, with nothing failed
 */
public record Joint(int link, Crossing.Mismatch vlans, Truth up, Truth unnoticed, Truth forwards) {
  /** Every such link of a network, in design order. */
  public static List<Joint> in(Fabric fabric) {
    List<Joint> all = new ArrayList<>();
    Map<TreeScope, Forwarding> trees = new HashMap<>();
    for (int index = 0; index < fabric.links().size(); index++) {
      FabricLink link = fabric.links().get(index);
      Optional<Crossing.Mismatch> mismatch = link.crossing().mismatch();
      if (mismatch.isPresent() && link.isUp() != Truth.NO && link.isReadable()) {
        all.add(joint(fabric, index, mismatch.get(), trees));
      }
    }
    return all;
  }

  private static Joint joint(
      Fabric fabric, int index, Crossing.Mismatch vlans, Map<TreeScope, Forwarding> trees) {
    FabricLink link = fabric.links().get(index);
    boolean carried =
        link.first().trafficWith(link.second()).carried().certain().contains(vlans.first())
            && link.second().trafficWith(link.first()).carried().certain().contains(vlans.second());
    Truth unseen = isUnseen(link, vlans.first(), vlans.second());
    Truth forwards = Truth.UNKNOWN;
    if (unseen == Truth.YES) {
      // an end that hears nothing takes itself for the only one
      forwards = Truth.YES;
    } else if (unseen == Truth.NO && !isBoundary(link)) {
      forwards =
          forwards(fabric, index, link.first(), vlans.first(), trees)
              .and(forwards(fabric, index, link.second(), vlans.second(), trees));
    }
    return new Joint(
        index, vlans, carried ? link.isUp() : Truth.UNKNOWN, unnoticed(link, unseen), forwards);
  }

  private static Truth forwards(
      Fabric fabric, int link, LinkEnd end, VlanId vlan, Map<TreeScope, Forwarding> trees) {
    SwitchSettings device = end.device().orElseThrow();
    OptionalInt instance = OptionalInt.empty();
    if (family(end).filter(TreeFamily.MULTIPLE::equals).isPresent()) {
      Setting<Integer> of = device.tree().region().instanceOf(vlan);
      if (of.value().isEmpty()) {
        return Truth.UNKNOWN;
      }
      instance = OptionalInt.of(of.value().get());
    }
    Forwarding.Passing passing =
        trees
            .computeIfAbsent(new TreeScope(vlan, instance), scope -> new Forwarding(fabric, scope))
            .during(new Failure.None());
    return passing.certain().get(link)
        ? Truth.YES
        : passing.possible().get(link) ? Truth.UNKNOWN : Truth.NO;
  }

  /**
   * Whether spanning tree fails to notice it. Trees per VLAN at both ends do, as each names its
   * VLAN in what it sends from a trunk; from an access port it names none, and other trees never do
   * (common practice, no source).
   */
  private static Truth unnoticed(FabricLink link, Truth unseen) {
    Truth perVlan =
        link.ends().stream()
            .map(Joint::family)
            .map(
                one ->
                    one.map(family -> Truth.of(family == TreeFamily.PER_VLAN))
                        .orElse(Truth.UNKNOWN))
            .reduce(Truth.YES, Truth::and);
    List<Optional<PortMode>> modes =
        List.of(link.first().modeWith(link.second()), link.second().modeWith(link.first()));
    Truth named =
        modes.stream().anyMatch(mode -> mode.equals(Optional.of(PortMode.TRUNK)))
            ? Truth.YES
            : modes.stream().allMatch(mode -> mode.equals(Optional.of(PortMode.ACCESS)))
                ? Truth.NO
                : Truth.UNKNOWN;
    return not(perVlan.and(named).and(not(unseen)));
  }

  private static Truth not(Truth truth) {
    return switch (truth) {
      case YES -> Truth.NO;
      case NO -> Truth.YES;
      case UNKNOWN -> Truth.UNKNOWN;
    };
  }

  /** Whether no frame of spanning tree passes the link in these VLANs. */
  private static Truth isUnseen(FabricLink link, VlanId first, VlanId second) {
    return or(isMute(link.first(), first), isMute(link.second(), second));
  }

  private static Truth isMute(LinkEnd end, VlanId vlan) {
    SpanningTree tree = end.device().orElseThrow().tree();
    Setting<Effect> filter = end.settings().orElseThrow().get(Keys.BPDU_FILTER);
    Truth filtered = filter.isDecided() ? Truth.of(filter.is(Effect.ON)) : Truth.UNKNOWN;
    return or(filtered, tree.isOff(vlan));
  }

  private static Truth or(Truth one, Truth other) {
    return Stream.of(one, other).anyMatch(Truth.YES::equals)
        ? Truth.YES
        : Stream.of(one, other).allMatch(Truth.NO::equals) ? Truth.NO : Truth.UNKNOWN;
  }

  private static Optional<TreeFamily> family(LinkEnd end) {
    return TreeFamily.of(end.device().orElseThrow().tree().mode());
  }

  /** Whether trees of kinds meet whose understanding is not predicted. */
  private static boolean isBoundary(FabricLink link) {
    return link.ends().stream().map(Joint::family).distinct().count() > 1;
  }
}
