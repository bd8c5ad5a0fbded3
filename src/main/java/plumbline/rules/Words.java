package plumbline.rules;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.statement.SwitchText.Stamp;
import plumbline.text.Wording;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** The few wordings that rules share. */
final class Words {
  private static final int MOST = 5;
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  private Words() {}

  /** {@code voice-a (231)} where the design declares it, else {@code VLAN 300}. */
  static String vlan(Design design, VlanId vlan) {
    return design.vlan(vlan).map(DesignVlan::toString).orElse("VLAN " + vlan);
  }

  /**
   * Declared VLANs by name, the others as ranges: {@code voice-a (231), VLANs 300-310}; all as
   * ranges where many are declared; {@code no VLAN} for none.
   */
  static String vlans(Design design, VlanSet vlans) {
    List<DesignVlan> declared =
        vlans.ids().mapToObj(VlanId::new).flatMap(id -> design.vlan(id).stream()).toList();
    List<DesignVlan> named = declared.size() > MOST ? List.of() : declared;
    VlanSet rest = vlans.minus(VlanSet.of(named.stream().map(DesignVlan::id).toList()));
    if (vlans.isEmpty()) {
      return "no VLAN";
    }
    String others = (rest.size() == 1 ? "VLAN " : "VLANs ") + rest;
    return Stream.concat(
            named.stream().map(DesignVlan::toString),
            Stream.of(others).filter(any -> !rest.isEmpty()))
        .collect(Collectors.joining(", "));
  }

  /** A list in words: {@code a}, {@code a and b}, {@code a, b and c}; five at most are named. */
  static String list(List<String> words) {
    return Wording.list(words);
  }

  /** The same with {@code or}. */
  static String either(List<String> words) {
    return list(words).replaceFirst(" and (?=[^,]*$)", " or ");
  }

  /** {@code is} or {@code are}. */
  static String are(int count) {
    return count == 1 ? "is" : "are";
  }

  /** The object form of a number of things. */
  static String them(int count) {
    return count == 1 ? "it" : "them";
  }

  /** {@code 1 port}, {@code 2 ports}. */
  static String count(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  /** The same at the head of a sentence; names keep their spelling. */
  static String capital(String words) {
    return words.startsWith("the ") || words.startsWith("a ")
        ? words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1)
        : words;
  }

  /** {@code native VLAN office (250)}, or {@code native VLAN 7} where none is declared. */
  static String role(String role, Design design, VlanId vlan) {
    return role + " VLAN " + design.vlan(vlan).map(DesignVlan::toString).orElse(vlan.toString());
  }

  /** The host of a host's port. */
  static String host(DesignPort port) {
    int blank = port.subject().lastIndexOf(' ');
    return blank < 0 ? port.subject() : port.subject().substring(0, blank);
  }

  /** A time that a header gives: {@code 2026-11-03 10:11:12 UTC}; only where it could be read. */
  static String time(Stamp stamp) {
    String clock = stamp.time().orElseThrow().format(CLOCK);
    return (clock + " " + stamp.zone()).strip();
  }

  /** The name of a host's port. */
  static String hostPort(DesignPort port) {
    return port.subject().substring(port.subject().lastIndexOf(' ') + 1);
  }

  /** Who sends and receives at the other end of a port, as the object of a sentence. */
  static String farEnd(DesignPort port) {
    return switch (port.place()) {
      case LINK, MEMBER -> "the far end";
      case HOST, SHEET, GATEWAY -> behind(port);
    };
  }

  /** What is behind a port, as the object of a sentence. */
  static String behind(DesignPort port) {
    return switch (port.place()) {
      case HOST -> port.subject();
      case LINK -> "the " + port.subject();
      case MEMBER -> "a " + port.subject().replaceFirst("^member of ", "member of the ");
      case SHEET -> "the " + port.role().name() + " device";
      case GATEWAY -> "the " + port.subject();
    };
  }
}
