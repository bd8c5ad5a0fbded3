package plumbline.design;

import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import plumbline.port.PortName;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * A whole design, resolved: every reference points at what it names. Maps keep design order.
 *
 * @param files the files it was read from, in order, with their hashes
 * @param site the site's name
 * @param revision the change record that approved it
 * @param vlans VLANs by name
 * @param otherVlans known VLANs that are not ours
 * @param roles roles by name, without the reserved one
 * @param switches switches by name
 * @param hosts hosts by name
 * @param links links
 * @param gateways gateways by name
 * @param multiChassis pairs of switches that offer bundles together
 * @param services services by name
 * @param silentRules rules switched off by this design, sorted
 * @param maxAgeDays age at which a config is stale
 * @param harmless patterns of statements that the site vouches for
 * @param ports every port that the design covers, by switch and port
 */
public record Design(
    List<SourceFile> files,
    Optional<String> site,
    Optional<String> revision,
    Map<String, DesignVlan> vlans,
    VlanSet otherVlans,
    Map<String, Role> roles,
    Map<String, DesignSwitch> switches,
    Map<String, Host> hosts,
    List<Link> links,
    Map<String, DesignGateway> gateways,
    List<MultiChassis> multiChassis,
    Map<String, Service> services,
    Set<String> silentRules,
    Optional<Wanted<Integer>> maxAgeDays,
    List<String> harmless,
    Map<String, Map<PortName, DesignPort>> ports) {
  /** Copies the collections. */
  public Design {
    files = List.copyOf(files);
    vlans = copy(vlans);
    roles = copy(roles);
    switches = copy(switches);
    hosts = copy(hosts);
    links = List.copyOf(links);
    gateways = copy(gateways);
    multiChassis = List.copyOf(multiChassis);
    services = copy(services);
    silentRules = Collections.unmodifiableSet(new TreeSet<>(silentRules));
    harmless = List.copyOf(harmless);
    ports = copy(ports);
  }

  private static <K, V> Map<K, V> copy(Map<K, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /**
   * A file of the design.
   *
   * @param file as typed
   * @param sha256 lower-case hexadecimal hash of its bytes
   */
  public record SourceFile(String file, String sha256) {}

  /** The ports that the design covers on a switch, in the order of their names. */
  public List<DesignPort> portsOf(String switchName) {
    return ports.getOrDefault(switchName, Map.of()).entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(Map.Entry::getValue)
        .toList();
  }

  /** The switches of which the design names a link, to another one or out of the design. */
  public Set<String> linked() {
    Set<String> linked = new HashSet<>();
    for (Link link : links) {
      linked.add(link.first().switchName());
      link.second().ifPresent(end -> linked.add(end.switchName()));
    }
    return linked;
  }

  /** The declared VLAN of that number, if there is one. */
  public Optional<DesignVlan> vlan(VlanId id) {
    return vlans.values().stream().filter(vlan -> vlan.id().equals(id)).findFirst();
  }
}
