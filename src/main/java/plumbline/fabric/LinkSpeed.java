package plumbline.fabric;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import plumbline.effective.PortSettings;
import plumbline.port.PortKind;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** The speed of a link as far as config text tells it. */
final class LinkSpeed {
  private static final Map<PortKind, Long> NOMINAL =
      Map.ofEntries(
          Map.entry(PortKind.FAST_ETHERNET, 100L),
          Map.entry(PortKind.GIGABIT_ETHERNET, 1_000L),
          Map.entry(PortKind.TWO_GIGABIT_ETHERNET, 2_500L),
          Map.entry(PortKind.FIVE_GIGABIT_ETHERNET, 5_000L),
          Map.entry(PortKind.TEN_GIGABIT_ETHERNET, 10_000L),
          Map.entry(PortKind.TWENTY_FIVE_GIG_E, 25_000L),
          Map.entry(PortKind.FORTY_GIGABIT_ETHERNET, 40_000L),
          Map.entry(PortKind.FIFTY_GIG_E, 50_000L),
          Map.entry(PortKind.HUNDRED_GIG_E, 100_000L),
          Map.entry(PortKind.FOUR_HUNDRED_GIG_E, 400_000L));

  private LinkSpeed() {}

  /**
   * Speed of a port in Mb/s: as configured, or what its name says where the two ends are left to
   * find it, which a slower far end would lower. Empty where neither tells it.
   */
  static OptionalLong of(PortSettings port) {
    Setting<String> setting = port.get(Keys.SPEED);
    if (!setting.isDecided()) {
      return OptionalLong.empty();
    }
    Optional<Long> fixed =
        setting.value().filter(word -> word.matches("[0-9]{1,9}")).map(Long::parseLong);
    Long speed = fixed.orElse(NOMINAL.get(port.name().kind()));
    return speed == null ? OptionalLong.empty() : OptionalLong.of(speed);
  }
}
