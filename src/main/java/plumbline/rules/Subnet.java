package plumbline.rules;

import java.util.Optional;

/**
 * An IPv4 address with its mask, as a config writes both.
 *
 * @param host the address
 * @param subnet the subnet it is in, such as {@code 192.0.2.0/25}; empty without a mask
 */
record Subnet(String host, Optional<String> subnet) {
  /** Reads {@code 192.0.2.1 255.255.255.128} or {@code 192.0.2.1/25}; empty for all else. */
  static Optional<Subnet> of(String text) {
    String[] words = text.split("[ /]", -1);
    Optional<Integer> host = bits(words[0]);
    if (host.isEmpty()) {
      return Optional.empty();
    }
    Optional<Integer> mask = words.length < 2 ? Optional.empty() : mask(words[1]);
    return Optional.of(
        new Subnet(words[0], mask.map(set -> dotted(host.get() & set) + "/" + width(set))));
  }

  private static Optional<Integer> mask(String text) {
    if (text.matches("[0-9]|[12][0-9]|3[0-2]")) {
      int length = Integer.parseInt(text);
      return Optional.of(length == 0 ? 0 : -1 << (32 - length));
    }
    return bits(text);
  }

  private static Optional<Integer> bits(String text) {
    String[] octets = text.split("\\.", -1);
    if (octets.length != 4) {
      return Optional.empty();
    }
    int bits = 0;
    for (String octet : octets) {
      if (!octet.matches("[0-9]{1,3}") || Integer.parseInt(octet) > 255) {
        return Optional.empty();
      }
      bits = bits << 8 | Integer.parseInt(octet);
    }
    return Optional.of(bits);
  }

  /** The address as a number, for the order of addresses. */
  long number() {
    return Integer.toUnsignedLong(bits(host).orElseThrow());
  }

  private static String dotted(int bits) {
    return (bits >>> 24)
        + "."
        + (bits >>> 16 & 255)
        + "."
        + (bits >>> 8 & 255)
        + "."
        + (bits & 255);
  }

  private static String width(int mask) {
    boolean whole = Integer.bitCount(mask) == Integer.numberOfLeadingZeros(~mask);
    return whole ? Integer.toString(Integer.bitCount(mask)) : dotted(mask);
  }
}
