package plumbline.fabric;

import java.util.Optional;
import plumbline.effective.SpanningTree;

/**
 * A switch as a spanning tree sees it.
 *
 * @param name its name
 * @param read whether its config was read
 * @param id its identifier; empty where the text does not tell it
 * @param asksForRoot whether its priority may be lower, because it asked for the root's place
 * @param joined what the switches have in common that are in one tree for certain
 */
record TreeBridge(
    String name, boolean read, Optional<BridgeId> id, boolean asksForRoot, String joined) {
  /** Whether this bridge beats another one for certain. */
  boolean beats(TreeBridge other) {
    if (id.isEmpty() || other.id.isEmpty() || other.asksForRoot) {
      return false;
    }
    boolean low = (other.id.get().priority() & 0xF000) <= SpanningTree.ROOT_PRIMARY_PRIORITY;
    return !(asksForRoot && low) && id.get().beats(other.id.get());
  }

  /** Whether it is in one tree with another bridge for certain, and beats it for certain. */
  boolean comesBefore(TreeBridge other) {
    return joined.equals(other.joined) && beats(other);
  }
}
