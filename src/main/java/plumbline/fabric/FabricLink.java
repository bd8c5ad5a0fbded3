package plumbline.fabric;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.Link;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Carried;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/**
 * A link between two switches of the design, and what really passes it.
 *
 * @param design the link in the design
 * @param first one end
 * @param second the other end
 * @param cables its cables; of a bundle whose members the design does not name, none
 * @param crossing what its ends let pass, whether a bundle forms left aside
 */
public record FabricLink(
    Link design, LinkEnd first, LinkEnd second, List<Cable> cables, Crossing crossing) {
  /** Copies the list. */
  public FabricLink {
    cables = List.copyOf(cables);
  }

  /**
   * The link as two switches' settings make it; the link must not leave the design.
   *
   * @param shared the ports that another link ends on too
   */
  static FabricLink of(
      Link design,
      Optional<SwitchSettings> one,
      Optional<SwitchSettings> other,
      Set<DesignPort> shared) {
    DesignPort far = design.second().orElseThrow();
    LinkEnd first = LinkEnd.of(design.first(), one, shared.contains(design.first()));
    LinkEnd second = LinkEnd.of(far, other, shared.contains(far));
    List<Cable> cables =
        isBundle(design.first()) || isBundle(far)
            ? design.members().stream()
                .flatMap(
                    member ->
                        member.second().stream()
                            .map(
                                end ->
                                    Cable.inBundle(
                                        member.first().port(), end.port(), first, second)))
                .toList()
            : List.of(Cable.alone(design.first().port(), far.port()));
    return new FabricLink(
        design,
        first,
        second,
        cables,
        Crossing.between(first.trafficWith(second), second.trafficWith(first)));
  }

  private static boolean isBundle(DesignPort port) {
    return port.port().kind().isBundle();
  }

  /** Whether enough cables are up; without a bundle, whether the ports are open is not asked. */
  public Truth isUp() {
    return isUpWithout(0);
  }

  /** Whether the link stays up when one of the cables that are up fails. */
  public Truth survivesCable() {
    return survives(1);
  }

  /** Whether the same cables are up in another state of the link, and it needs as many of them. */
  public boolean standsLike(FabricLink other) {
    return cables.equals(other.cables)
        && IntStream.rangeClosed(0, cables.size())
            .allMatch(failed -> survives(failed) == other.survives(failed));
  }

  /** Whether the link stays up when so many of the cables that are up fail. */
  Truth survives(int failed) {
    return cables.isEmpty() ? Truth.UNKNOWN : isUpWithout(failed);
  }

  private Truth isUpWithout(int failed) {
    if (cables.isEmpty()) {
      return formsSomehow();
    }
    long certain = cables.stream().filter(cable -> cable.up() == Truth.YES).count() - failed;
    long possible = cables.stream().filter(cable -> cable.up() != Truth.NO).count() - failed;
    // What a shared end lacks here the other link's cables may give it, as long as they are up.
    long needed = ends().stream().mapToLong(end -> end.shared() ? 1 : leastOf(end)).max().orElse(1);
    long enough = Math.max(leastOf(first), leastOf(second));
    if (possible < needed) {
      return Truth.NO;
    }
    return certain >= enough ? Truth.YES : Truth.UNKNOWN;
  }

  private static long leastOf(LinkEnd end) {
    return end.settings()
        .map(port -> port.get(Keys.MIN_LINKS))
        .flatMap(Setting::value)
        .map(least -> Math.max(1, least))
        .orElse(1);
  }

  /** Of a bundle without named members: whether any member of one end fits one of the other. */
  private Truth formsSomehow() {
    boolean read =
        Stream.of(first, second)
            .allMatch(end -> end.device().isPresent() && !end.memberships().isEmpty());
    if (!read) {
      return Truth.UNKNOWN;
    }
    return Truth.of(
        first.memberships().stream()
            .anyMatch(
                one ->
                    second.memberships().stream()
                        .anyMatch(other -> Bundling.forms(one.mode(), other.mode()))));
  }

  /** The VLANs that cross, whether the bundle forms taken into account. */
  public Carried crosses() {
    return switch (isUp()) {
      case YES -> crossing.vlans();
      case NO -> Carried.exactly(VlanSet.NONE);
      case UNKNOWN -> new Carried(VlanSet.NONE, crossing.vlans().possible());
    };
  }

  /** Whether spanning tree runs over it, whatever VLANs cross. */
  Truth isOpen() {
    return first.isOpen().and(second.isOpen()).and(isUp());
  }

  /** Both ends. */
  public List<LinkEnd> ends() {
    return List.of(first, second);
  }

  /** Whether both ends have settings to compare. */
  public boolean isReadable() {
    return ends().stream().allMatch(end -> end.settings().isPresent());
  }

  /** The port settings of both ends, where both have them. */
  public Optional<List<PortSettings>> settings() {
    return isReadable()
        ? Optional.of(ends().stream().flatMap(end -> end.settings().stream()).toList())
        : Optional.empty();
  }
}
