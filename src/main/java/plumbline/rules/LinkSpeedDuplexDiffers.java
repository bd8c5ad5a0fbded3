package plumbline.rules;

import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.finding.Severity;
import plumbline.setting.Keys;

/** A cable between switches of which one end is fixed and the other is not, or fixed otherwise. */
final class LinkSpeedDuplexDiffers implements LinkRule {
  private static final String AUTO = "auto";

  private static final RuleInfo INFO =
      new RuleInfo(
          "link-speed-duplex-differs",
          Group.LINK,
          Severity.WEAKENS,
          "speed or duplex is set differently at the two ends of a link",
          "IEEE 802.3 clause 28 (auto-negotiation); common practice",
          Set.of("links.ends against each other"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(LinkCase link, Outcomes outcomes) {
    Comparison comparison = new Comparison(link.ends(), outcomes);
    for (TwoEnds cable : link.cables()) {
      comparison.ask(speed(), cable.first(), cable.second(), false);
      comparison.ask(duplex(), cable.first(), cable.second(), false);
    }
    comparison.close();
  }

  private static Comparison.Asked<String> speed() {
    return Comparison.Asked.of(
        "speed",
        Set.of(Keys.SPEED),
        end -> Comparison.orElse(OnBundle.setting(end, Keys.SPEED, any -> true), AUTO),
        end -> end.wish(RoleKeys.SPEED),
        speed -> "speed " + speed,
        LinkSpeedDuplexDiffers::speedConsequence);
  }

  private static String speedConsequence(String one, String other) {
    if (!one.equals(AUTO) && !other.equals(AUTO)) {
      return "The ends are fixed at different speeds: the link does not come up.";
    }
    String fixed = one.equals(AUTO) ? other : one;
    boolean slow = fixed.equals("10") || fixed.equals("100");
    return "One end is held at "
        + fixed
        + " Mb/s and does not say so: "
        + (slow
            ? "the other end, which hears no answer, takes half duplex, and frames are lost under"
                + " load."
            : "the other end waits for an answer, and the link may stay down after the next time"
                + " it is plugged or reloaded.");
  }

  private static Comparison.Asked<String> duplex() {
    return Comparison.Asked.of(
        "duplex",
        Set.of(Keys.DUPLEX),
        end -> Comparison.orElse(OnBundle.setting(end, Keys.DUPLEX, any -> true), AUTO),
        end -> end.wish(RoleKeys.DUPLEX),
        duplex -> "duplex " + duplex,
        LinkSpeedDuplexDiffers::duplexConsequence);
  }

  /** An end that hears no negotiation takes half duplex (IEEE 802.3 clause 28). */
  private static String duplexConsequence(String one, String other) {
    return one.equals(AUTO) || other.equals(AUTO)
        ? "The end that negotiates may hear no answer and take half duplex: frames are lost under"
            + " load."
        : "One end sends whenever it likes and the other only while it hears nothing: frames are"
            + " lost under load.";
  }
}
