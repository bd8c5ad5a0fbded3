package plumbline.promise;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignGateway;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.design.Link;
import plumbline.effective.Dialect;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SpanningTree;
import plumbline.effective.SwitchSettings;
import plumbline.effective.VlanDatabase;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.SwitchText;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * What a switch does once what some rules find on it is repaired: the settings of its config with
 * the designed ones in their place, as far as frames and spanning tree are concerned. What the
 * design is silent on stays as it is found.
 */
public final class AsDesigned {
  private final Design design;
  private final Predicate<String> repaired;
  private final Set<DesignPort> facingRoots;

  /**
   * Repairs switches of a design.
   *
   * @param repaired the rules, by id, whose findings count as repaired
   */
  public AsDesigned(Design design, Predicate<String> repaired) {
    this.design = design;
    this.repaired = repaired;
    this.facingRoots = facingRoots(design);
  }

  /** The ends of links at whose far end is a switch that is planned as a root. */
  private static Set<DesignPort> facingRoots(Design design) {
    Set<DesignPort> found = new HashSet<>();
    for (Link link : design.links()) {
      for (DesignPort far : link.second().stream().toList()) {
        if (isRoot(design, far)) {
          found.add(link.first());
        }
        if (isRoot(design, link.first())) {
          found.add(far);
        }
      }
    }
    return found;
  }

  private static boolean isRoot(Design design, DesignPort end) {
    return !design.switches().get(end.switchName()).tree().rootOf().isEmpty();
  }

  /** The settings of a switch, repaired. */
  public SwitchSettings of(DesignSwitch designed, SwitchSettings found) {
    VlanDatabase vlans = vlans(designed, found.vlans());
    SortedMap<PortName, PortSettings> ports = new TreeMap<>(found.ports());
    for (DesignPort port : design.portsOf(designed.name())) {
      if (!port.role().isSpare() && mayBeThere(found, port)) {
        ports.put(port.port(), port(found, vlans, port));
      }
    }
    return new SwitchSettings(
        found.name(),
        found.hostname(),
        found.file(),
        found.dialect(),
        found.dialectReason(),
        false,
        Optional.empty(),
        found.times(),
        vlans,
        ports,
        new TreeMap<>(),
        gateways(designed, found),
        new RepairedTree(design, repaired).of(designed.tree(), found.tree()),
        found.routing(),
        List.of(),
        found.unknownElsewhere(),
        found.known(),
        found.lines());
  }

  /** A switch of which nothing was read, taken to be as the design says. */
  public SwitchSettings unread(DesignSwitch designed) {
    Setting<Integer> priority = Setting.unknown("no config of the switch was read");
    SpanningTree tree =
        new SpanningTree(
            Setting.unknown("no config of the switch was read"),
            Setting.unknown("no config of the switch was read"),
            Setting.known(VlanSet.NONE),
            new TreeMap<>(),
            new TreeMap<>(),
            new SpanningTree.Priority(priority, SpanningTree.Priority.Asked.NUMBER),
            new SpanningTree.Region(
                Setting.absent(), Setting.known(0), new TreeMap<>(), Optional.empty(), List.of()));
    return of(
        designed,
        new SwitchSettings(
            designed.name(),
            Setting.absent(),
            "",
            Dialect.CAMPUS,
            "",
            false,
            Optional.empty(),
            SwitchText.Times.NONE,
            new VlanDatabase(true, "", new TreeMap<>()),
            new TreeMap<>(),
            new TreeMap<>(),
            List.of(),
            tree,
            Setting.known(true),
            List.of(),
            List.of(),
            0,
            0));
  }

  private List<Gateway> gateways(DesignSwitch designed, SwitchSettings found) {
    DesignGateway wanted = design.gateways().get(designed.name());
    if (wanted == null || !wanted.outside().isEmpty() || !repaired.test("gateway-not-working")) {
      return found.gateways();
    }
    Set<VlanId> served =
        wanted.vlans().stream().map(one -> one.vlan().id()).collect(Collectors.toSet());
    return Stream.concat(
            found.gateways().stream().filter(one -> !served.contains(one.vlan())),
            wanted.vlans().stream().map(AsDesigned::working))
        .toList();
  }

