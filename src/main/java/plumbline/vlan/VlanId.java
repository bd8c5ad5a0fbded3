package plumbline.vlan;

/**
 * A VLAN identifier as IEEE 802.1Q allows it on a port: 1 to 4094 (0 and 4095 are reserved on the
 * wire; IEEE YANG module {@code ieee802-dot1q-types}, typedef {@code vlanid}).
 */
public record VlanId(int number) implements Comparable<VlanId> {
  /** The lowest identifier. */
  public static final int MIN = 1;

  /** The highest identifier. */
  public static final int MAX = 4094;

  /** The default VLAN (default PVID of IEEE 802.1Q). */
  public static final VlanId DEFAULT = new VlanId(1);

  /**
   * Makes an identifier.
   *
   * @throws IllegalArgumentException if the number is not in 1..4094
   */
  public VlanId {
    if (!isValid(number)) {
      throw new IllegalArgumentException("VLAN identifier " + number + " is not in 1..4094");
    }
  }

  /** Says whether a number is a VLAN identifier. */
  public static boolean isValid(int number) {
    return number >= MIN && number <= MAX;
  }

  @Override
  public int compareTo(VlanId other) {
    return Integer.compare(number, other.number);
  }

  @Override
  public String toString() {
    return Integer.toString(number);
  }
}
