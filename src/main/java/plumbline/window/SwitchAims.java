package plumbline.window;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignGateway.Served;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** What a design says of one switch as a whole. */
final class SwitchAims {
  private final Design design;
  private final Optional<DesignSwitch> designed;
  private final List<Served> served;
  private final VlanSet used;

  SwitchAims(Design design, String switchName) {
    this.design = design;
    this.designed = Optional.ofNullable(design.switches().get(switchName));
    this.served =
        Optional.ofNullable(design.gateways().get(switchName))
            .filter(gateway -> gateway.outside().isEmpty())
            .map(gateway -> gateway.vlans())
            .orElse(List.of());
    VlanSet vlans = VlanSet.of(served.stream().map(one -> one.vlan().id()).toList());
    for (DesignPort port : design.portsOf(switchName)) {
      vlans = vlans.plus(vlansOf(port));
    }
    this.used = vlans.minus(VlanSet.RESERVED).minus(VlanSet.of(VlanId.MIN));
  }

  private static VlanSet vlansOf(DesignPort port) {
    return Stream.of(RoleKeys.ACCESS, RoleKeys.VOICE, RoleKeys.NATIVE)
        .flatMap(key -> port.role().value(key).stream())
        .map(vlan -> VlanSet.of(vlan.id().number()))
        .reduce(port.role().value(RoleKeys.TAGGED).orElse(VlanSet.NONE), VlanSet::plus);
  }

  /** The VLANs that the switch must have. */
  VlanSet used() {
    return used;
  }

  /** Whether a VLAN, of the name that it has on one side, is called as the design says. */
  boolean isNamed(VlanId vlan, Optional<String> name) {
    return design
        .vlan(vlan)
        .flatMap(DesignVlan::deviceName)
        .filter(one -> !name.equals(Optional.of(one)))
        .isEmpty();
  }

  /** What the design says of a point, if it says something. */
  Optional<Aim> of(Point point) {
    if (designed.isEmpty()) {
      return Optional.empty();
    }
    return switch (point.setting()) {
      case Point.VLAN -> vlan(point);
      case Point.VLAN_STATE ->
          vlanOf(point).filter(this::isUsed).map(id -> is(point, "active", Optional.empty()));
      case Point.VLAN_NAME ->
          vlanOf(point)
              .flatMap(design::vlan)
              .flatMap(
                  vlan ->
                      vlan.deviceName()
                          .map(
                              name ->
                                  test(point, name, name, name::equals, Optional.of(vlan.at()))));
      case Point.GATEWAY -> gateway(point);
      case Point.ADDRESSES -> address(point);
      case Point.ROUTING ->
          served.isEmpty()
              ? Optional.empty()
              : Optional.of(test(point, "yes", true, Boolean.TRUE::equals, Optional.empty()));
      case Point.TREE_MODE -> tree(point, DesignSwitch.Tree::mode);
      case Point.PATH_COST -> tree(point, DesignSwitch.Tree::pathCost);
      case Point.PRIORITY -> root(point);
      default -> region(point);
    };
  }

  private boolean isUsed(VlanId vlan) {
    return used.contains(vlan);
  }

  private static Optional<VlanId> vlanOf(Point point) {
    return point.vlans().ids().mapToObj(VlanId::new).findFirst();
  }

  private Optional<Aim> vlan(Point point) {
    VlanId vlan = vlanOf(point).orElseThrow();
    if (isUsed(vlan)) {
      return Optional.of(is(point, "present", design.vlan(vlan).map(DesignVlan::at)));
    }
    boolean strange =
        design.vlan(vlan).isEmpty()
            && !design.otherVlans().contains(vlan)
            && !VlanSet.RESERVED.contains(vlan)
            && vlan.number() != VlanId.MIN;
    return strange
        ? Optional.of(
            Aim.of(
                "not in the design",
                "undeclared",
                isAbsent(point.before()),
                isAbsent(point.after())))
        : Optional.empty();
  }

  private static Truth isAbsent(Setting<?> setting) {
    return setting.isDecided() ? Truth.of(setting.value().isEmpty()) : Truth.UNKNOWN;
  }

  private Optional<Aim> gateway(Point point) {
    VlanId vlan = vlanOf(point).orElseThrow();
    Optional<Served> wanted = served(vlan);
    if (wanted.isPresent()) {
      return Optional.of(is(point, "present", Optional.of(wanted.get().at())));
    }
    boolean own =
        designed
            .flatMap(DesignSwitch::managementVlan)
            .filter(one -> one.value().id().equals(vlan))
            .isPresent();
    return design
        .vlan(vlan)
        .filter(one -> one.gateway() == GatewayNeed.FORBIDDEN && !own)
        .map(
            one ->
                new Aim(
                    "forbidden",
                    "forbidden",
                    isAbsent(point.before()),
                    isAbsent(point.after()),
                    Optional.of(one.at())));
  }

