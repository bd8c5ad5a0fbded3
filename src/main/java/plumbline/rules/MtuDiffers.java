package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;

/** A port that lets smaller or larger frames through than designed. */
final class MtuDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "mtu-differs",
          Group.PORT,
          Severity.WEAKENS,
          "a port has another MTU (largest frame payload) than its role says",
          RuleInfo.COMMON_PRACTICE,
          Set.of("mtu"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Integer>> wish = port.wish(RoleKeys.MTU);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    int wanted = wish.get().value();
    Setting<Integer> mtu = OnBundle.setting(port, Keys.MTU, one -> one.is(wanted));
    int found = mtu.value().orElse(wanted);
    Differences differences = new Differences(port);
    differences.add(
        new Differences.Asked(
            mtu,
            mtu.is(wanted),
            "MTU " + wanted,
            mtu.value().map(octets -> "MTU " + octets).orElse("no MTU"),
            found < wanted ? smaller(port, found) : larger(wanted),
            Optional.empty(),
            wish.get().at()));
    differences.tell(outcomes);
  }

  /** A bridge cannot fragment and does not answer: the frame is gone. */
  private static String smaller(PortCase port, int found) {
    String behind = Words.farEnd(port.port());
    return port.get(Keys.MODE).is(PortMode.ROUTED)
        ? "Packets of more than "
            + found
            + " bytes towards "
            + behind
            + " are fragmented or dropped."
        : "Frames of more than "
            + found
            + " bytes of payload to and from "
            + behind
            + " are dropped without a word to the sender; smaller ones pass, so that a ping"
            + " succeeds and a large transfer hangs.";
  }

  private static String larger(int wanted) {
    return "Frames of more than "
        + wanted
        + " bytes of payload pass here and are dropped by the next port that is as designed.";
  }
}
