package plumbline.window;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.port.PortName;
import plumbline.result.Change;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.TreeNumbers;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** What can be compared of the ports of a switch. */
final class PortPoints {
  private final SwitchSettings before;
  private final SwitchSettings after;
  private final Map<PortName, Gateway> gatewaysBefore;
  private final Map<PortName, Gateway> gatewaysAfter;
  private final List<Point> points = new ArrayList<>();

  private PortPoints(SwitchSettings before, SwitchSettings after) {
    this.before = before;
    this.after = after;
    this.gatewaysBefore = gateways(before);
    this.gatewaysAfter = gateways(after);
  }

  /**
   * All points, by port.
   *
   * @param designed ports that are looked at even where neither text opens them
   */
  static List<Point> of(
      SwitchSettings before, SwitchSettings after, Collection<PortName> designed) {
    PortPoints all = new PortPoints(before, after);
    SortedSet<PortName> names = new TreeSet<>(before.ports().keySet());
    names.addAll(after.ports().keySet());
    names.addAll(designed);
    names.forEach(all::port);
    return List.copyOf(all.points);
  }

  private static Map<PortName, Gateway> gateways(SwitchSettings settings) {
    Map<PortName, Gateway> gateways = new TreeMap<>();
    settings.gateways().forEach(gateway -> gateways.put(gateway.port(), gateway));
    return gateways;
  }

  private void port(PortName name) {
    Optional<PortSettings> was = before.port(name);
    Optional<PortSettings> is = after.port(name);
    if (was.isEmpty() || is.isEmpty()) {
      if (!isGateway(name)) {
        add(name, Point.PORT, presence(before, name), presence(after, name));
      }
    }
    for (Key<?> key : Keys.ALL) {
      key(name, key, was, is);
    }
    if (was.isPresent() && is.isPresent()) {
      key(name, Keys.ASKS_FOR_TRUNK, was, is);
      byTree(name, Keys.COST_BY_TREE, was.get(), is.get());
      byTree(name, Keys.PORT_PRIORITY_BY_TREE, was.get(), is.get());
    }
    if (isGateway(name)) {
      gateway(name);
    }
  }

  private boolean isGateway(PortName name) {
    return gatewaysBefore.containsKey(name) || gatewaysAfter.containsKey(name);
  }

  private static Setting<String> presence(SwitchSettings settings, PortName name) {
    Optional<PortSettings> port = settings.port(name);
    if (port.isPresent()) {
      return Setting.known(Change.PRESENT, port.get().header());
    }
    Truth absent = settings.isPortAbsent(name);
    return absent == Truth.YES
        ? Setting.absent(
            Optional.<Evidence>ofNullable(settings.removed().get(name)).stream()
                .toArray(Evidence[]::new))
        : Setting.unknown(settings.whyPortsMayBeMissing().orElse("the port may be there"));
  }

  /** Of a port that one side lacks only what the other side's lines say is compared. */
  private void key(
      PortName name, Key<?> key, Optional<PortSettings> was, Optional<PortSettings> is) {
    if (was.isPresent() && is.isPresent()) {
      points.add(Point.ofKey(name, key, was.get().get(key), is.get().get(key)));
      return;
    }
    Optional<Setting<?>> only = was.or(() -> is).map(port -> port.get(key));
    if (only.filter(PortPoints::isFromText).isPresent()
        && presence(was.isPresent() ? after : before, name).isDecided()) {
      points.add(
          was.isPresent()
              ? Point.ofKey(name, key, only.get(), Setting.absent())
              : Point.ofKey(name, key, Setting.absent(), only.get()));
    }
  }

  private static boolean isFromText(Setting<?> setting) {
    return setting.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
  }

  private void byTree(PortName name, Key<TreeNumbers> key, PortSettings was, PortSettings is) {
    add(name, key.name(), numbers(was.get(key)), numbers(is.get(key)));
  }

  /** The numbers tree by tree; those of all other trees are a key of their own. */
  private static Setting<?> numbers(Setting<TreeNumbers> setting) {
    Optional<TreeNumbers> numbers = setting.value();
    if (numbers.isEmpty()) {
      return setting;
    }
    Map<String, VlanSet> vlans = new TreeMap<>();
    Map<String, List<Integer>> instances = new TreeMap<>();
    for (TreeNumbers.Line line : numbers.get().lines()) {
      line.vlans()
          .ids()
          .forEach(
              id ->
                  vlans.merge(
                      said(numbers.get().of(new VlanId(id))), VlanSet.of(id), VlanSet::plus));
      line.instances()
          .forEach(
              instance ->
                  instances
                      .computeIfAbsent(said(numbers.get().of(instance)), any -> new ArrayList<>())
                      .add(instance));
    }
    String words =
        Stream.concat(
                vlans.entrySet().stream().map(one -> one.getKey() + " in VLANs " + one.getValue()),
                instances.entrySet().stream()
                    .map(
                        one ->
                            one.getKey()
                                + " in instances "
                                + one.getValue().stream()
                                    .distinct()
                                    .sorted()
                                    .map(String::valueOf)
                                    .collect(Collectors.joining(","))))
            .collect(Collectors.joining("; "));
    Evidence[] evidence = numbers.get().evidence().toArray(Evidence[]::new);
    return words.isEmpty() ? Setting.absent(evidence) : Setting.known(words, evidence);
  }

