package plumbline.rules;

import java.util.Set;
import plumbline.finding.Severity;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;

/** A link of which one end trunks and the other does not, or one routes and the other bridges. */
final class LinkModeDiffers implements LinkRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "link-mode-differs",
          Group.LINK,
          Severity.WEAKENS,
          "the two ends of a link are in different modes",
          RuleInfo.COMMON_PRACTICE,
          Set.of("links.ends against each other"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(LinkCase link, Outcomes outcomes) {
    Comparison comparison = new Comparison(link.ends(), outcomes);
    Comparison.Asked<PortMode> mode =
        Comparison.Asked.of(
            "mode",
            Set.of(Keys.MODE),
            link::mode,
            PortCase::wishedMode,
            one -> "mode " + one,
            (one, other) -> consequence(link, one, other));
    // a link whose ends do not understand each other is broken, whatever the role names
    comparison.ask(mode, link.first(), link.second(), true);
    comparison.close();
  }

  private static String consequence(LinkCase link, PortMode one, PortMode other) {
    if (one == PortMode.ROUTED || other == PortMode.ROUTED) {
      return "One end routes and the other bridges: no VLAN crosses the link.";
    }
    boolean first = one == PortMode.ACCESS;
    PortCase access = first ? link.first() : link.second();
    PortCase trunk = first ? link.second() : link.first();
    Setting<VlanId> here = access.get(Keys.ACCESS_VLAN);
    Setting<VlanId> there = trunk.settings().orElseThrow().untaggedIn(PortMode.TRUNK);
    String tagged =
        "Tagged frames are dropped at " + TwoEnds.name(access) + ", which is an access port";
    if (here.value().isEmpty() || !there.isDecided()) {
      return tagged + ".";
    }
    String own = access.at().name(here.value().get());
    if (there.value().isEmpty()) {
      return tagged + ", and the trunk takes no untagged ones: nothing crosses the link.";
    }
    return there.is(here.value().get())
        ? tagged
            + ": at most "
            + own
            + " crosses the link, untagged."
            + seen(access, here.value().get(), trunk, there.value().get())
        : tagged
            + "; untagged frames of "
            + own
            + " there are taken for "
            + trunk.at().name(there.value().get())
            + " at "
            + TwoEnds.name(trunk)
            + "."
            + seen(access, here.value().get(), trunk, there.value().get());
  }

  private static String seen(PortCase access, VlanId own, PortCase trunk, VlanId untagged) {
    return PerVlanTree.mayRun(access, own) && PerVlanTree.mayRun(trunk, untagged)
        ? " A spanning tree per VLAN that hears the trunk blocks the access port: then nothing"
            + " crosses."
        : "";
  }
}
