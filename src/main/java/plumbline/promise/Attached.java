package plumbline.promise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import plumbline.design.Design;
import plumbline.design.DesignGateway;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.Host;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.fabric.Fabric;
import plumbline.fabric.VlanGraph.Point;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Finds what is attached to each VLAN of a network: who needs it, and who routes it. */
final class Attached {
  private final Fabric fabric;
  private final Design design;
  private final SortedMap<VlanId, List<Member>> members = new TreeMap<>();
  private final Map<VlanId, List<Router>> routers = new LinkedHashMap<>();
  private final List<Plug> unlinked = new ArrayList<>();

  private Attached(Fabric fabric) {
    this.fabric = fabric;
    this.design = fabric.design();
  }

  /** Looks at a network. */
  static Attached to(Fabric fabric) {
    Attached attached = new Attached(fabric);
    attached.hosts();
    attached.devices();
    attached.management();
    attached.gateways();
    attached.unlinked();
    return attached;
  }

  /** The members of each VLAN that has some, in design order. */
  SortedMap<VlanId, List<Member>> members() {
    return members;
  }

  /** The VLANs that have members or gateways, ascending. */
  SortedSet<VlanId> vlans() {
    SortedSet<VlanId> all = new TreeSet<>(members.keySet());
    all.addAll(routers.keySet());
    return all;
  }

  /** The designed gateways of a VLAN, in design order. */
  List<Router> routers(VlanId vlan) {
    return routers.getOrDefault(vlan, List.of());
  }

  /** The places where frames of a VLAN may leave what the design describes. */
  List<Plug> exits(VlanId vlan) {
    List<Plug> exits = new ArrayList<>();
    members.getOrDefault(vlan, List.of()).stream()
        .filter(member -> member.kind() == Member.Kind.OUTSIDE)
        .forEach(member -> exits.addAll(member.plugs()));
    exits.addAll(unlinked);
    return exits;
  }

  private void unlinked() {
    Set<String> linked = design.linked();
    design.switches().values().stream()
        .filter(one -> !linked.contains(one.name()))
        .forEach(one -> unlinked.addAll(onSwitch(one, Truth.YES)));
  }

  private void hosts() {
    for (Host host : design.hosts().values()) {
      Map<VlanId, List<Plug>> plugs = new TreeMap<>();
      for (Host.HostPort port : host.ports().values()) {
        port.to()
            .role()
            .neededVlans()
            .ids()
            .mapToObj(VlanId::new)
            .forEach(
                vlan ->
                    plugs
                        .computeIfAbsent(vlan, any -> new ArrayList<>())
                        .add(plug(port.to(), vlan, Optional.of(port.name()))));
      }
      plugs.forEach((vlan, all) -> add(new Member(host.name(), Member.Kind.HOST, vlan, all)));
    }
  }

  private void add(Member member) {
    members.computeIfAbsent(member.vlan(), any -> new ArrayList<>()).add(member);
  }

  private void devices() {
    for (DesignSwitch one : design.switches().values()) {
      for (DesignPort port : design.portsOf(one.name())) {
        boolean sheet = port.place() == DesignPort.Place.SHEET && !port.role().isSpare();
        if (sheet || isOutside(port)) {
          String name =
              (sheet ? "the " + port.role().name() : "the link out of the design")
                  + " at "
                  + one.name()
                  + " "
                  + fullName(port);
          Member.Kind kind = sheet ? Member.Kind.DEVICE : Member.Kind.OUTSIDE;
          port.role()
              .neededVlans()
              .ids()
              .mapToObj(VlanId::new)
              .forEach(
                  vlan ->
                      add(
                          new Member(
                              name, kind, vlan, List.of(plug(port, vlan, Optional.empty())))));
        }
      }
    }
  }

  private boolean isOutside(DesignPort port) {
    return port.place() == DesignPort.Place.LINK
        && design.links().stream()
            .anyMatch(link -> link.second().isEmpty() && link.first().equals(port));
  }

  private String fullName(DesignPort port) {
    return fabric
        .settings(port.switchName())
        .map(device -> device.fullName(port.port()))
        .orElse(port.port().toString());
  }

  private void management() {
    for (DesignSwitch one : design.switches().values()) {
      one.managementVlan()
          .map(wanted -> wanted.value().id())
          .ifPresent(
              vlan ->
                  add(
                      new Member(
                          "the management address of " + one.name(),
                          Member.Kind.MANAGEMENT,
                          vlan,
                          onSwitch(
                              one,
                              fabric
                                  .settings(one.name())
                                  .map(device -> device.vlans().isActive(vlan))
                                  .orElse(Truth.UNKNOWN)))));
    }
  }

  private void gateways() {
    for (DesignGateway gateway : design.gateways().values()) {
      for (DesignGateway.Served served : gateway.vlans()) {
        VlanId vlan = served.vlan().id();
        List<Plug> plugs =
            gateway.outside().isEmpty()
                ? onSwitch(design.switches().get(gateway.name()), routes(gateway.name(), served))
                : gateway.outside().stream()
                    .map(
                        port ->
                            new Plug(
                                new Point(port.switchName(), port.port()),
                                true,
                                carries(port, vlan),
                                Optional.empty()))
                    .toList();
        routers
            .computeIfAbsent(vlan, any -> new ArrayList<>())
            .add(new Router(gateway.name(), plugs));
      }
    }
  }

