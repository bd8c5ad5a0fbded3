package plumbline.fabric;

import java.util.OptionalLong;

/**
 * Bridge identifier of one spanning tree (IEEE 802.1Q, bridge identifier): the lower one wins.
 *
 * @param priority 0..65535: the four configured bits and the extension, as one number
 * @param address the 48-bit bridge address, which decides between equal priorities; empty where it
 *     is not known
 */
public record BridgeId(int priority, OptionalLong address) {
  private static final int HIGHEST_PRIORITY = 0xFFFF;

  /** Refuses a priority outside its sixteen bits. */
  public BridgeId {
    if (priority < 0 || priority > HIGHEST_PRIORITY) {
      throw new IllegalArgumentException("bridge priority " + priority);
    }
  }

  /** A bridge whose address is known. */
  public static BridgeId of(int priority, long address) {
    return new BridgeId(priority, OptionalLong.of(address));
  }

  /** A bridge whose address is not known. */
  public static BridgeId of(int priority) {
    return new BridgeId(priority, OptionalLong.empty());
  }

  /** Whether this bridge beats another one for certain. */
  public boolean beats(BridgeId other) {
    if (priority != other.priority) {
      return priority < other.priority;
    }
    return address.isPresent()
        && other.address.isPresent()
        && address.getAsLong() < other.address.getAsLong();
  }
}
