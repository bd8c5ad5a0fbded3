package plumbline.fabric;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;

/**
 * The path cost of one end of a link: one value, or the values between which a speed without a
 * published cost must lie. Ends with the same name have the same cost, whatever it is.
 *
 * @param name what two ends share whose cost is the same
 * @param least lowest possible cost
 * @param most highest possible cost
 */
record CostRange(String name, long least, long most) {
  private static final long[] TABLE_SPEEDS = {10, 100, 1_000, 10_000};

  private static CostRange exactly(long cost) {
    return new CostRange(Long.toString(cost), cost, cost);
  }

  boolean isExact() {
    return least == most;
  }

  /** The cost in a tree at an end of a link; empty where the text does not bound it. */
  static Optional<CostRange> of(LinkEnd end, FabricLink link, TreeScope scope) {
    if (end.settings().isEmpty()) {
      return Optional.empty();
    }
    Setting<Long> configured = end.settings().get().inTree(Keys.COST_BY_TREE, scope::number);
    if (!configured.isDecided()) {
      return Optional.empty();
    }
    Setting<Boolean> wide = end.device().orElseThrow().tree().longCosts();
    return configured
        .value()
        .map(CostRange::exactly)
        .or(() -> wide.value().flatMap(isLong -> ofSpeed(speed(end, link), isLong)));
  }

  private static Optional<CostRange> ofSpeed(OptionalLong speed, boolean wide) {
    if (speed.isEmpty()) {
      return Optional.empty();
    }
    OptionalLong cost = (wide ? PathCost.LONG : PathCost.SHORT).of(speed.getAsLong());
    return cost.isPresent()
        ? Optional.of(exactly(cost.getAsLong()))
        : wide ? Optional.empty() : Optional.of(between(speed.getAsLong()));
  }

  /** Between the costs of the next published speeds; common practice: faster never costs more. */
  private static CostRange between(long speed) {
    long least = 1;
    long most = PathCost.SHORT.of(TABLE_SPEEDS[0]).getAsLong();
    for (long known : TABLE_SPEEDS) {
      long cost = PathCost.SHORT.of(known).getAsLong();
      if (known < speed) {
        most = cost;
      } else if (least == 1) {
        least = cost;
      }
    }
    return new CostRange("short cost of " + speed + " Mb/s", Math.min(least, most), most);
  }

  /** Of a bundle the sum of the cables that are up, where all of them are decided. */
  private static OptionalLong speed(LinkEnd end, FabricLink link) {
    if (!end.port().port().kind().isBundle()) {
      return LinkSpeed.of(end.settings().orElseThrow());
    }
    if (link.cables().isEmpty()
        || link.cables().stream().anyMatch(cable -> cable.up() == Truth.UNKNOWN)) {
      return OptionalLong.empty();
    }
    boolean isFirst = end.equals(link.first());
    LongStream speeds =
        link.cables().stream()
            .filter(cable -> cable.up() == Truth.YES)
            .map(cable -> isFirst ? cable.first() : cable.second())
            .mapToLong(
                name ->
                    end.device()
                        .flatMap(device -> device.port(name))
                        .map(LinkSpeed::of)
                        .orElse(OptionalLong.empty())
                        .orElse(-1));
    long[] all = speeds.toArray();
    boolean known = all.length > 0 && LongStream.of(all).allMatch(one -> one > 0);
    return known ? OptionalLong.of(LongStream.of(all).sum()) : OptionalLong.empty();
  }
}
