package plumbline.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.LinkReader.Ends;
import plumbline.design.PortTable.Target;
import plumbline.port.PortName;

/**
 * The bundles that end on both switches of a multi-chassis pair: each is one end of two links, of
 * one role, whose other ends are on the two switches. Any other port that two links end on is a
 * port used twice.
 */
final class SharedEnds {
  private final Set<Set<String>> pairs;
  private final Map<Place, List<Use>> uses = new LinkedHashMap<>();
  private final Map<Place, DesignPort> ports = new HashMap<>();

  private record Place(String switchName, PortName port) {
    static Place of(Target target) {
      return new Place(target.switchName(), target.port());
    }
  }

  /** A port as one end of a link. */
  private record Use(Ends link, Target here, Optional<Target> there) {}

  /**
   * Looks at all links.
   *
   * @param pairs the names of the two switches of each multi-chassis pair
   */
  SharedEnds(List<Ends> links, Set<Set<String>> pairs) {
    this.pairs = pairs;
    for (Ends link : links) {
      put(new Use(link, link.first(), link.second()));
      link.second().ifPresent(end -> put(new Use(link, end, Optional.of(link.first()))));
    }
    uses.forEach(
        (place, of) -> {
          if (isShared(of)) {
            ports.put(place, port(of));
          }
        });
  }

  private void put(Use use) {
    uses.computeIfAbsent(Place.of(use.here()), any -> new ArrayList<>()).add(use);
  }

  private boolean isShared(List<Use> of) {
    return of.size() == 2
        && of.get(0).here().port().kind().isBundle()
        && pairs.contains(farSwitches(of))
        && asksTheSame(of.get(0).link().role(), of.get(1).link().role());
  }

  private static Set<String> farSwitches(List<Use> of) {
    Set<String> names = new HashSet<>();
    of.forEach(use -> use.there().ifPresent(far -> names.add(far.switchName())));
    return names;
  }

  /**
   * Wherever it is said: overrides in place make a role of their own of it. One that could not be
   * read may be any.
   */
  private static boolean asksTheSame(Role one, Role other) {
    return RoleTable.isUnread(one) || RoleTable.isUnread(other) || isAlike(one, other);
  }

  private static boolean isAlike(Role one, Role other) {
    return one.name().equals(other.name())
        && one.wishes().keySet().equals(other.wishes().keySet())
        && one.wishes().entrySet().stream()
            .allMatch(
                wish -> wish.getValue().value().equals(other.wishes().get(wish.getKey()).value()));
  }

  private static DesignPort port(List<Use> of) {
    Use first = of.get(0);
    String subject =
        LinkReader.linkTo(first.there())
            + " and "
            + LinkReader.name(of.get(1).there().orElseThrow());
    return new DesignPort(
        first.here().switchName(),
        first.here().port(),
        first.link().role(),
        subject,
        DesignPort.Place.LINK,
        first.here().at());
  }

  /** The port at an end that two links share. */
  Optional<DesignPort> portOf(Target end) {
    return Optional.ofNullable(ports.get(Place.of(end)));
  }

  /** Whether an end is where its port stands first among the links. */
  boolean isFirst(Target end) {
    return uses.get(Place.of(end)).get(0).here().at().equals(end.at());
  }

  /**
   * What to say of a port that is used twice, if it may be a bundle that ends on two switches;
   * blank for another port.
   */
  String remedy(Target end) {
    List<Use> of = uses.get(Place.of(end));
    if (!end.port().kind().isBundle() || farSwitches(of).size() < 2) {
      return "";
    }
    if (of.size() == 2 && pairs.contains(farSwitches(of))) {
      return "; both links of a bundle that ends on a multi-chassis pair need the same role";
    }
    return "; one bundle may be an end of two links if their other ends are on the two switches"
        + " of one pair under \"multi-chassis\"";
  }
}