  private Optional<Served> served(VlanId vlan) {
    return served.stream().filter(one -> one.vlan().id().equals(vlan)).findFirst();
  }

  /** Configs write an address with its mask behind it. */
  private Optional<Aim> address(Point point) {
    return served(vlanOf(point).orElseThrow())
        .flatMap(
            one ->
                one.address()
                    .map(
                        address ->
                            test(
                                point,
                                address,
                                address,
                                list -> has(list, address),
                                Optional.of(one.at()))));
  }

  private static boolean has(Object list, String address) {
    return list instanceof List<?> all
        && all.stream()
            .map(Object::toString)
            .anyMatch(
                one ->
                    one.equals(address)
                        || one.startsWith(address + " ")
                        || one.startsWith(address + "/"));
  }

  private Optional<Aim> tree(Point point, TreeWish wish) {
    return designed
        .flatMap(one -> wish.of(one.tree()))
        .map(word -> is(point, word.value(), Optional.of(word.at())));
  }

  /** Picks a word of what is asked of a spanning tree. */
  private interface TreeWish {
    Optional<Wanted<String>> of(DesignSwitch.Tree tree);
  }

  /**
   * A root, and the switch that takes over from it, need a priority below the default; whether it
   * is low enough, the audit says. Lower is nearer to it.
   */
  private Optional<Aim> root(Point point) {
    Optional<VlanId> vlan = vlanOf(point);
    Optional<Wanted<DesignVlan>> root = vlan.flatMap(id -> named(DesignSwitch.Tree::rootOf, id));
    Optional<Wanted<DesignVlan>> second =
        vlan.flatMap(id -> named(DesignSwitch.Tree::secondFor, id));
    return root.or(() -> second)
        .map(
            wanted -> {
              String words = root.isPresent() ? "root" : "second";
              Optional<Integer> was = priority(point.before());
              Optional<Integer> is = priority(point.after());
              boolean moved = was.isPresent() && is.isPresent() && !was.equals(is);
              return new Aim(
                  words,
                  words,
                  moved ? Truth.of(was.get() < is.get()) : isLow(was),
                  moved ? Truth.of(is.get() < was.get()) : isLow(is),
                  Optional.of(wanted.at()));
            });
  }

  private Optional<Wanted<DesignVlan>> named(TreeVlans vlans, VlanId id) {
    return designed.stream()
        .flatMap(one -> vlans.of(one.tree()).stream())
        .filter(wanted -> wanted.value().id().equals(id))
        .findFirst();
  }

  /** Picks VLANs of what is asked of a spanning tree. */
  private interface TreeVlans {
    List<Wanted<DesignVlan>> of(DesignSwitch.Tree tree);
  }

  private static Optional<Integer> priority(Setting<?> setting) {
    return setting.value().map(value -> ((Values.Priority) value).value());
  }

  private static Truth isLow(Optional<Integer> priority) {
    return priority
        .map(value -> Truth.of(value < SpanningTree.DEFAULT_PRIORITY))
        .orElse(Truth.UNKNOWN);
  }

  private Optional<Aim> region(Point point) {
    Optional<Wanted<DesignSwitch.Mst>> mst = designed.flatMap(one -> one.tree().mst());
    if (mst.isEmpty() || !point.setting().startsWith("mst-")) {
      return Optional.empty();
    }
    DesignSwitch.Mst region = mst.get().value();
    Optional<Position> at = Optional.of(mst.get().at());
    if (point.setting().equals(Point.REGION_NAME)) {
      return Optional.of(is(point, region.name(), at));
    }
    if (point.setting().equals(Point.REGION_REVISION)) {
      return Optional.of(is(point, Integer.toString(region.revision()), at));
    }
    int instance = Integer.parseInt(point.setting().replaceAll("\\D", ""));
    List<DesignVlan> vlans = region.instances().getOrDefault(instance, List.of());
    return Optional.of(
        is(point, VlanSet.of(vlans.stream().map(DesignVlan::id).toList()).toString(), at));
  }

  /** An aim that is met by the value of those words, letter case aside. */
  private static Aim is(Point point, String words, Optional<Position> at) {
    return test(
        point,
        words,
        words,
        value -> value.toString().toLowerCase(Locale.ROOT).equals(words.toLowerCase(Locale.ROOT)),
        at);
  }

  private static Aim test(
      Point point, String words, Object value, Predicate<Object> met, Optional<Position> at) {
    return new Aim(words, value, met(point.before(), met), met(point.after(), met), at);
  }

  private static Truth met(Setting<?> setting, Predicate<Object> met) {
    return setting.isDecided() ? Truth.of(setting.value().filter(met).isPresent()) : Truth.UNKNOWN;
  }
}
