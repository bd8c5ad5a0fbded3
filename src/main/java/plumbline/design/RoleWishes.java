package plumbline.design;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import plumbline.setting.PortMode;
import plumbline.text.Wording;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Node;

/** Reads the keys of a role, and puts keys over those of another role. */
final class RoleWishes {
  private static final List<RoleKey<?>> ACCESS_ONLY = List.of(RoleKeys.ACCESS, RoleKeys.VOICE);
  private static final List<RoleKey<?>> TRUNK_ONLY =
      List.of(RoleKeys.NATIVE, RoleKeys.TAGGED, RoleKeys.MAY_CARRY, RoleKeys.NATIVE_TAGGING);

  private final VlanTable vlans;
  private final Problems problems;

  RoleWishes(VlanTable vlans, Problems problems) {
    this.vlans = vlans;
    this.problems = problems;
  }

  /** The wishes that stand in a map. */
  Map<RoleKey<?>, Wanted<?>> read(Fields fields) {
    Map<RoleKey<?>, Wanted<?>> wishes = new HashMap<>();
    for (RoleKey<?> key : RoleKeys.ALL) {
      Optional<Node> node = fields.node(key.name());
      if (node.isPresent()) {
        value(key, node.get(), fields)
            .ifPresent(value -> wishes.put(key, new Wanted<>(value, node.get().at())));
      }
    }
    return wishes;
  }

  private Optional<?> value(RoleKey<?> key, Node node, Fields fields) {
    if (key.equals(RoleKeys.TAGGED)) {
      return vlans.setOf(fields.scalars(key.name()));
    }
    if (key.equals(RoleKeys.MAY_CARRY)) {
      return Optional.of(vlans.ranges(fields.scalars(key.name()), true));
    }
    if (key.equals(RoleKeys.QOS)) {
      return Optional.of(qos(node, fields));
    }
    Node.Scalar scalar = (Node.Scalar) node;
    if (key.type() == DesignVlan.class) {
      return vlans.find(scalar);
    }
    if (key.type() == Boolean.class) {
      return Optional.of(scalar.text().equalsIgnoreCase("true"));
    }
    if (key.type() == Integer.class) {
      return Optional.of(Integer.valueOf(scalar.text()));
    }
    String word = scalar.text();
    if (key.equals(RoleKeys.MODE)) {
      return Optional.of(PortMode.valueOf(word.toUpperCase(Locale.ROOT)));
    }
    if (key.equals(RoleKeys.BUNDLE)) {
      return Optional.of(RoleKeys.BundleWish.valueOf(word.toUpperCase(Locale.ROOT)));
    }
    return Optional.of(word);
  }

  private static Qos qos(Node node, Fields fields) {
    if (node instanceof Node.Scalar word) {
      String trust = word.text().replaceFirst("^trust-", "");
      return new Qos(Optional.of(trust), Optional.empty(), Optional.empty());
    }
    Fields policies = fields.fields("qos").orElseThrow();
    return new Qos(
        Optional.empty(),
        policies.text("policy-in").map(Wanted::value),
        policies.text("policy-out").map(Wanted::value));
  }

  /**
   * The wishes of a base with others put over them. What a new mode leaves without effect is taken
   * from the base and reported in the others.
   */
  Map<RoleKey<?>, Wanted<?>> over(Map<RoleKey<?>, Wanted<?>> base, Map<RoleKey<?>, Wanted<?>> own) {
    Map<RoleKey<?>, Wanted<?>> joined = new HashMap<>(base);
    joined.putAll(own);
    Optional<PortMode> mode = value(joined, RoleKeys.MODE);
    if (mode.isPresent()) {
      for (RoleKey<?> key : RoleKeys.ALL) {
        if (joined.containsKey(key) && !hasEffect(key, mode.get())) {
          if (own.containsKey(key)) {
            problems.add(
                own.get(key).at(),
                Wording.quote(key.name())
                    + " has no effect with mode "
                    + Wording.quote(mode.get().toString())
                    + "; remove it or change the mode");
          }
          joined.remove(key);
        }
      }
    }
    nativeAndTagged(own, joined);
    return joined;
  }

  private static boolean hasEffect(RoleKey<?> key, PortMode mode) {
    return switch (mode) {
      case ACCESS -> !TRUNK_ONLY.contains(key);
      case TRUNK -> !ACCESS_ONLY.contains(key);
      case ROUTED -> !TRUNK_ONLY.contains(key) && !ACCESS_ONLY.contains(key);
      default -> true;
    };
  }

  /** A VLAN that is native and tagged could never be found as designed. */
  private void nativeAndTagged(Map<RoleKey<?>, Wanted<?>> own, Map<RoleKey<?>, Wanted<?>> joined) {
    Optional<DesignVlan> untagged = value(joined, RoleKeys.NATIVE);
    Optional<VlanSet> tagged = value(joined, RoleKeys.TAGGED);
    boolean nativeIsTagged = value(joined, RoleKeys.NATIVE_TAGGING).orElse(false);
    if (untagged.isEmpty() || tagged.isEmpty() || nativeIsTagged) {
      return;
    }
    Wanted<?> blamed = own.getOrDefault(RoleKeys.NATIVE, own.get(RoleKeys.TAGGED));
    if (blamed != null && tagged.get().contains(untagged.get().id())) {
      problems.add(
          blamed.at(),
          "VLAN "
              + Wording.quote(untagged.get().name())
              + " is both native and tagged; remove it from one of them");
    }
  }

  private static <T> Optional<T> value(Map<RoleKey<?>, Wanted<?>> wishes, RoleKey<T> key) {
    return Optional.ofNullable(wishes.get(key)).map(wanted -> key.type().cast(wanted.value()));
  }
}
