package plumbline.inspect;

import static java.util.stream.Collectors.joining;

import java.util.List;
import java.util.Optional;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.effective.UnknownLine;
import plumbline.effective.VlanDatabase;
import plumbline.setting.Key;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;

/** Parts of a switch in words. */
final class SwitchWords {
  /** How many unknown statements outside ports are shown; the JSON form has all. */
  private static final int MOST_UNKNOWN = 5;

  private SwitchWords() {}

  /** A VLAN of the list: number, name, and its state where that is no matter of course. */
  static String vlan(VlanDatabase.Entry entry) {
    String name = entry.name().value().map(word -> " " + word).orElse("");
    String state =
        entry.active().isDecided()
            ? entry.active().is(false) ? " (not active)" : ""
            : " (state unknown)";
    return entry.id() + name + state;
  }

  /** A gateway in one line: VLAN, addresses, groups. */
  static String gateway(SwitchSettings settings, Gateway gateway) {
    String groups = gateway.groups().stream().map(group -> "; " + group(group)).collect(joining());
    String shut = gateway.shut().is(true) ? ", shut" : "";
    return "VLAN " + named(settings, gateway.vlan()) + ": " + addresses(gateway) + shut + groups;
  }

  /** The addresses of a gateway. */
  static String addresses(Gateway gateway) {
    return gateway.addresses().isDecided()
        ? gateway.addresses().value().map(list -> String.join(", ", list)).orElse("no address")
        : "unknown";
  }

  private static String group(Gateway.Group group) {
    return group.kind()
        + " "
        + group.id()
        + ", address "
        + Values.words(group.address())
        + ", priority "
        + Values.words(group.priority());
  }

  /** The VLAN's number and, where the text gives it one, its name. */
  private static String named(SwitchSettings settings, VlanId vlan) {
    return vlan
        + Optional.ofNullable(settings.vlans().entries().get(vlan))
            .flatMap(entry -> entry.name().value())
            .map(name -> " " + name)
            .orElse("");
  }

  /** How many statements are not understood, and the first of those outside ports. */
  static String unknown(SwitchSettings settings) {
    List<UnknownLine> elsewhere = settings.unknownElsewhere();
    int inPorts = settings.unknownStatements() - elsewhere.size();
    int more = elsewhere.size() - MOST_UNKNOWN;
    return inPorts
        + (inPorts == 1 ? " statement" : " statements")
        + " inside ports, "
        + elsewhere.size()
        + " elsewhere"
        + (elsewhere.isEmpty() ? "" : " (")
        + elsewhere.stream().limit(MOST_UNKNOWN).map(SwitchWords::unknown).collect(joining(", "))
        + (more > 0 ? " and " + more + " more" : "")
        + (elsewhere.isEmpty() ? "" : ")");
  }

  /** A statement that is not understood, of which only the first word is shown. */
  static String unknown(UnknownLine line) {
    return "line " + line.line() + ": " + line.firstWord() + " ...";
  }

  /** The value; a single VLAN with its name. */
  static String value(SwitchSettings settings, PortSettings port, Key<?> key) {
    Object value = port.get(key).value().orElse(null);
    if (value instanceof VlanId vlan) {
      return named(settings, vlan);
    }
    if (value instanceof VoiceVlan voice && voice.vlan().isPresent()) {
      return named(settings, voice.vlan().get());
    }
    return Values.words(port, key);
  }
}
