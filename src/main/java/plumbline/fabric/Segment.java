package plumbline.fabric;

import java.util.List;

/**
 * What the ports on it hear each other through: a link, or a shared segment with more than two
 * ends.
 *
 * @param ports its ends
 */
public record Segment(List<End> ports) {
  /** Copies the list. */
  public Segment {
    ports = List.copyOf(ports);
  }

  /** A link between two ports. */
  public static Segment link(End one, End other) {
    return new Segment(List.of(one, other));
  }

  /**
   * A bridge's port on a segment.
   *
   * @param bridge index of the bridge
   * @param id the port's identifier
   * @param cost path cost, added to what is heard here
   */
  public record End(int bridge, PortId id, long cost) {
    /** Refuses a cost that would let a bridge hear itself as the better root. */
    public End {
      if (cost < 1) {
        throw new IllegalArgumentException("path cost " + cost);
      }
    }
  }
}
