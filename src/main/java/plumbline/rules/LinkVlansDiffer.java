package plumbline.rules;

import java.util.Set;
import plumbline.finding.Severity;
import plumbline.setting.PortMode;

/** A link of which one end lets VLANs through that the other end bars. */
final class LinkVlansDiffer implements LinkRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "link-vlans-differ",
          Group.LINK,
          Severity.WEAKENS,
          "one end of a link carries VLANs that the other end bars",
          RuleInfo.COMMON_PRACTICE,
          Set.of("links.ends against each other"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(LinkCase link, Outcomes outcomes) {
    if (link.bothIn(PortMode.TRUNK)) {
      Comparison comparison = new Comparison(link.ends(), outcomes);
      new CarriedLists(link.ends(), comparison, LinkVlansDiffer::consequence).compare();
      comparison.close();
    }
  }

  private static String consequence(CarriedLists.OneSided side) {
    return "Frames of "
        + Words.vlans(side.passing().design(), side.vlans())
        + " that leave "
        + TwoEnds.name(side.passing())
        + " are dropped at "
        + TwoEnds.name(side.barring())
        + (side.vlans().size() == 1 ? ": it does" : ": they do")
        + " not cross the link.";
  }
}