  private static Gateway working(DesignGateway.Served served) {
    VlanId vlan = served.vlan().id();
    PortName port = PortName.of(PortKind.VLAN, vlan.number());
    Setting<List<String>> addresses =
        served
            .address()
            .map(address -> Setting.known(List.of(address)))
            .orElse(Setting.unknown("it is taken to be as designed"));
    return new Gateway(
        vlan,
        port,
        new Evidence.Line(1, "interface " + port),
        addresses,
        Setting.known(false),
        Setting.known(true),
        Setting.unknown("it is taken to be as designed"),
        Setting.unknown("it is taken to be as designed"),
        List.of(),
        Setting.known(true),
        List.of());
  }

  private boolean mayBeThere(SwitchSettings found, DesignPort port) {
    return found.port(port.port()).isPresent() || repaired.test("port-absent");
  }

  private PortSettings port(SwitchSettings found, VlanDatabase vlans, DesignPort port) {
    PortSettings base =
        found
            .port(port.port())
            .or(() -> found.membersOf(port.port()).stream().findFirst())
            .orElseGet(() -> RepairedPort.blank(port.port(), found.fullName(port.port())));
    return new RepairedPort(port, base, vlans, repaired, facingRoots.contains(port))
        .settings(bundleOf(port));
  }

  /** The number of the bundle that a cable of a link belongs to by design. */
  private OptionalInt bundleOf(DesignPort port) {
    if (port.place() != DesignPort.Place.MEMBER) {
      return OptionalInt.empty();
    }
    for (Link link : design.links()) {
      List<DesignPort> ends = new ArrayList<>(List.of(link.first()));
      link.second().ifPresent(ends::add);
      for (DesignPort end : ends) {
        if (link.membersBeside(end).contains(port)) {
          return OptionalInt.of(end.port().lastNumber());
        }
      }
    }
    return OptionalInt.empty();
  }

  private VlanDatabase vlans(DesignSwitch designed, VlanDatabase found) {
    SortedMap<VlanId, VlanDatabase.Entry> entries = new TreeMap<>(found.entries());
    SortedMap<VlanId, Evidence> removed = new TreeMap<>(found.removed());
    VlanSet needed = needed(designed);
    for (VlanId vlan : needed.ids().mapToObj(VlanId::new).toList()) {
      VlanDatabase.Entry entry = entries.get(vlan);
      boolean known = entry != null && !found.doubtful().contains(vlan);
      if (!known && repaired.test("vlan-not-created")) {
        removed.remove(vlan);
        entries.put(vlan, new VlanDatabase.Entry(vlan, Setting.absent(), Setting.known(true)));
      } else if (known && repaired.test("vlan-inactive")) {
        entries.put(vlan, new VlanDatabase.Entry(vlan, entry.name(), Setting.known(true)));
      }
    }
    return new VlanDatabase(
        found.known(),
        found.why(),
        found.evidence(),
        entries,
        removed,
        repaired.test("vlan-not-created") ? found.doubtful().minus(needed) : found.doubtful());
  }

  /** The VLANs that ports and gateways of the switch must carry. */
  private VlanSet needed(DesignSwitch designed) {
    VlanSet needed =
        design.portsOf(designed.name()).stream()
            .filter(port -> port.place() != DesignPort.Place.MEMBER)
            .map(port -> port.role().neededVlans())
            .reduce(VlanSet.NONE, VlanSet::plus);
    return needed.plus(
        VlanSet.of(
            new TreeSet<>(
                design.gateways().values().stream()
                    .filter(
                        gateway ->
                            gateway.name().equals(designed.name())
                                || gateway.outside().stream()
                                    .anyMatch(port -> port.switchName().equals(designed.name())))
                    .flatMap(gateway -> gateway.vlans().stream())
                    .map(served -> served.vlan().id())
                    .toList())));
  }
}
