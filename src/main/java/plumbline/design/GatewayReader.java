package plumbline.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignGateway.Served;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.text.Nearest;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** Reads the gateways of a design, after all other places of ports. */
final class GatewayReader {
  private final VlanTable vlans;
  private final SwitchTable switches;
  private final PortTable ports;
  private final ShapeCheck shapes;
  private final Problems problems;
  private final Set<String> served = new HashSet<>();
  private final Map<String, Position> active = new HashMap<>();

  GatewayReader(
      VlanTable vlans,
      SwitchTable switches,
      PortTable ports,
      ShapeCheck shapes,
      Problems problems) {
    this.vlans = vlans;
    this.switches = switches;
    this.ports = ports;
    this.shapes = shapes;
    this.problems = problems;
  }

  /** Reads all gateways. */
  Map<String, DesignGateway> read(List<Node.Entry> section) {
    Map<String, DesignGateway> gateways = new LinkedHashMap<>();
    for (Node.Entry entry : section) {
      if (shapes.fits(entry.value())) {
        gateways.put(entry.key(), gateway(entry));
      }
    }
    return gateways;
  }

  private DesignGateway gateway(Node.Entry entry) {
    boolean isOutside =
        entry.value() instanceof Node.Entries map
            && (map.get("at").isPresent() || map.get("vlans").isPresent());
    if (!isOutside) {
      if (!switches.has(entry.key())) {
        unknown(entry);
      }
      return new DesignGateway(entry.key(), List.of(), served(entry.value()), entry.at());
    }
    if (switches.has(entry.key())) {
      problems.add(
          entry.at(),
          Wording.quote(entry.key())
              + " is a switch of the design; expected the VLANs that it routes, without \"at\"");
    }
    Fields fields = new Fields((Node.Entries) entry.value(), shapes);
    List<DesignPort> outside = new ArrayList<>();
    for (Node.Scalar at : fields.scalars("at")) {
      ports.target(at).ifPresent(target -> outside.add(behind(entry.key(), target)));
    }
    List<Served> routed = fields.node("vlans").map(this::served).orElse(List.of());
    return new DesignGateway(entry.key(), outside, routed, entry.at());
  }

  private void unknown(Node.Entry entry) {
    if (Nearest.to(entry.key(), switches.names()).isPresent()) {
      problems.addUnknown(entry.at(), "switch", entry.key(), switches.names(), "");
    } else {
      problems.add(
          entry.at(),
          Wording.quote(entry.key())
              + " is no switch of the design; a gateway outside it needs the keys \"at\" and \"vlans\"");
    }
  }

  /**
   * The port that an outside router is behind. A line of the port sheet or a link to outside may
   * say what that port must look like; then the router only refers to it.
   */
  private DesignPort behind(String gateway, PortTable.Target target) {
    Optional<DesignPort> covered = ports.covered(target.switchName(), target.port());
    if (covered.isPresent() && mayBeShared(covered.get())) {
      return covered.get();
    }
    DesignPort port =
        new DesignPort(
            target.switchName(),
            target.port(),
            new Role("gateway", target.at(), Map.of()),
            "gateway " + gateway,
            DesignPort.Place.GATEWAY,
            target.at());
    ports.claim(List.of(port));
    return port;
  }

  private static boolean mayBeShared(DesignPort port) {
    return port.place() == DesignPort.Place.SHEET
        || (port.place() == DesignPort.Place.LINK
            && port.subject().equals("link to " + DesignShape.OUTSIDE));
  }

  private List<Served> served(Node node) {
    List<Served> all = new ArrayList<>();
    if (node instanceof Node.Entries map) {
      for (Node.Entry entry : map.entries()) {
        Optional<Fields> fields = Fields.of(entry.value(), shapes);
        vlans
            .find(entry.key(), entry.at())
            .ifPresent(
                vlan ->
                    all.add(
                        new Served(
                            vlan,
                            fields.flatMap(one -> one.text("address")).map(Wanted::value),
                            fields.flatMap(one -> one.truth("active")).map(Wanted::value),
                            entry.at())));
      }
    } else if (node instanceof Node.Items items) {
      List<Node.Scalar> words =
          items.items().stream()
              .filter(shapes::fits)
              .flatMap(item -> Fields.asScalar(item).stream())
              .toList();
      for (Wanted<DesignVlan> vlan : vlans.findAll(words)) {
        all.add(new Served(vlan.value(), Optional.empty(), Optional.empty(), vlan.at()));
      }
    }
    all.forEach(this::check);
    return all;
  }

  private void check(Served one) {
    String name = one.vlan().name();
    served.add(name);
    if (one.vlan().gateway() == GatewayNeed.FORBIDDEN) {
      problems.add(
          one.at(),
          "VLAN "
              + Wording.quote(name)
              + " is never routed (gateway: forbidden at "
              + one.vlan().at()
              + ")");
    }
    if (one.active().orElse(false)) {
      Position first = active.putIfAbsent(name, one.at());
      if (first != null) {
        problems.add(
            one.at(),
            "VLAN " + Wording.quote(name) + " has two active gateways; first at " + first);
      }
    }
  }

  /**
   * Reports the VLANs that must be routed and are not, at the value that says so.
   *
   * @param section the VLANs as they stand in the files
   */
  void checkRequired(List<Node.Entry> section) {
    for (Node.Entry entry : section) {
      DesignVlan vlan = vlans.all().get(entry.key());
      if (vlan != null && vlan.gateway() == GatewayNeed.REQUIRED && !served.contains(entry.key())) {
        Position at =
            Fields.of(entry.value(), shapes)
                .flatMap(fields -> fields.node("gateway"))
                .map(Node::at)
                .orElse(entry.at());
        problems.add(
            at,
            "VLAN "
                + Wording.quote(entry.key())
                + " needs a gateway, and none lists it; expected it under \"gateways\"");
      }
    }
  }
}
