package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignPort.Place;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Effect;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;

/** A setting that a role names and that has no rule of its own. */
final class PortSettingDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "port-setting-differs",
          Group.PORT,
          Severity.WEAKENS,
          "a setting that the role of a port names is not as it says",
          "V-206654 for root guard; V-206656 for loop guard; layer 2 guide, unidirectional link detection; IEEE 802.1Q restrictedRole; IEEE 802.1AX for min-links; common practice",
          Set.of(
              "bpdu-filter: true",
              "bpdu-guard: false",
              "loop-guard",
              "min-links",
              "native-tagging",
              "negotiate: true",
              "port-security",
              "root-guard",
              "snooping-trust",
              "storm-control",
              "udld"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    if (!port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    Differences differences = new Differences(port);
    for (PortFlag flag : PortFlag.ALL) {
      port.wish(flag.role())
          .filter(wish -> isAsked(port, flag.role(), wish.value()))
          .ifPresent(wish -> differences.add(flag(port, flag, wish)));
    }
    port.wish(RoleKeys.MIN_LINKS)
        .ifPresent(wish -> minLinks(port).ifPresent(least -> add(least, wish, differences)));
    differences.tell(outcomes);
  }

  /** What another rule reports under the same wish, or the designed mode has no use for, is not. */
  private static boolean isAsked(PortCase port, RoleKey<Boolean> role, boolean wanted) {
    Optional<PortMode> mode = port.wishedMode().map(Wanted::value);
    return switch (role.name()) {
      case "bpdu-filter" -> wanted && port.mayFastStart();
      case "bpdu-guard" -> !wanted && port.port().place() != Place.LINK && port.mayFastStart();
      case "root-guard", "loop-guard" -> port.mayFastStart();
      case "negotiate" -> wanted && mode.filter(one -> one != PortMode.TRUNK).isEmpty();
      case "native-tagging" -> mode.filter(one -> one != PortMode.TRUNK).isEmpty();
      case "port-security" -> wanted || !isUplink(port, mode);
      default -> true;
    };
  }

  /** Behind a host's trunk or a link many addresses are normal: a limit there has its own rule. */
  private static boolean isUplink(PortCase port, Optional<PortMode> mode) {
    boolean trunk =
        mode.map(PortMode.TRUNK::equals).orElseGet(() -> port.get(Keys.MODE).is(PortMode.TRUNK));
    return port.port().place() == Place.LINK || (port.port().place() == Place.HOST && trunk);
  }

  private static Differences.Asked flag(PortCase port, PortFlag flag, Wanted<Boolean> wish) {
    boolean wanted = wish.value();
    Setting<?> setting = value(port, flag.key(), wanted);
    boolean on = isOn(setting);
    boolean idle = setting.value().filter(Effect.WITHOUT_EFFECT::equals).isPresent();
    return new Differences.Asked(
        setting,
        on == wanted,
        flag.words() + (wanted ? " on" : " off"),
        flag.words() + (on ? " on" : idle ? " without effect" : " off"),
        (wanted ? flag.lacking() : flag.unwanted()).formatted(Words.farEnd(port.port())),
        needs(port, flag),
        wish.at());
  }

  /** Spanning tree runs on the bundle; what watches a cable or limits frames, on members too. */
  private static Setting<?> value(PortCase port, Key<?> key, boolean wanted) {
    return PortFlag.OF_MEMBERS.contains(key)
        ? OnBundle.setting(port, key, one -> isOn(one) == wanted)
        : port.get(key);
  }

  private static boolean isOn(Setting<?> setting) {
    return setting.value().filter(one -> one.equals(true) || one.equals(Effect.ON)).isPresent();
  }

  private static Optional<PortMode> needs(PortCase port, PortFlag flag) {
    if (PortFlag.OF_TRUNKS.contains(flag.key())) {
      return Optional.of(PortMode.TRUNK);
    }
    boolean routed = port.get(Keys.MODE).is(PortMode.ROUTED);
    return port.modeToRepair().filter(any -> routed && PortFlag.OF_BRIDGES.contains(flag.key()));
  }

  /** The bundle's own limit; on a port that joins a bundle, that bundle's. */
  private static Optional<Setting<Integer>> minLinks(PortCase port) {
    Setting<Bundle> joined = port.get(Keys.BUNDLE);
    if (port.port().port().kind().isBundle() || !joined.isDecided()) {
      return Optional.of(port.get(Keys.MIN_LINKS));
    }
    return joined
        .value()
        .flatMap(
            bundle ->
                List.of(PortKind.PORT_CHANNEL, PortKind.LAG).stream()
                    .map(kind -> PortName.of(kind, bundle.id()))
                    .flatMap(name -> port.at().settings().port(name).stream())
                    .findFirst()
                    .map(stanza -> stanza.get(Keys.MIN_LINKS).because(joined.evidence()))
                    .or(() -> Optional.of(port.get(Keys.MIN_LINKS))));
  }

  private static void add(Setting<Integer> least, Wanted<Integer> wish, Differences differences) {
    int wanted = wish.value();
    int found = least.value().orElse(wanted);
    differences.add(
        new Differences.Asked(
            least,
            least.is(wanted),
            "min-links " + wanted,
            "min-links " + found,
            found < wanted
                ? "With fewer than "
                    + wanted
                    + " links the bundle stays up: all traffic squeezes through what is left and"
                    + " does not take another path."
                : "The bundle goes down with fewer than "
                    + found
                    + " links, although the design lets it run on "
                    + wanted
                    + ".",
            Optional.empty(),
            wish.at()));
  }
}
