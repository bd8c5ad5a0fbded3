package plumbline.rules;

import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.finding.Severity;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;

/** A link whose ends take frames of different size. */
final class LinkMtuDiffers implements LinkRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "link-mtu-differs",
          Group.LINK,
          Severity.WEAKENS,
          "the two ends of a link have different MTUs (largest frame payload)",
          RuleInfo.COMMON_PRACTICE,
          Set.of("links.ends against each other"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(LinkCase link, Outcomes outcomes) {
    Comparison comparison = new Comparison(link.ends(), outcomes);
    comparison.ask(
        Comparison.Asked.of(
            "MTU",
            Set.of(Keys.MTU),
            end -> OnBundle.setting(end, Keys.MTU, any -> true),
            end -> end.wish(RoleKeys.MTU),
            octets -> "MTU " + octets,
            (one, other) -> consequence(link, one, other)));
    comparison.close();
  }

  /** A bridge cannot fragment and does not answer: the frame is gone. */
  private static String consequence(LinkCase link, int one, int other) {
    PortCase small = one < other ? link.first() : link.second();
    int size = Math.min(one, other);
    return small.get(Keys.MODE).is(PortMode.ROUTED)
        ? "Packets of more than "
            + size
            + " bytes from the other end are dropped at "
            + TwoEnds.name(small)
            + ", and routing neighbours that compare their MTUs do not come up."
        : "Frames of more than "
            + size
            + " bytes of payload are dropped at "
            + TwoEnds.name(small)
            + " without a word to the sender; smaller ones cross, so that a ping succeeds and a"
            + " large transfer hangs.";
  }
}
