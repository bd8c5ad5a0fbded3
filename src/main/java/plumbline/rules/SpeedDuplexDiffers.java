package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** A port that is fixed where the design negotiates, negotiates where it is fixed, or the like. */
final class SpeedDuplexDiffers implements PortRule {
  private static final String AUTO = "auto";
  private static final String HALF = "half";

  private static final RuleInfo INFO =
      new RuleInfo(
          "speed-duplex-differs",
          Group.PORT,
          Severity.WEAKENS,
          "the speed or duplex of a port is set otherwise than its role says",
          "IEEE 802.3 clause 28 (auto-negotiation); common practice",
          Set.of("speed", "duplex"));

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
    port.wish(RoleKeys.SPEED).ifPresent(wish -> differences.add(speed(port, wish)));
    port.wish(RoleKeys.DUPLEX).ifPresent(wish -> differences.add(duplex(port, wish)));
    differences.tell(outcomes);
  }

  private static Differences.Asked speed(PortCase port, Wanted<String> wish) {
    String wanted = wish.value();
    Setting<String> speed = OnBundle.setting(port, Keys.SPEED, one -> one.is(wanted));
    String found = speed.value().orElse(AUTO);
    return asked(
        speed, wish, "speed " + wanted, "speed " + found, speedConsequence(port, wanted, found));
  }

  private static String speedConsequence(PortCase port, String wanted, String found) {
    String behind = Words.farEnd(port.port());
    if (found.equals(AUTO)) {
      return "The link takes whatever speed both ends can agree on: with a bad cable it comes up"
          + " slower than "
          + wanted
          + " Mb/s, and nobody is told."
          + (isSlow(wanted)
              ? " Where "
                  + behind
                  + " is fixed too and does not negotiate, this end takes half duplex."
              : "");
    }
    if (wanted.equals(AUTO)) {
      return "The port is held at "
          + found
          + " Mb/s whatever "
          + behind
          + " can do: if that is not among it, the link stays down"
          + (isSlow(found) && port.wish(RoleKeys.DUPLEX).isEmpty()
              ? "; if it negotiates and hears no answer, it takes half duplex and frames are lost"
                  + " under load."
              : ".");
    }
    return "Where "
        + behind
        + " is fixed at "
        + wanted
        + " Mb/s too, the link does not come up; where it negotiates, the link runs at "
        + found
        + " Mb/s.";
  }

  /** Half duplex is a matter of 10 and 100 Mb/s. */
  private static boolean isSlow(String megabits) {
    return megabits.equals("10") || megabits.equals("100");
  }

  private static Differences.Asked duplex(PortCase port, Wanted<String> wish) {
    String wanted = wish.value();
    Setting<String> duplex = OnBundle.setting(port, Keys.DUPLEX, one -> one.is(wanted));
    String found = duplex.value().orElse(AUTO);
    return asked(
        duplex,
        wish,
        "duplex " + wanted,
        "duplex " + found,
        duplexConsequence(Words.farEnd(port.port()), wanted, found));
  }

  /** An end that hears no negotiation takes half duplex (IEEE 802.3 clause 28). */
  private static String duplexConsequence(String behind, String wanted, String found) {
    if (found.equals(AUTO)) {
      return "Where "
          + behind
          + " is fixed too and does not negotiate, this end takes half duplex"
          + (wanted.equals(HALF) ? "." : ": frames are lost under load.");
    }
    if (found.equals(HALF)) {
      return "The port sends only while it receives nothing: towards an end that sends whenever it"
          + " likes, frames are lost under load.";
    }
    return wanted.equals(AUTO)
        ? "The port does not negotiate duplex: "
            + behind
            + ", which hears no answer, may take half duplex, and frames are lost under load."
        : "The port sends whenever it likes, while "
            + behind
            + " is at half duplex as designed: frames are lost under load.";
  }

  private static Differences.Asked asked(
      Setting<String> setting, Wanted<String> wish, String designed, String found, String so) {
    return new Differences.Asked(
        setting, setting.is(wish.value()), designed, found, so, Optional.empty(), wish.at());
  }
}
