package plumbline.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import plumbline.design.DesignGateway;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Group;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.vlan.VlanId;

/**
 * One of several gateways of a VLAN: a switch whose interface there may work.
 *
 * @param at the switch
 * @param served what the design says of it
 * @param gateway the interface
 */
record GatewaySide(SwitchCase at, DesignGateway.Served served, Gateway gateway) {
  /** What keeps a gateway from working whatever its partner does. */
  private static final List<Kind> OWN = List.of(Kind.OPEN, Kind.ADDRESS, Kind.PARENT, Kind.ROUTING);

  /** The interface of a designed gateway; none that for certain does not work on its own. */
  static Optional<GatewaySide> of(SwitchCase device, VlanId vlan) {
    Optional<DesignGateway.Served> served = Routed.served(device, vlan);
    List<Gateway> open =
        Routed.in(device, vlan).stream()
            .filter(one -> OWN.stream().noneMatch(kind -> one.has(kind) == Truth.NO))
            .toList();
    return served.flatMap(
        wanted ->
            open.stream()
                .filter(one -> !one.groups().isEmpty())
                .findFirst()
                .or(() -> open.stream().findFirst())
                .map(one -> new GatewaySide(device, wanted, one)));
  }

  /** The interface as the place of an outcome. */
  Subject subject() {
    return Routed.subject(at, gateway);
  }

  /** The same as the place beside an outcome. */
  Place place() {
    return subject().place().orElseThrow();
  }

  /** The switch. */
  String name() {
    return at.designed().name();
  }

  /** The IPv4 addresses of its own. */
  List<Subnet> addresses() {
    return gateway.addresses().value().stream()
        .flatMap(List::stream)
        .flatMap(text -> Subnet.of(text).stream())
        .toList();
  }

  /** Why its own addresses, decided as they are, are no IPv4 addresses that can be compared. */
  Optional<String> openAddress() {
    return gateway.addresses().value().stream()
        .flatMap(List::stream)
        .filter(text -> !text.contains(":") && Subnet.of(text).isEmpty())
        .map(text -> "its address is not in the text: ip address " + text)
        .findFirst();
  }

  /** The subnets that it is in, sorted; of an anycast address without one of its own that one's. */
  Set<String> subnets() {
    Set<String> all = new TreeSet<>();
    addresses().forEach(own -> all.addAll(own.subnet().stream().toList()));
    if (addresses().isEmpty()) {
      gateway.groups().stream()
          .flatMap(group -> group.address().value().stream())
          .flatMap(text -> Subnet.of(text).stream())
          .forEach(virtual -> all.addAll(virtual.subnet().stream().toList()));
    }
    return all;
  }

  /** Whether one of its own addresses is this one. */
  boolean owns(String host) {
    return addresses().stream().anyMatch(own -> own.host().equals(host));
  }

  /** The virtual address of a group, without its mask. */
  static Optional<String> virtual(Group group) {
    return group.address().value().map(text -> text.split("[ /]", 2)[0]);
  }

  /** Whether a group is known to have no address to answer for, and to learn none. */
  static boolean lacksAddress(Group group) {
    return group.address().isDecided() && group.address().value().isEmpty() && !group.learns();
  }

  /** Its group of the same protocol and number. */
  Optional<Group> twin(Group other) {
    return gateway.groups().stream()
        .filter(group -> group.kind() == other.kind() && group.id() == other.id())
        .findFirst();
  }

  /**
   * The priority with which a group is elected; the owner of the virtual address has 255 whatever
   * is configured (RFC 5798, section 5.2.4).
   */
  Setting<Integer> priority(Group group) {
    return isOwner(group)
        ? new Setting.Known<>(255, gateway.addresses().evidence())
        : group.priority();
  }

  /** Whether a higher priority takes over here; the owner always does (RFC 5798, section 6.1). */
  Setting<Boolean> preempt(Group group) {
    return isOwner(group)
        ? new Setting.Known<>(true, gateway.addresses().evidence())
        : group.preempt();
  }

  private boolean isOwner(Group group) {
    return group.kind() == Redundancy.Kind.VRRP && virtual(group).filter(this::owns).isPresent();
  }

  /** A group in words. */
  static String words(Group group) {
    String address = virtual(group).map(text -> " for " + text).orElse("");
    return group.kind() == Redundancy.Kind.ANYCAST
        ? "anycast address" + virtual(group).map(text -> " " + text).orElse("")
        : group.kind() + " group " + group.id() + address;
  }

  /** Groups in words. */
  static String words(Collection<Group> groups) {
    return groups.isEmpty()
        ? "no redundancy group"
        : Words.list(groups.stream().map(GatewaySide::words).toList());
  }

  /** The first setting that leaves open how it goes with its partner. */
  Optional<Setting<?>> open() {
    Stream<Setting<?>> all =
        Stream.concat(
            Stream.of(gateway.addresses(), gateway.redundant()),
            gateway.groups().stream()
                .flatMap(
                    group ->
                        Stream.of(
                            group.address(), group.version(), group.priority(), group.preempt())));
    return all.filter(setting -> !setting.isDecided()).findFirst();
  }

  /** The header of the interface and what else a finding rests on here. */
  List<Proof> proofs(Collection<Evidence> evidence) {
    List<Evidence> all = new ArrayList<>(List.of(gateway.header()));
    all.addAll(evidence);
    return at.proofs(all);
  }
}
