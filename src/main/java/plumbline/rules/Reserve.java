package plumbline.rules;

import java.util.List;
import plumbline.effective.PortSettings;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/**
 * What is left of a bundle that has lost a cable.
 *
 * @param name the bundle
 * @param certain how many of its cables pass frames for certain
 * @param left how many of its cables may still pass frames
 * @param all how many it has
 * @param needed with how many it stays up
 */
record Reserve(String name, long certain, long left, int all, int needed) {
  /** What is left of a bundle by its members' own settings. */
  static Reserve of(PortSettings bundle, List<PortSettings> members) {
    long left =
        members.stream()
            .filter(one -> !one.get(Keys.SUSPENDED).is(true) && !one.get(Keys.SHUT).is(true))
            .count();
    return new Reserve(bundle.fullName(), left, left, members.size(), needed(bundle));
  }

  /** How many members a bundle needs for certain. */
  static int needed(PortSettings bundle) {
    Setting<Integer> least = bundle.get(Keys.MIN_LINKS);
    return Math.max(1, least.value().orElse(1));
  }

  /** Whether it is up for certain. */
  boolean isUp() {
    return certain >= needed;
  }

  /** Whether it is down for certain. */
  boolean isDown() {
    return left < needed;
  }

  /** The same as a clause. */
  String words() {
    if (left == 0) {
      return "no member is left that passes frames, and " + name + " is down.";
    }
    String cables = Words.count((int) left, "cable") + " of " + all;
    if (isDown()) {
      return cables
          + " "
          + Words.are((int) left)
          + " left, but "
          + name
          + " needs "
          + needed
          + " and is down.";
    }
    if (left == needed && all > left) {
      return left == 1
          ? "one cable is left of " + all + ", and its failure takes " + name + " down."
          : cables + " are left, and the failure of any takes " + name + " down.";
    }
    return name + " has one cable less.";
  }
}
