package plumbline.effective;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.SwitchText;
import plumbline.vlan.VlanId;

/**
 * Everything that one config text says a switch does.
 *
 * @param name hostname, or the file's stem where there is none
 * @param hostname the hostname's line, absent where there is none
 * @param file the file as typed
 * @param dialect the table of defaults that applies
 * @param dialectReason why that one, a clause
 * @param script whether the text is a pasted script, whose absent lines are no defaults
 * @param truncation where the text breaks off, if it does
 * @param times what the header says of changes and saves
 * @param vlans the VLAN database
 * @param ports all ports that the text opens, VLAN interfaces too, in order
 * @param removed virtual ports that a line removes for good, with that line
 * @param gateways addresses in VLANs, by VLAN
 * @param tree spanning tree of the whole switch
 * @param routing whether the switch routes between VLANs
 * @param doubtfulHeaders interface headers that name no clear port, in order
 * @param unknownElsewhere unknown statements outside ports, in order
 * @param known how many statements about a switch or its ports are known, harmless ones not counted
 * @param lines the number of lines
 */
public record SwitchSettings(
    String name,
    Setting<String> hostname,
    String file,
    Dialect dialect,
    String dialectReason,
    boolean script,
    Optional<SwitchText.Truncation> truncation,
    SwitchText.Times times,
    VlanDatabase vlans,
    SortedMap<PortName, PortSettings> ports,
    SortedMap<PortName, Evidence.Line> removed,
    List<Gateway> gateways,
    SpanningTree tree,
    Setting<Boolean> routing,
    List<Evidence.Line> doubtfulHeaders,
    List<UnknownLine> unknownElsewhere,
    int known,
    int lines) {
  /** Copies the collections. */
  public SwitchSettings {
    ports = Collections.unmodifiableSortedMap(new TreeMap<>(ports));
    removed = Collections.unmodifiableSortedMap(new TreeMap<>(removed));
    gateways = List.copyOf(gateways);
    doubtfulHeaders = List.copyOf(doubtfulHeaders);
    unknownElsewhere = List.copyOf(unknownElsewhere);
  }

  /** The port's settings, if the text opens the port. */
  public Optional<PortSettings> port(PortName port) {
    return Optional.ofNullable(ports.get(port));
  }

  /** The ports that join this bundle, in the order of their names. */
  public List<PortSettings> membersOf(PortName bundle) {
    return ports.values().stream().filter(port -> port.isMemberOf(bundle)).toList();
  }

  /**
   * Whether the switch lacks the port. Undecided for a port that the text does not open while the
   * text is a script, is cut short, or has an interface header that names no clear port.
   */
  public Truth isPortAbsent(PortName port) {
    if (ports.containsKey(port)) {
      return Truth.NO;
    }
    if (removed.containsKey(port)) {
      return Truth.YES;
    }
    return whyPortsMayBeMissing().isPresent() ? Truth.UNKNOWN : Truth.YES;
  }

  /** Why a port that the text does not open may be there all the same, a clause. */
  public Optional<String> whyPortsMayBeMissing() {
    if (script) {
      return Optional.of(SwitchTexts.SCRIPT);
    }
    if (truncation.isPresent()) {
      return truncation.map(SwitchTexts::breaksOff);
    }
    return doubtfulHeaders.stream()
        .findFirst()
        .map(header -> "the interface header in line " + header.line() + " names no clear port");
  }

  /** Whether a setting is open for the one reason that the text breaks off. */
  public boolean isCutOff(Setting<?> setting) {
    return truncation
        .map(SwitchTexts::breaksOff)
        .filter(reason -> setting.reason().filter(why -> why.contains(reason)).isPresent())
        .isPresent();
  }

  /** Whether a setting is open for want of a line in a text whose silence is no default. */
  public boolean isSilent(Setting<?> setting) {
    return setting.reason().filter(why -> why.contains(SwitchTexts.SCRIPT)).isPresent();
  }

  /** Whether a setting is open because a default differs between the families of the dialect. */
  public boolean isLeftToFamily(Setting<?> setting) {
    return setting.reason().filter(why -> why.endsWith(dialect.familiesDiffer())).isPresent();
  }

  /** Whether some port that is open carries the VLAN. */
  public Truth reachesPort(VlanId vlan) {
    Truth reaches = whyPortsMayBeMissing().isPresent() ? Truth.UNKNOWN : Truth.NO;
    for (PortSettings port : ports.values()) {
      Truth carries = port.carries(vlan);
      if (carries == Truth.YES) {
        return Truth.YES;
      }
      reaches = carries == Truth.UNKNOWN ? Truth.UNKNOWN : reaches;
    }
    return reaches;
  }

  /** The port's name as this switch's dialect prints it. */
  public String fullName(PortName port) {
    return dialect.print(port);
  }

  /** The number of unknown statements, inside ports and outside. */
  public int unknownStatements() {
    return unknownElsewhere.size()
        + ports.values().stream().mapToInt(port -> port.unknown().size()).sum();
  }

  /** The same settings with the gateways judged. */
  SwitchSettings withGateways(List<Gateway> judged) {
    return new SwitchSettings(
        name,
        hostname,
        file,
        dialect,
        dialectReason,
        script,
        truncation,
        times,
        vlans,
        ports,
        removed,
        judged,
        tree,
        routing,
        doubtfulHeaders,
        unknownElsewhere,
        known,
        lines);
  }
}
