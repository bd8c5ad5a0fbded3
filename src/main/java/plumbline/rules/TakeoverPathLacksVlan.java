package plumbline.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignPort;
import plumbline.fabric.FabricLink;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.promise.FailureWords;
import plumbline.promise.SinglePoint;
import plumbline.rules.Outcome.Candidate;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A failure after which spanning tree leads over a link that does not carry a VLAN. */
final class TakeoverPathLacksVlan implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "takeover-path-lacks-vlan",
          Group.FABRIC,
          Severity.WEAKENS,
          "the path that spanning tree takes after a failure does not carry a VLAN",
          "IEEE 802.1Q, multiple spanning tree; common practice",
          Set.of());

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    Map<Integer, List<SinglePoint>> takeovers = new HashMap<>();
    for (SinglePoint point : network.designed().singlePoints()) {
      point
          .takeover()
          .ifPresent(link -> takeovers.computeIfAbsent(link, any -> new ArrayList<>()).add(point));
    }
    List<FabricLink> links = network.sides().designed().links();
    for (int index = 0; index < links.size(); index++) {
      FabricLink link = links.get(index);
      List<SinglePoint> points = takeovers.getOrDefault(index, List.of());
      if (!points.isEmpty()) {
        outcomes.add(candidate(network, link, points));
      } else if (network.sides().isWhole()) {
        outcomes.conforms(subject(link));
      }
    }
  }

  private static Subject subject(FabricLink link) {
    DesignPort end = link.first().port();
    return Subject.ofPort(
        end.switchName(), Barriers.fullName(link.first()), end.port(), end.subject());
  }

  private static Candidate candidate(
      FabricCase network, FabricLink link, List<SinglePoint> points) {
    FailureWords words = new FailureWords(network.sides().designed());
    VlanSet vlans =
        points.stream()
            .map(point -> VlanSet.of(point.who().keySet()))
            .reduce(VlanSet.NONE, VlanSet::plus);
    List<String> things = points.stream().map(point -> words.of(point.failure())).toList();
    String others =
        things.size() == 1
            ? ""
            : " So it is when " + Words.either(things.subList(1, things.size())) + " fails.";
    return Candidate.of(
            subject(link),
            "the path that takes over when one thing fails carries "
                + Words.vlans(network.design(), vlans),
            "no " + Words.vlans(network.design(), vlans) + " here",
            "When "
                + things.get(0)
                + " fails, this link takes over and does not carry "
                + Words.vlans(network.design(), vlans)
                + ": "
                + HostSinglePoint.taken(words, points.get(0).who())
                + "."
                + others,
            Barriers.proofs(network, link, new VlanId(vlans.ids().min().orElseThrow())),
            Optional.of(link.design().at()))
        .about(vlans)
        .beside(
            List.of(
                Place.ofPort(link.second().port().switchName(), Barriers.fullName(link.second()))));
  }
}
