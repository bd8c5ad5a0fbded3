package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Failure;
import plumbline.fabric.LinkEnd;
import plumbline.fabric.VlanGraph.Point;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.promise.VlanSide;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Why a VLAN does not lead out of the parts of a network that some places are in. */
final class Barriers {
  private static final int MOST = 4;

  private final FabricCase network;
  private final VlanSide side;
  private final List<FabricLink> links;

  /** Looks around some places in a VLAN. */
  Barriers(FabricCase network, VlanSide side, List<Point> points) {
    this.network = network;
    this.side = side;
    this.links =
        side.barriers(points, new Failure.None()).stream()
            .map(network.sides().designed().links()::get)
            .toList();
  }

  /** What is found at the links that lead out, as a clause; empty where no link does. */
  Optional<String> found() {
    if (links.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Words.list(links.stream().map(Barriers::name).toList())
            + (links.size() == 1 ? " does not carry it" : " do not carry it"));
  }

  /** A link as the object of a sentence. */
  static String name(FabricLink link) {
    return "the link "
        + link.first().port().switchName()
        + " "
        + fullName(link.first())
        + " to "
        + link.second().port().switchName()
        + " "
        + fullName(link.second());
  }

  /** The name of an end in the dialect of its switch. */
  static String fullName(LinkEnd end) {
    return end.device()
        .map(device -> device.fullName(end.port().port()))
        .orElse(end.port().port().toString());
  }

  /** The ends of these links. */
  List<Place> places() {
    return links.stream()
        .flatMap(link -> link.ends().stream())
        .map(end -> Place.ofPort(end.port().switchName(), fullName(end)))
        .toList();
  }

  /** The lines that keep the VLAN from these links, of a few of them. */
  List<Proof> proofs() {
    return links.stream()
        .limit(MOST)
        .flatMap(link -> proofs(network, link, side.vlan()).stream())
        .toList();
  }

  /** Why one link does not carry some VLAN. */
  static List<Proof> proofs(FabricCase network, FabricLink link, VlanId vlan) {
    return link.ends().stream()
        .flatMap(
            end ->
                network.at(end.port().switchName()).flatMap(at -> at.caseOf(end.port())).stream())
        .filter(port -> port.settings().isPresent())
        .filter(port -> port.settings().get().carries(vlan) != Truth.YES)
        .flatMap(port -> proofs(port).stream())
        .toList();
  }

  private static List<Proof> proofs(PortCase port) {
    List<Evidence> lines = new ArrayList<>(port.get(Keys.MODE).evidence());
    lines.addAll(
        port.get(Keys.MODE).is(PortMode.TRUNK)
            ? port.get(Keys.ALLOWED).evidence()
            : port.get(Keys.ACCESS_VLAN).evidence());
    return port.at().proofs(port.settings().orElseThrow().header(), lines);
  }
}