  /** Whether some interface of a switch routes for a VLAN, under the address that hosts know. */
  private Truth routes(String switchName, DesignGateway.Served served) {
    VlanId vlan = served.vlan().id();
    Optional<SwitchSettings> device = fabric.settings(switchName);
    if (device.isEmpty()) {
      return Truth.UNKNOWN;
    }
    Truth best =
        device.get().isPortAbsent(PortName.of(PortKind.VLAN, vlan.number())) == Truth.UNKNOWN
            ? Truth.UNKNOWN
            : Truth.NO;
    for (Gateway one : device.get().gateways()) {
      if (one.vlan().equals(vlan)) {
        Truth works =
            one.works()
                .value()
                .map(Truth::of)
                .orElse(Truth.UNKNOWN)
                .and(served.address().map(one::answersTo).orElse(Truth.YES));
        if (works == Truth.YES) {
          return works;
        }
        best = works == Truth.UNKNOWN ? works : best;
      }
    }
    return best;
  }

  /** What lives on a switch lives on each member of its stack. */
  private static List<Plug> onSwitch(DesignSwitch one, Truth works) {
    List<Integer> boxes = one.stack().isEmpty() ? List.of(0) : one.stack();
    return boxes.stream()
        .map(member -> new Plug(Point.ofMember(one.name(), member), false, works, Optional.empty()))
        .toList();
  }

  private Plug plug(DesignPort port, VlanId vlan, Optional<String> name) {
    Truth works = carries(port, vlan).and(tagsAsWanted(port, vlan));
    return new Plug(new Point(port.switchName(), port.port()), true, works, name);
  }

  private Optional<PortSettings> settings(DesignPort port) {
    return fabric
        .settings(port.switchName())
        .flatMap(
            device ->
                device
                    .port(port.port())
                    .or(() -> device.membersOf(port.port()).stream().findFirst()));
  }

  /** Whether a VLAN passes a port towards what does not negotiate. */
  private Truth carries(DesignPort port, VlanId vlan) {
    Optional<SwitchSettings> device = fabric.settings(port.switchName());
    Optional<PortSettings> open = settings(port);
    if (device.isEmpty()) {
      return Truth.UNKNOWN;
    }
    if (open.isEmpty()) {
      return device.get().isPortAbsent(port.port()) == Truth.YES ? Truth.NO : Truth.UNKNOWN;
    }
    if (!open.get().get(Keys.MODE).is(PortMode.NEGOTIATED)) {
      return open.get().carries(vlan);
    }
    return negotiated(open.get(), vlan, device.get().vlans().isActive(vlan));
  }

  /** A port that negotiates is an access port towards what does not. */
  private static Truth negotiated(PortSettings port, VlanId vlan, Truth active) {
    Setting<VlanId> access = port.get(Keys.ACCESS_VLAN);
    Setting<VoiceVlan> voice = port.get(Keys.VOICE_VLAN);
    boolean named =
        access.is(vlan) || voice.value().flatMap(VoiceVlan::vlan).filter(vlan::equals).isPresent();
    if (port.carries(vlan) == Truth.NO || (!named && access.isDecided() && voice.isDecided())) {
      return Truth.NO;
    }
    return named && isOpen(port) ? active : Truth.UNKNOWN;
  }

  private static boolean isOpen(PortSettings port) {
    return port.get(Keys.SHUT).is(false) && !port.get(Keys.SUSPENDED).is(true);
  }

  private Truth tagsAsWanted(DesignPort port, VlanId vlan) {
    Optional<PortSettings> open = settings(port);
    if (open.isEmpty()) {
      return Truth.UNKNOWN;
    }
    Setting<VlanId> bare =
        open.get().get(Keys.MODE).is(PortMode.NEGOTIATED)
            ? open.get().untaggedIn(PortMode.ACCESS)
            : open.get().untagged();
    Truth untagged =
        bare.isDecided() ? Truth.of(bare.value().filter(vlan::equals).isPresent()) : Truth.UNKNOWN;
    boolean tagged = port.role().value(RoleKeys.TAGGED).orElse(VlanSet.NONE).contains(vlan);
    if (is(port, RoleKeys.ACCESS, vlan) || (!tagged && is(port, RoleKeys.NATIVE, vlan))) {
      return untagged;
    }
    return tagged ? not(untagged) : Truth.YES;
  }

  private static boolean is(DesignPort port, RoleKey<DesignVlan> key, VlanId vlan) {
    return port.role().value(key).filter(one -> one.id().equals(vlan)).isPresent();
  }

  private static Truth not(Truth truth) {
    return truth == Truth.UNKNOWN ? truth : Truth.of(truth == Truth.NO);
  }
}
