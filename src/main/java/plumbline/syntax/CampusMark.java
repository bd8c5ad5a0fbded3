package plumbline.syntax;

import java.util.List;

/**
 * Tells lines that only the campus dialect, whose dumps close with {@code end}, prints. Common
 * practice, no source.
 */
final class CampusMark {
  private static final List<String> OWN =
      List.of(
          "switchport nonegotiate",
          "switchport trunk encapsulation ",
          "spanning-tree portfast",
          "spanning-tree extend system-id",
          "switchport mode dynamic ",
          "vtp mode ",
          "vtp domain ");

  private static final List<String> PORTS =
      List.of("FastEthernet", "GigabitEthernet", "TenGigabitEthernet", "Port-channel");

  private CampusMark() {}

  /** Says whether a line is one of the dialect's own, written in full. */
  static boolean is(String text) {
    return OWN.stream().anyMatch(text::startsWith);
  }

  /** Says whether a line opens a port as dumps of the dialect spell it. */
  static boolean isFullPortHeader(String text) {
    return text.startsWith("interface ")
        && PORTS.stream()
            .anyMatch(
                name ->
                    text.startsWith(name, 10)
                        && text.length() > 10 + name.length()
                        && Character.isDigit(text.charAt(10 + name.length())));
  }

  /** Says whether a line opens the lines of consoles and sessions, the last in a dump. */
  static boolean isConsole(String text) {
    return text.startsWith("line con") || text.startsWith("line vty");
  }

  /** Says whether a line is of a dialect whose dumps have no {@code end}. */
  static boolean isForeign(String text) {
    return text.startsWith("feature ")
        || text.startsWith("spanning-tree port type ")
        || text.startsWith("vlan database");
  }
}
