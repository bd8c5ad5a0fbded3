package plumbline.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import java.util.function.Function;
import plumbline.effective.SpanningTree;
import plumbline.effective.SpanningTree.Priority;
import plumbline.effective.SwitchSettings;
import plumbline.effective.VlanDatabase;
import plumbline.result.Change;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** What can be compared of a switch as a whole: its VLANs, its spanning tree, whether it routes. */
final class SwitchPoints {
  private final SwitchSettings before;
  private final SwitchSettings after;
  private final List<Point> points = new ArrayList<>();

  private SwitchPoints(SwitchSettings before, SwitchSettings after) {
    this.before = before;
    this.after = after;
  }

  /**
   * All points.
   *
   * @param designed VLANs that are looked at even where neither text has them
   * @param named whether a VLAN that only one text has is called as it should be: its name is then
   *     nothing besides
   */
  static List<Point> of(
      SwitchSettings before,
      SwitchSettings after,
      VlanSet designed,
      BiPredicate<VlanId, Optional<String>> named) {
    SwitchPoints all = new SwitchPoints(before, after);
    all.add(Point.ROUTING, before.routing(), after.routing());
    all.vlans(designed, named);
    all.tree();
    return List.copyOf(all.points);
  }

  private void add(String setting, Setting<?> was, Setting<?> is) {
    points.add(Point.ofSwitch(setting, VlanSet.NONE, was, is));
  }

  private void vlans(VlanSet designed, BiPredicate<VlanId, Optional<String>> named) {
    VlanSet all = designed.plus(known(before.vlans())).plus(known(after.vlans()));
    for (int number : all.ids().toArray()) {
      VlanId vlan = new VlanId(number);
      VlanSet only = VlanSet.of(number);
      Optional<VlanDatabase.Entry> was = entry(before, vlan);
      Optional<VlanDatabase.Entry> is = entry(after, vlan);
      points.add(Point.ofSwitch(Point.VLAN, only, presence(before, vlan), presence(after, vlan)));
      if (was.isPresent() && is.isPresent()) {
        points.add(Point.ofSwitch(Point.VLAN_STATE, only, state(was.get()), state(is.get())));
      }
      Optional<VlanDatabase.Entry> either = was.isPresent() ? was : is;
      boolean both = was.isPresent() && is.isPresent();
      boolean wrong = either.filter(one -> !named.test(vlan, one.name().value())).isPresent();
      if (both || wrong) {
        points.add(Point.ofSwitch(Point.VLAN_NAME, only, name(was), name(is)));
      }
    }
  }

  private static VlanSet known(VlanDatabase vlans) {
    return vlans.existing().plus(VlanSet.of(vlans.removed().keySet())).plus(vlans.doubtful());
  }

  private static Optional<VlanDatabase.Entry> entry(SwitchSettings settings, VlanId vlan) {
    return Optional.ofNullable(settings.vlans().entries().get(vlan));
  }

  private static Setting<String> presence(SwitchSettings settings, VlanId vlan) {
    VlanDatabase vlans = settings.vlans();
    return switch (vlans.exists(vlan)) {
      case YES -> Setting.known(Change.PRESENT, evidence(vlans.entries().get(vlan)));
      case NO ->
          Setting.absent(
              Optional.ofNullable(vlans.removed().get(vlan)).stream().toArray(Evidence[]::new));
      case UNKNOWN -> Setting.unknown(vlans.why());
    };
  }

  private static Evidence[] evidence(VlanDatabase.Entry entry) {
    return Evidence.joined(entry.active().evidence(), entry.name().evidence())
        .toArray(Evidence[]::new);
  }

  private static Setting<String> state(VlanDatabase.Entry entry) {
    return entry.active().map(active -> active ? "active" : "suspended");
  }

  private static Setting<String> name(Optional<VlanDatabase.Entry> entry) {
    return entry.map(VlanDatabase.Entry::name).orElseGet(Setting::absent);
  }

  private void tree() {
    SpanningTree was = before.tree();
    SpanningTree is = after.tree();
    add(Point.TREE_MODE, was.mode(), is.mode());
    add(
        Point.PATH_COST,
        was.longCosts().map(SwitchPoints::method),
        is.longCosts().map(SwitchPoints::method));
    add(Point.TREE_OFF, was.off(), is.off());
    add(Point.PRIORITY, priority(was.priority()), priority(is.priority()));
    union(was.vlanPriorities(), is.vlanPriorities())
        .forEach(
            vlan ->
                points.add(
                    Point.ofSwitch(
                        Point.PRIORITY,
                        VlanSet.of(vlan.number()),
                        priority(was.priorityOf(vlan)),
                        priority(is.priorityOf(vlan)))));
    union(was.instancePriorities(), is.instancePriorities())
        .forEach(
            instance ->
                add(
                    Point.PRIORITY + " of instance " + instance,
                    priority(was.priorityOf(instance)),
                    priority(is.priorityOf(instance))));
    add(Point.REGION_NAME, was.region().name(), is.region().name());
    add(Point.REGION_REVISION, was.region().revision(), is.region().revision());
    Function<Integer, Setting<?>> old = instances(was.region());
    Function<Integer, Setting<?>> now = instances(is.region());
    union(was.region().instances(), is.region().instances())
        .forEach(
            instance ->
                add(
                    Point.REGION_INSTANCE + " " + instance,
                    old.apply(instance),
                    now.apply(instance)));
  }

  private static String method(boolean isLong) {
    return isLong ? "long" : "short";
  }

  private static Setting<Values.Priority> priority(Priority priority) {
    return priority.value().map(value -> new Values.Priority(value, priority.asked()));
  }

  private static <K extends Comparable<K>> SortedSet<K> union(
      SortedMap<K, ?> one, SortedMap<K, ?> other) {
    SortedSet<K> all = new TreeSet<>(one.keySet());
    all.addAll(other.keySet());
    return all;
  }

  private static Function<Integer, Setting<?>> instances(SpanningTree.Region region) {
    Evidence[] lines = region.lines().toArray(Evidence[]::new);
    return instance -> {
      VlanSet vlans = region.instances().get(instance);
      if (vlans != null) {
        return Setting.known(vlans, lines);
      }
      return region.doubt().isPresent()
          ? Setting.unknown(region.doubt().get(), lines)
          : Setting.absent(lines);
    };
  }
}
