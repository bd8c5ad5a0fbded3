package plumbline.fabric;

import java.util.Comparator;

/**
 * Port identifier of spanning tree (IEEE 802.1Q, port identifier): the lower one wins.
 *
 * @param priority 0..255 as configured, by default 128
 * @param number the port's number on its bridge
 */
public record PortId(int priority, int number) implements Comparable<PortId> {
  /** Priority where no line sets one (RFC 4188, {@code dot1dStpPortPriority}). */
  public static final int DEFAULT_PRIORITY = 128;

  private static final Comparator<PortId> ORDER =
      Comparator.comparingInt(PortId::priority).thenComparingInt(PortId::number);

  @Override
  public int compareTo(PortId other) {
    return ORDER.compare(this, other);
  }
}
