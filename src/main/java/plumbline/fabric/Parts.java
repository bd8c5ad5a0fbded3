package plumbline.fabric;

import java.util.Arrays;
import java.util.function.IntPredicate;

/** Boxes that joins put into parts. */
final class Parts {
  private static final int NONE = -1;

  private final int[] above;

  /** Every box is a part of its own, but those that are down. */
  Parts(int count, IntPredicate isDown) {
    above = new int[count];
    Arrays.setAll(above, box -> isDown.test(box) ? NONE : box);
  }

  /** Makes the parts of two boxes one, unless one of them is down. */
  void join(Connectivity.Edge edge) {
    if (above[edge.one()] != NONE && above[edge.other()] != NONE) {
      above[find(edge.one())] = find(edge.other());
    }
  }

  /** The part of each box, as the number of one box of it; -1 for a box that is down. */
  int[] all() {
    int[] parts = new int[above.length];
    Arrays.setAll(parts, box -> above[box] == NONE ? NONE : find(box));
    return parts;
  }

  private int find(int box) {
    int at = box;
    while (above[at] != at) {
      above[at] = above[above[at]];
      at = above[at];
    }
    return at;
  }
}