  private static String said(Setting<Long> number) {
    return Values.words(number).orElse("not set");
  }

  private void gateway(PortName name) {
    Optional<Gateway> was = Optional.ofNullable(gatewaysBefore.get(name));
    Optional<Gateway> is = Optional.ofNullable(gatewaysAfter.get(name));
    VlanSet vlans =
        VlanSet.of(Stream.concat(was.stream(), is.stream()).map(Gateway::vlan).toList());
    add(
        name,
        Point.GATEWAY,
        vlans,
        gatewayPresence(was, before, name),
        gatewayPresence(is, after, name));
    of(name, Point.ADDRESSES, vlans, was.map(Gateway::addresses), is.map(Gateway::addresses));
    if (was.isPresent() && is.isPresent()) {
      of(name, "autostate", vlans, was.map(Gateway::autostate), is.map(Gateway::autostate));
      of(name, Point.GATEWAY_WORKS, vlans, was.map(Gateway::works), is.map(Gateway::works));
    }
    of(
        name,
        OtherLines.PACKET_FILTER,
        vlans,
        was.map(Gateway::filtered),
        is.map(Gateway::filtered));
    groups(name, vlans, was, is);
  }

  private static Setting<String> gatewayPresence(
      Optional<Gateway> gateway, SwitchSettings settings, PortName name) {
    return gateway.isPresent()
        ? Setting.known(Change.PRESENT, gateway.get().header())
        : settings.port(name).isPresent() ? Setting.absent() : presence(settings, name);
  }

  private void groups(PortName name, VlanSet vlans, Optional<Gateway> was, Optional<Gateway> is) {
    Map<String, Gateway.Group> old = groups(was);
    Map<String, Gateway.Group> now = groups(is);
    SortedSet<String> all = new TreeSet<>(old.keySet());
    all.addAll(now.keySet());
    for (String group : all) {
      Optional<Gateway.Group> a = Optional.ofNullable(old.get(group));
      Optional<Gateway.Group> b = Optional.ofNullable(now.get(group));
      of(
          name,
          group + " version",
          vlans,
          a.map(Gateway.Group::version),
          b.map(Gateway.Group::version));
      of(
          name,
          group + " address",
          vlans,
          a.map(Gateway.Group::address),
          b.map(Gateway.Group::address));
      of(
          name,
          group + " priority",
          vlans,
          a.map(Gateway.Group::priority),
          b.map(Gateway.Group::priority));
      of(
          name,
          group + " preempt",
          vlans,
          a.map(Gateway.Group::preempt),
          b.map(Gateway.Group::preempt));
      of(name, group + " tracking", vlans, a.map(PortPoints::tracks), b.map(PortPoints::tracks));
    }
  }

  private static Setting<?> tracks(Gateway.Group group) {
    return Setting.known(group.tracks());
  }

  private static Map<String, Gateway.Group> groups(Optional<Gateway> gateway) {
    Map<String, Gateway.Group> groups = new HashMap<>();
    gateway
        .map(Gateway::groups)
        .orElse(List.of())
        .forEach(group -> groups.put(group.kind() + "-" + group.id(), group));
    return groups;
  }

  private void of(
      PortName name,
      String setting,
      VlanSet vlans,
      Optional<? extends Setting<?>> was,
      Optional<? extends Setting<?>> is) {
    add(name, setting, vlans, orAbsent(was), orAbsent(is));
  }

  private static Setting<?> orAbsent(Optional<? extends Setting<?>> setting) {
    return setting.isPresent() ? setting.get() : Setting.absent();
  }

  private void add(PortName name, String setting, Setting<?> was, Setting<?> is) {
    points.add(Point.ofPort(name, setting, was, is));
  }

  private void add(PortName name, String setting, VlanSet vlans, Setting<?> was, Setting<?> is) {
    points.add(new Point(Optional.of(name), setting, Optional.empty(), vlans, was, is));
  }
}
