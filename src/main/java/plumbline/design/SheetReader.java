package plumbline.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.port.PortName;
import plumbline.yaml.Node;

/** Reads the port sheets of switches. */
final class SheetReader {
  private final RoleTable roles;
  private final PortTable ports;
  private final ShapeCheck shapes;

  SheetReader(RoleTable roles, PortTable ports, ShapeCheck shapes) {
    this.roles = roles;
    this.ports = ports;
    this.shapes = shapes;
  }

  /** Reads the sheets of all switches. */
  void read(List<Node.Entry> section) {
    for (Node.Entry entry : section) {
      Optional<Fields> fields = Fields.of(entry.value(), shapes);
      if (fields.isPresent()) {
        for (Node.Entry line : fields.get().entries("ports")) {
          readLine(entry.key(), line);
        }
      }
    }
  }

  private void readLine(String switchName, Node.Entry line) {
    List<PortName> names = ports.many(switchName, line.key(), line.at());
    Role role =
        (line.value() instanceof Node.Scalar word
                ? roles.find(word)
                : Fields.of(line.value(), shapes)
                    .flatMap(fields -> roles.withOverrides(fields, fields.map().at())))
            .orElseGet(() -> RoleTable.unread(line.at()));
    List<DesignPort> claimed = new ArrayList<>();
    for (PortName name : names) {
      claimed.add(
          new DesignPort(switchName, name, role, role.name(), DesignPort.Place.SHEET, line.at()));
    }
    ports.claim(claimed);
  }
}
