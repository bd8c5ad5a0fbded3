package plumbline.fabric;

import java.util.Map;
import java.util.OptionalLong;

/** Path cost of a port whose cost is not configured, by the speed of its link. */
public enum PathCost {
  /** 16 bits: the table of IEEE 802.1D-1998, 8-5. Other speeds have no published value. */
  SHORT {
    @Override
    public OptionalLong of(long megabits) {
      Integer cost = TABLE.get(megabits);
      return cost == null ? OptionalLong.empty() : OptionalLong.of(cost);
    }
  },
  /** 32 bits: 20,000,000,000 through the speed in kb/s (IEEE 802.1D-2004, 17.14, from memory). */
  LONG {
    @Override
    public OptionalLong of(long megabits) {
      return megabits <= 0
          ? OptionalLong.empty()
          : OptionalLong.of(Math.max(1, TERABITS_20 / megabits));
    }
  };

  private static final Map<Long, Integer> TABLE = Map.of(10L, 100, 100L, 19, 1_000L, 4, 10_000L, 2);
  private static final long TERABITS_20 = 20_000_000;

  /**
   * The cost of a link.
   *
   * @param megabits its speed in Mb/s, of a bundle the sum of its members
   * @return empty where no published rule gives one
   */
  public abstract OptionalLong of(long megabits);
}
