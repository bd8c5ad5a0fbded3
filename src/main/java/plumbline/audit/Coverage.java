package plumbline.audit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignGateway;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.design.Role;
import plumbline.design.RoleKey;
import plumbline.design.Wanted;
import plumbline.result.Result.NotChecked;
import plumbline.rules.Rule;
import plumbline.vlan.VlanId;

/**
 * Holds what a design asks against what the rules ask, so that no report can look as if it had
 * compared everything. Keys that only describe (places, cables, names of things) are nothing to
 * check; {@code telephony}, {@code other-vlans}, {@code bridge-address}, {@code dialect} and {@code
 * rules} only steer.
 */
final class Coverage {
  private final Design design;
  private final Set<String> switches;
  private final Set<String> asked;
  private final List<NotChecked> found = new ArrayList<>();

  private Coverage(Design design, Set<String> switches, Collection<? extends Rule> rules) {
    this.design = design;
    this.switches = switches;
    this.asked =
        rules.stream().flatMap(rule -> rule.info().keys().stream()).collect(Collectors.toSet());
  }

  /**
   * The keys that the design uses for these switches and that no rule asks, sorted.
   *
   * @param switches names of the switches that the run is about
   */
  static List<NotChecked> gaps(
      Design design, Set<String> switches, Collection<? extends Rule> rules) {
    return new Coverage(design, switches, rules).gaps();
  }

  private List<NotChecked> gaps() {
    roles();
    vlans();
    switches();
    fabric();
    found.sort(Comparator.comparing(NotChecked::key));
    return List.copyOf(found);
  }

  private void roles() {
    Map<String, Integer> uses = new TreeMap<>();
    for (String name : switches) {
      for (DesignPort port : design.portsOf(name)) {
        Role role = port.role();
        if (role.isSpare()) {
          uses.merge(Role.SPARE, 1, Integer::sum);
        }
        role.wishes().forEach((key, wanted) -> uses.merge(spelled(key, wanted), 1, Integer::sum));
      }
    }
    uses.forEach((key, number) -> gap(key, number, "port"));
  }

  /** The key, or the key with its value where the rules ask single values of it. */
  private String spelled(RoleKey<?> key, Wanted<?> wanted) {
    boolean byValue =
        !asked.contains(key.name())
            && asked.stream().anyMatch(one -> one.startsWith(key.name() + ": "));
    return byValue ? key.name() + ": " + wanted.value() : key.name();
  }

  private void vlans() {
    vlans("gateway: required", vlan -> vlan.gateway() == GatewayNeed.REQUIRED);
    vlans("gateway: forbidden", vlan -> vlan.gateway() == GatewayNeed.FORBIDDEN);
    vlans("one-domain", DesignVlan::oneDomain);
    vlans("unused", DesignVlan::unused);
    vlans("filter", DesignVlan::filter);
    vlans("apart-from", vlan -> !vlan.apartFrom().isEmpty());
    vlans("name", vlan -> vlan.deviceName().isPresent());
  }

  private void vlans(String key, Predicate<DesignVlan> uses) {
    gap("vlans." + key, design.vlans().values().stream().filter(uses).count(), "VLAN");
  }

  private void switches() {
    switches("stack", one -> !one.stack().isEmpty());
    switches("management", one -> one.managementVlan().isPresent());
    switches("spanning-tree.mode", one -> one.tree().mode().isPresent());
    switches("spanning-tree.path-cost", one -> one.tree().pathCost().isPresent());
    switches("spanning-tree.mst", one -> one.tree().mst().isPresent());
    switches("spanning-tree.root-of", one -> !one.tree().rootOf().isEmpty());
    switches("spanning-tree.second-for", one -> !one.tree().secondFor().isEmpty());
  }

  private void switches(String key, Predicate<DesignSwitch> uses) {
    Stream<DesignSwitch> inScope =
        design.switches().values().stream().filter(one -> switches.contains(one.name()));
    gap("switches." + key, inScope.filter(uses).count(), "switch");
  }

  /** What needs more than one port or switch to be looked at. */
  private void fabric() {
    gap(
        "hosts.pairs",
        design.hosts().values().stream()
            .filter(host -> host.ports().values().stream().anyMatch(port -> inScope(port.to())))
            .mapToLong(host -> host.pairs().size())
            .sum(),
        "pair");
    gap(
        "links.ends against each other",
        design.links().stream()
            .filter(link -> link.second().isPresent())
            .filter(link -> inScope(link.first()) || inScope(link.second().get()))
            .count(),
        "link");
    gap(
        "links.members in their bundle",
        design.links().stream()
            .filter(
                link -> inScope(link.first()) || link.second().filter(this::inScope).isPresent())
            .mapToLong(link -> link.members().size())
            .sum(),
        "cable");
    gateways();
    gap("switches without a link", unlinked(), "switch");
    gap("multi-chassis", design.multiChassis().size(), "pair");
    gap("services", design.services().size(), "service");
    gap("max-age-days", design.maxAgeDays().isPresent() ? switches.size() : 0, "switch");
    gap("harmless", design.harmless().size(), "pattern");
  }

  /** Of an outside gateway only its switch port can be looked at. */
  private void gateways() {
    List<DesignGateway> all = List.copyOf(design.gateways().values());
    List<DesignGateway> own =
        all.stream()
            .filter(gateway -> gateway.outside().isEmpty() && switches.contains(gateway.name()))
            .toList();
    gap("gateways", own.size(), "gateway");
    active("gateways.active", own, false);
    active("gateways.active beside an outside gateway", own, true);
    gap(
        "gateways.at",
        all.stream().filter(gateway -> gateway.outside().stream().anyMatch(this::inScope)).count(),
        "gateway");
  }

  /** Where frames go from there the design does not say. */
  private long unlinked() {
    Set<String> linked = design.linked();
    return design.switches().size() < 2
        ? 0
        : switches.stream().filter(name -> !linked.contains(name)).count();
  }

  /** Which of a switch and an outside gateway is active, no rule can tell. */
  private void active(String key, List<DesignGateway> own, boolean outside) {
    Set<VlanId> elsewhere =
        design.gateways().values().stream()
            .filter(gateway -> !gateway.outside().isEmpty())
            .flatMap(gateway -> gateway.vlans().stream())
            .map(served -> served.vlan().id())
            .collect(Collectors.toSet());
    gap(
        key,
        own.stream()
            .flatMap(gateway -> gateway.vlans().stream())
            .filter(served -> served.active().isPresent())
            .filter(served -> elsewhere.contains(served.vlan().id()) == outside)
            .count(),
        "VLAN");
  }

  private boolean inScope(DesignPort port) {
    return switches.contains(port.switchName());
  }

  private void gap(String key, long uses, String of) {
    if (uses > 0 && !asked.contains(key)) {
      found.add(new NotChecked(key, (int) uses, of));
    }
  }
}
