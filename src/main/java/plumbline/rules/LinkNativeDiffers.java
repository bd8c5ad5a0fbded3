package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A link whose untagged frames leave in one VLAN and arrive in another. */
final class LinkNativeDiffers implements LinkRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "link-native-differs",
          Group.LINK,
          Severity.WEAKENS,
          "untagged frames of a link belong to different VLANs at its two ends",
          RuleInfo.COMMON_PRACTICE,
          Set.of("links.ends against each other"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(LinkCase link, Outcomes outcomes) {
    Comparison comparison = new Comparison(link.ends(), outcomes);
    if (link.bothIn(PortMode.TRUNK)) {
      ask(link, comparison, "native", Keys.NATIVE_VLAN, RoleKeys.NATIVE);
      comparison.ask(
          Comparison.Asked.of(
              "native tagging",
              Set.of(Keys.NATIVE_TAGGING),
              end -> end.get(Keys.NATIVE_TAGGING),
              end -> end.wish(RoleKeys.NATIVE_TAGGING),
              tagged -> tagged ? "native VLAN tagged" : "native VLAN untagged",
              (one, other) ->
                  tagging(one ? link.second() : link.first(), one ? link.first() : link.second())));
    } else if (link.bothIn(PortMode.ACCESS)) {
      ask(link, comparison, "access", Keys.ACCESS_VLAN, RoleKeys.ACCESS);
    }
    comparison.close();
  }

  private static void ask(
      LinkCase link,
      Comparison comparison,
      String kind,
      Key<VlanId> key,
      RoleKey<DesignVlan> role) {
    comparison.ask(
        new Comparison.Asked<>(
            kind + " VLAN",
            Set.of(key),
            end -> end.get(key),
            end -> wish(end, role),
            vlan -> Words.role(kind, link.first().design(), vlan),
            (one, other) -> consequence(link, one, other),
            (one, other) -> VlanSet.of(one.number(), other.number())));
  }

  private static Optional<Wanted<VlanId>> wish(PortCase end, RoleKey<DesignVlan> role) {
    return end.wish(role).map(wanted -> new Wanted<>(wanted.value().id(), wanted.at()));
  }

  private static String consequence(LinkCase link, VlanId one, VlanId other) {
    String first = link.first().at().name(one);
    String second = link.second().at().name(other);
    boolean trunks = link.bothIn(PortMode.TRUNK);
    for (PortCase end : link.ends().both(trunks)) {
      if (end.tagsNative()) {
        return "Untagged frames are dropped at "
            + TwoEnds.name(end)
            + ", which tags its native VLAN: what the other end sends untagged does not cross.";
      }
      VlanId own = end.equals(link.first()) ? one : other;
      if (end.bars(own)) {
        return "Untagged frames are dropped at "
            + TwoEnds.name(end)
            + ", where "
            + end.at().name(own)
            + " is not in the allowed list: "
            + (end.equals(link.first()) ? second : first)
            + " does not cross the link.";
      }
    }
    if (trunks && PerVlanTree.runs(link.first(), one) && PerVlanTree.runs(link.second(), other)) {
      return "The spanning trees of both ends run per VLAN and notice it: "
          + first
          + " is blocked at "
          + TwoEnds.name(link.first())
          + " and "
          + second
          + " at "
          + TwoEnds.name(link.second())
          + ", so that neither crosses the link.";
    }
    boolean perhaps =
        trunks && PerVlanTree.mayRun(link.first(), one) && PerVlanTree.mayRun(link.second(), other);
    return "Untagged frames of "
        + first
        + " arrive in "
        + second
        + ", and the other way round: "
        + (perhaps
            ? "unless a spanning tree per VLAN at both ends notices it and blocks both, "
            : "no spanning tree notices it, and ")
        + "they become one broadcast domain here.";
  }

  private static String tagging(PortCase untagged, PortCase tagged) {
    return "Untagged frames of "
        + TwoEnds.name(untagged)
        + " are dropped at "
        + TwoEnds.name(tagged)
        + ", which tags its native VLAN: that VLAN crosses in one direction at most.";
  }
}
