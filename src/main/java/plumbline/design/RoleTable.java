package plumbline.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.text.Nearest;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** The roles of a design by name, inheritance applied. */
final class RoleTable {
  private static final int LONGEST_CHAIN = 50;

  private final Problems problems;
  private final ShapeCheck shapes;
  private final RoleWishes wishes;
  private final Map<String, Node.Entry> declared = new LinkedHashMap<>();
  private final Map<String, Role> resolved = new HashMap<>();

  RoleTable(List<Node.Entry> section, VlanTable vlans, ShapeCheck shapes, Problems problems) {
    this.problems = problems;
    this.shapes = shapes;
    this.wishes = new RoleWishes(vlans, problems);
    for (Node.Entry entry : section) {
      if (entry.key().equals(Role.SPARE)) {
        problems.add(
            entry.at(),
            "\"spare\" is a reserved role, for ports that are shut; expected another name");
      } else {
        declared.put(entry.key(), entry);
      }
    }
    declared.keySet().forEach(name -> resolve(name, new ArrayList<>()));
  }

  /** Resolves a role after the one it is like; the path holds the names on the way to it. */
  private Role resolve(String name, List<String> path) {
    Role known = resolved.get(name);
    if (known != null) {
      return known;
    }
    path.add(name);
    Node.Entry entry = declared.get(name);
    Map<RoleKey<?>, Wanted<?>> all =
        Fields.of(entry.value(), shapes)
            .map(fields -> wishes.over(inherited(fields, path), wishes.read(fields)))
            .orElse(Map.of());
    Role role = new Role(name, entry.at(), all);
    resolved.put(name, role);
    return role;
  }

  private Map<RoleKey<?>, Wanted<?>> inherited(Fields fields, List<String> path) {
    Optional<Node.Scalar> like = fields.scalar("like");
    if (like.isEmpty()) {
      return Map.of();
    }
    String base = like.get().text();
    if (base.equals(Role.SPARE)) {
      problems.add(like.get().at(), "no role can be like \"spare\"; it is reserved for shut ports");
      return Map.of();
    }
    if (path.contains(base)) {
      List<String> loop = new ArrayList<>(path.subList(path.indexOf(base), path.size()));
      loop.add(base);
      problems.add(
          like.get().at(),
          "a role cannot be like itself: "
              + String.join(" is like ", loop.stream().limit(5).map(Wording::quote).toList()));
      return Map.of();
    }
    if (!isKnown(like.get())) {
      return Map.of();
    }
    if (path.size() >= LONGEST_CHAIN) {
      problems.add(
          like.get().at(),
          "more than " + LONGEST_CHAIN + " roles are like one another; expected fewer");
      return Map.of();
    }
    return resolve(base, path).wishes();
  }

  Map<String, Role> all() {
    Map<String, Role> all = new LinkedHashMap<>();
    declared.keySet().forEach(name -> all.put(name, resolved.get(name)));
    return all;
  }

  /** The role that a word names; empty when there is none, which is then reported. */
  Optional<Role> find(Node.Scalar word) {
    if (word.text().equals(Role.SPARE)) {
      return Optional.of(new Role(Role.SPARE, word.at(), Map.of()));
    }
    if (declared.containsKey(word.text())) {
      return Optional.of(resolved.get(word.text()));
    }
    Set<String> all = new LinkedHashSet<>(declared.keySet());
    all.add(Role.SPARE);
    // Not every place takes a spare port: the word is offered only where it looks meant.
    boolean meant = Nearest.to(word.text(), all).equals(Optional.of(Role.SPARE));
    unknown(word, meant ? all : declared.keySet());
    return Optional.empty();
  }

  /**
   * In the place of a role that could not be read, so that its port has its place all the same.
   *
   * @param at where it was to stand
   */
  static Role unread(Position at) {
    return new Role("", at, Map.of());
  }

  /** Says whether a role stands for one that could not be read. */
  static boolean isUnread(Role role) {
    return role.name().isEmpty();
  }

  /**
   * The role under the key {@code role}, with the role keys of the same map put over it.
   *
   * @param at where the overrides stand
   */
  Optional<Role> withOverrides(Fields fields, Position at) {
    Map<RoleKey<?>, Wanted<?>> own = wishes.read(fields);
    Optional<Role> role = fields.scalar("role").flatMap(this::find);
    if (own.isEmpty()) {
      return role;
    }
    return role.map(base -> new Role(base.name(), at, wishes.over(base.wishes(), own)));
  }

  private boolean isKnown(Node.Scalar word) {
    if (declared.containsKey(word.text())) {
      return true;
    }
    unknown(word, declared.keySet());
    return false;
  }

  private void unknown(Node.Scalar word, Set<String> valid) {
    problems.addUnknown(word.at(), "role", word.text(), valid, "the design has no roles");
  }
}
