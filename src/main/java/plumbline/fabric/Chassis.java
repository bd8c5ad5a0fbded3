package plumbline.fabric;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.fabric.Connectivity.Edge;
import plumbline.port.PortName;

/** The things that forward and can fail on their own: switches, and the members of stacks. */
final class Chassis {
  private final List<Box> boxes = new ArrayList<>();
  private final Map<Box, Integer> index = new LinkedHashMap<>();
  private final Map<String, DesignSwitch> switches;
  private final List<Edge> rings = new ArrayList<>();

  /**
   * A box.
   *
   * @param name the switch
   * @param member its number in the stack; empty where it is none
   */
  record Box(String name, OptionalInt member) {}

  private Chassis(Design design) {
    this.switches = design.switches();
    for (DesignSwitch one : design.switches().values()) {
      int first = boxes.size();
      if (one.stack().isEmpty()) {
        add(new Box(one.name(), OptionalInt.empty()));
      }
      one.stack().forEach(member -> add(new Box(one.name(), OptionalInt.of(member))));
      int count = boxes.size() - first;
      // the cables of a stack are a ring and not in the design; of two members one edge tells all
      IntStream.range(0, count == 2 ? 1 : count > 2 ? count : 0)
          .forEach(at -> rings.add(new Edge(first + at, first + (at + 1) % count)));
    }
  }

  static Chassis of(Design design) {
    return new Chassis(design);
  }

  private void add(Box box) {
    index.put(box, boxes.size());
    boxes.add(box);
  }

  int count() {
    return boxes.size();
  }

  Box box(int at) {
    return boxes.get(at);
  }

  /** What joins the members of stacks. */
  List<Edge> rings() {
    return List.copyOf(rings);
  }

  /** The index of a box; -1 where the design has none of that name and number. */
  int indexOf(String name, OptionalInt member) {
    return index.getOrDefault(new Box(name, member), -1);
  }

  /** The first box of a switch, which stands for all of it. */
  int firstOf(String name) {
    return indexOf(
        name, switches.get(name).stack().stream().mapToInt(Integer::intValue).findFirst());
  }

  /** The first boxes of both ends of a link. */
  Edge between(FabricLink link) {
    return new Edge(
        firstOf(link.first().port().switchName()), firstOf(link.second().port().switchName()));
  }

  /**
   * The box that a port is on: of a stack the member whose number the port's name begins with. A
   * bundle, and a name that begins with no member's number, count as on the first member.
   */
  int indexOf(String name, PortName port) {
    List<Integer> stack = switches.get(name).stack();
    if (stack.isEmpty()) {
      return indexOf(name, OptionalInt.empty());
    }
    int number = port.numbers().get(0);
    boolean says = port.kind().isPhysical() && stack.contains(number);
    return indexOf(name, OptionalInt.of(says ? number : stack.get(0)));
  }
}
