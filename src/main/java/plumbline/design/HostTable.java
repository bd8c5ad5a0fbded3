package plumbline.design;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** The hosts of a design by name. */
final class HostTable {
  private final RoleTable roles;
  private final PortTable ports;
  private final ShapeCheck shapes;
  private final Problems problems;
  private final Set<String> names = new LinkedHashSet<>();
  private final Set<String> incomplete = new HashSet<>();
  private final Map<String, Host> hosts = new LinkedHashMap<>();

  HostTable(RoleTable roles, PortTable ports, ShapeCheck shapes, Problems problems) {
    this.roles = roles;
    this.ports = ports;
    this.shapes = shapes;
    this.problems = problems;
  }

  /** Reads all hosts. */
  void read(List<Node.Entry> section) {
    for (Node.Entry entry : section) {
      names.add(entry.key());
      incomplete.add(entry.key());
      Fields.of(entry.value(), shapes).ifPresent(fields -> readHost(entry, fields));
    }
  }

  private void readHost(Node.Entry entry, Fields fields) {
    Map<String, Host.HostPort> read = new LinkedHashMap<>();
    List<Node.Entry> all = fields.entries("ports");
    for (Node.Entry port : all) {
      Fields.of(port.value(), shapes)
          .flatMap(inner -> readPort(entry.key(), port, inner))
          .ifPresent(one -> read.put(port.key(), one));
    }
    boolean isComplete =
        fields.node("ports").orElse(null) instanceof Node.Entries map
            && map.entries().size() == read.size();
    if (isComplete) {
      incomplete.remove(entry.key());
    }
    Set<String> portNames = new LinkedHashSet<>(all.stream().map(Node.Entry::key).toList());
    hosts.put(
        entry.key(),
        new Host(
            entry.key(),
            SwitchTable.place(fields),
            read,
            pairs(entry.key(), fields, portNames),
            entry.at()));
  }

  private Optional<Host.HostPort> readPort(String host, Node.Entry port, Fields fields) {
    Optional<Role> role = roles.withOverrides(fields, fields.map().at());
    Optional<PortTable.Target> target = fields.scalar("to").flatMap(ports::target);
    if (target.isEmpty()) {
      return Optional.empty();
    }
    DesignPort to =
        new DesignPort(
            target.get().switchName(),
            target.get().port(),
            role.orElseGet(() -> RoleTable.unread(port.at())),
            host + " " + port.key(),
            DesignPort.Place.HOST,
            target.get().at());
    ports.claim(List.of(to));
    if (role.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Host.HostPort(
            port.key(),
            to,
            fields.text("cable").map(Wanted::value),
            fields.text("medium").map(Wanted::value),
            fields
                .text("length-m")
                .map(length -> OptionalDouble.of(Double.parseDouble(length.value())))
                .orElse(OptionalDouble.empty())));
  }

  private List<Host.Pair> pairs(String host, Fields fields, Set<String> portNames) {
    List<Host.Pair> pairs = new ArrayList<>();
    for (Node item : fields.items("pairs")) {
      List<Node> both = fields.itemsOf(item);
      if (both.size() == 2
          && both.get(0) instanceof Node.Scalar first
          && both.get(1) instanceof Node.Scalar second) {
        // Both are asked, so that both are reported.
        boolean known =
            Stream.of(first, second).filter(word -> isPort(host, word, portNames)).count() == 2;
        if (known && first.text().equals(second.text())) {
          problems.add(
              second.at(),
              "port "
                  + Wording.quote(second.text())
                  + " is paired with itself; expected another port of "
                  + Wording.quote(host));
        } else if (known) {
          pairs.add(new Host.Pair(first.text(), second.text(), item.at()));
        }
      }
    }
    return pairs;
  }

  private boolean isPort(String host, Node.Scalar word, Set<String> portNames) {
    if (portNames.contains(word.text())) {
      return true;
    }
    problems.add(
        word.at(),
        "host "
            + Wording.quote(host)
            + " has no port "
            + Wording.quote(word.text())
            + "; "
            + Wording.remedy(word.text(), portNames, "it has no ports"));
    return false;
  }

  Map<String, Host> all() {
    return hosts;
  }

  /** The host of a name, if all its ports could be read. */
  Optional<Host> complete(String name) {
    return incomplete.contains(name) ? Optional.empty() : Optional.ofNullable(hosts.get(name));
  }

  /** Says whether the design has a host of that name; if not, that is reported. */
  boolean isKnown(String name, Position at) {
    if (names.contains(name)) {
      return true;
    }
    problems.addUnknown(at, "host", name, names, "the design has no hosts");
    return false;
  }
}
