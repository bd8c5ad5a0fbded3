package plumbline.fabric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import plumbline.fabric.Segment.End;

/** A network as textbooks draw it: bridges by name, links as {@code 9.2-7.2}. */
final class Drawing {
  private final Map<String, Integer> index = new HashMap<>();
  private final List<String> names = new ArrayList<>();
  private final List<BridgeId> bridges = new ArrayList<>();
  private final Map<String, Segment> segments = new TreeMap<>();
  private final Map<String, List<String>> ends = new TreeMap<>();

  Drawing bridge(String name, BridgeId id) {
    index.put(name, names.size());
    names.add(name);
    bridges.add(id);
    return this;
  }

  /** A segment and its ends: {@code bridge.port} or {@code bridge.port/cost}. */
  Drawing segment(String name, String... words) {
    List<End> ports = new ArrayList<>();
    for (String word : words) {
      List<String> costed = List.of(word.split("/", -1));
      List<String> port = List.of(costed.get(0).split("\\.", -1));
      ports.add(
          new End(
              index.get(port.get(0)),
              new PortId(PortId.DEFAULT_PRIORITY, Integer.parseInt(port.get(1))),
              costed.size() > 1 ? Long.parseLong(costed.get(1)) : 1));
    }
    segments.put(name, new Segment(ports));
    ends.put(name, List.of(words));
    return this;
  }

  /** The same without a segment. */
  Drawing without(String segment) {
    Drawing less = copy();
    less.segments.remove(segment);
    less.ends.remove(segment);
    return less;
  }

  /** The same with a bridge that hears nothing any more. */
  Drawing withoutBridge(String bridge) {
    Drawing less = copy();
    segments.forEach(
        (name, segment) -> {
          if (segment.ports().stream().anyMatch(end -> end.bridge() == index.get(bridge))) {
            less.segments.remove(name);
            less.ends.remove(name);
          }
        });
    return less;
  }

  private Drawing copy() {
    Drawing copy = new Drawing();
    copy.index.putAll(index);
    copy.names.addAll(names);
    copy.bridges.addAll(bridges);
    copy.segments.putAll(segments);
    copy.ends.putAll(ends);
    return copy;
  }

  Settled settle() {
    return new Settled(this, ActiveTopology.of(bridges, List.copyOf(segments.values())));
  }

  /** What it settles on, in the drawing's names. */
  record Settled(Drawing of, ActiveTopology topology) {
    String root(String bridge) {
      OptionalInt root = topology.rootOf(of.index.get(bridge));
      return root.isPresent() ? of.names.get(root.getAsInt()) : "open";
    }

    long cost(String bridge) {
      return topology.costOf(of.index.get(bridge)).orElse(-1);
    }

    /** Ends with a role, as {@code bridge.port}, sorted. */
    List<String> ends(PortRole role) {
      List<String> found = new ArrayList<>();
      int segment = 0;
      for (Map.Entry<String, List<String>> one : of.ends.entrySet()) {
        for (int end = 0; end < one.getValue().size(); end++) {
          if (topology.role(segment, end) == role) {
            found.add(one.getValue().get(end).replaceFirst("/.*", ""));
          }
        }
        segment++;
      }
      return found.stream().sorted().toList();
    }

    List<String> blocked() {
      List<String> all = new ArrayList<>(ends(PortRole.ALTERNATE));
      all.addAll(ends(PortRole.BACKUP));
      return all.stream().sorted().toList();
    }
  }
}
