package plumbline.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import plumbline.design.Design;
import plumbline.design.DesignGateway;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.Wanted;

/** Where two designs differ. */
final class Plan {
  private Plan() {}

  /** The switches that a change of design is about, sorted. */
  static Set<String> switches(Design from, Design to) {
    Set<String> names = new TreeSet<>(from.switches().keySet());
    names.addAll(to.switches().keySet());
    names.removeIf(name -> asked(from, name).equals(asked(to, name)));
    return names;
  }

  /** All that a design asks of one switch and that its config can show. */
  private static List<Object> asked(Design design, String name) {
    Map<Object, Object> ports = new HashMap<>();
    for (DesignPort port : design.portsOf(name)) {
      ports.put(port.port(), List.of(port.subject(), wishes(port)));
    }
    return List.of(
        ports,
        new SwitchAims(design, name).used(),
        design.vlans().values().stream()
            .filter(vlan -> new SwitchAims(design, name).used().contains(vlan.id()))
            .collect(Collectors.toMap(DesignVlan::id, DesignVlan::deviceName)),
        Optional.ofNullable(design.gateways().get(name)).map(Plan::served),
        Optional.ofNullable(design.switches().get(name)).map(DesignSwitch::tree).map(Plan::tree));
  }

  private static Map<String, Object> wishes(DesignPort port) {
    Map<String, Object> wishes = new HashMap<>();
    port.role().wishes().forEach((key, wanted) -> wishes.put(key.name(), value(wanted.value())));
    return wishes;
  }

  private static Object value(Object wanted) {
    return wanted instanceof DesignVlan vlan ? vlan.id() : wanted;
  }

  private static List<Object> served(DesignGateway gateway) {
    return gateway.vlans().stream()
        .map(one -> (Object) List.of(one.vlan().id(), one.address(), one.active()))
        .toList();
  }

  private static List<Object> tree(DesignSwitch.Tree tree) {
    return List.of(
        tree.mode().map(Wanted::value),
        tree.pathCost().map(Wanted::value),
        tree.mst().map(mst -> region(mst.value())),
        ids(tree.rootOf()),
        ids(tree.secondFor()));
  }

  private static Object region(DesignSwitch.Mst mst) {
    Map<Integer, Object> instances = new HashMap<>();
    mst.instances()
        .forEach(
            (instance, vlans) ->
                instances.put(instance, vlans.stream().map(DesignVlan::id).toList()));
    return Objects.hash(mst.name(), mst.revision()) + " " + instances;
  }

  private static Set<Object> ids(List<Wanted<DesignVlan>> vlans) {
    return vlans.stream().map(one -> one.value().id()).collect(Collectors.toSet());
  }
}
