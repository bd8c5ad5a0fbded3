package plumbline.port;

import java.util.Locale;

/**
 * A kind of port, with the full name that saved configs print and the shortest abbreviation that
 * the trade takes for it (common practice, no source).
 */
public enum PortKind {
  /** Ports that are numbers only, such as {@code 1/1/1}. */
  NUMBERED("", 0),
  /** Ports named without a speed. */
  ETHERNET("Ethernet", 1),
  /** 100 Mb/s: one letter is enough, for where such ports are no faster kind begins so. */
  FAST_ETHERNET("FastEthernet", 1),
  /** 1 Gb/s. */
  GIGABIT_ETHERNET("GigabitEthernet", 1),
  /** 2.5 Gb/s. */
  TWO_GIGABIT_ETHERNET("TwoGigabitEthernet", 2),
  /** 5 Gb/s. */
  FIVE_GIGABIT_ETHERNET("FiveGigabitEthernet", 2),
  /** 10 Gb/s. */
  TEN_GIGABIT_ETHERNET("TenGigabitEthernet", 2),
  /** 25 Gb/s. */
  TWENTY_FIVE_GIG_E("TwentyFiveGigE", 2, "TwentyFiveGigabitEthernet"),
  /** 40 Gb/s. */
  FORTY_GIGABIT_ETHERNET("FortyGigabitEthernet", 2),
  /** 50 Gb/s. */
  FIFTY_GIG_E("FiftyGigE", 2, "FiftyGigabitEthernet"),
  /** 100 Gb/s. */
  HUNDRED_GIG_E("HundredGigE", 2, "HundredGigabitEthernet"),
  /** 400 Gb/s. */
  FOUR_HUNDRED_GIG_E("FourHundredGigE", 4, "FourHundredGigabitEthernet"),
  /** A port of a hosted application. */
  APP_GIGABIT_ETHERNET("AppGigabitEthernet", 2),
  /** A port of a software switch; nobody shortens it. */
  SWITCH_PORT("swp", 3),
  /** A bundle of ports. */
  PORT_CHANNEL("Port-channel", 2),
  /** A bundle of ports in dialects that call it so. */
  LAG("lag", 2),
  /** A VLAN interface. */
  VLAN("Vlan", 2),
  /** An internal interface that is always up. */
  LOOPBACK("Loopback", 2),
  /** A tunnel. */
  TUNNEL("Tunnel", 2),
  /** The out-of-band management port. */
  MANAGEMENT("mgmt", 2, "Management"),
  /** A bridge interface with an address. */
  BRIDGE_VIRTUAL("BVI", 2),
  /** An overlay end point. */
  OVERLAY("nve", 2),
  /** An overlay end point in dialects that call it so. */
  VXLAN("Vxlan", 2),
  /** A serial line. */
  SERIAL("Serial", 1),
  /** No port at all: what is sent there is dropped. */
  NULL("Null", 2);

  private final String fullName;
  private final int shortest;
  private final String alias;

  PortKind(String fullName, int shortest) {
    this(fullName, shortest, fullName);
  }

  PortKind(String fullName, int shortest, String alias) {
    this.fullName = fullName;
    this.shortest = shortest;
    this.alias = alias;
  }

  /** The full name without a number, as saved configs most often print it. */
  public String fullName() {
    return fullName;
  }

  /** Says whether a word, in any case, is this kind's name or an accepted abbreviation of it. */
  boolean accepts(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    return lower.length() >= shortest && (isPrefix(lower, fullName) || isPrefix(lower, alias));
  }

  /** Says whether a word, in any case, begins this kind's name. */
  boolean beginsWith(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    return isPrefix(lower, fullName) || isPrefix(lower, alias);
  }

  /** Says whether a word is the kind's name in full. */
  boolean isFullName(String word) {
    return word.equalsIgnoreCase(fullName) || word.equalsIgnoreCase(alias);
  }

  private static boolean isPrefix(String lower, String name) {
    return name.toLowerCase(Locale.ROOT).startsWith(lower);
  }

  /**
   * Says whether ports of this kind bridge frames and can be cabled: no VLAN interface, no loop.
   */
  public boolean isPhysical() {
    return switch (this) {
      case PORT_CHANNEL, LAG, VLAN, LOOPBACK, TUNNEL, BRIDGE_VIRTUAL, OVERLAY, VXLAN, NULL -> false;
      default -> true;
    };
  }

  /** Says whether this kind is a bundle of ports. */
  public boolean isBundle() {
    return this == PORT_CHANNEL || this == LAG;
  }
}
