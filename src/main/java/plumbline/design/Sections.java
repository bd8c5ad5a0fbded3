package plumbline.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** The sections of all files of a design, merged: maps and lists joined, single values once. */
final class Sections {
  private static final List<String> MAPS =
      List.of("vlans", "roles", "switches", "hosts", "gateways", "services");
  private static final List<String> LISTS =
      List.of("other-vlans", "links", "multi-chassis", "harmless");
  private static final List<String> SINGLE = List.of("site", "revision", "max-age-days");

  private final ShapeCheck shapes;
  private final Problems problems;
  private final Map<String, Map<String, Node.Entry>> maps = new HashMap<>();
  private final Map<String, List<Node>> lists = new HashMap<>();
  private final Map<String, Node.Scalar> single = new HashMap<>();
  private final Map<String, Position> firstAt = new HashMap<>();
  private final List<Node.Scalar> silent = new ArrayList<>();

  Sections(ShapeCheck shapes, Problems problems) {
    this.shapes = shapes;
    this.problems = problems;
  }

  /** Joins one file to those before it. */
  void join(Fields file) {
    for (String name : MAPS) {
      Map<String, Node.Entry> joined = maps.computeIfAbsent(name, key -> new LinkedHashMap<>());
      if (file.node(name).orElse(null) instanceof Node.Entries entries) {
        for (Node.Entry entry : entries.entries()) {
          twice(
              entry.key(),
              entry.at(),
              Optional.ofNullable(joined.putIfAbsent(entry.key(), entry)).map(Node.Entry::at));
        }
      }
    }
    for (String name : LISTS) {
      lists.computeIfAbsent(name, key -> new ArrayList<>()).addAll(file.items(name));
    }
    for (String name : SINGLE) {
      file.map()
          .get(name)
          .ifPresent(
              entry ->
                  twice(
                      name,
                      entry.at(),
                      Optional.ofNullable(firstAt.putIfAbsent(name, entry.at()))));
      file.scalar(name).ifPresent(scalar -> single.putIfAbsent(name, scalar));
    }
    file.fields("rules").ifPresent(rules -> silent.addAll(rules.scalars("silent")));
  }

  private void twice(String key, Position at, Optional<Position> first) {
    first.ifPresent(
        earlier ->
            problems.add(at, "key " + Wording.quote(key) + " is given twice; first at " + earlier));
  }

  /** The entries of a section that is a map; also those whose value does not have its shape. */
  List<Node.Entry> entries(String section) {
    return List.copyOf(maps.getOrDefault(section, Map.of()).values());
  }

  /** The maps in a section that is a list. */
  List<Fields> items(String section) {
    return lists.getOrDefault(section, List.of()).stream()
        .flatMap(node -> Fields.of(node, shapes).stream())
        .toList();
  }

  /** The single values in a section that is a list. */
  List<Node.Scalar> scalars(String section) {
    return lists.getOrDefault(section, List.of()).stream()
        .flatMap(node -> Fields.asScalar(node).stream())
        .toList();
  }

  Optional<Wanted<String>> text(String name) {
    return Optional.ofNullable(single.get(name))
        .map(scalar -> new Wanted<>(scalar.text(), scalar.at()));
  }

  Optional<Wanted<Integer>> whole(String name) {
    return text(name).map(wanted -> new Wanted<>(Integer.valueOf(wanted.value()), wanted.at()));
  }

  /** The rules that are switched off, as named. */
  List<Node.Scalar> silent() {
    return List.copyOf(silent);
  }

  ShapeCheck shapes() {
    return shapes;
  }
}
