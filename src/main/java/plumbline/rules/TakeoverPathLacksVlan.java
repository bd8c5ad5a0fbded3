package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.finding.Severity;
import plumbline.promise.FailureWords;
import plumbline.promise.SinglePoint;
import plumbline.rules.Outcome.Candidate;
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
          Set.of("hosts.pairs under failures"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    List<SinglePoint> points =
        network.designed().singlePoints(any -> true).stream()
            .filter(SinglePoint::takeover)
            .toList();
    points.forEach(point -> outcomes.add(candidate(network, point)));
    if (points.isEmpty() && network.sides().isWhole() && !network.design().hosts().isEmpty()) {
      outcomes.conforms(Subject.ofNetwork("every path"));
    }
  }

  private static Candidate candidate(FabricCase network, SinglePoint point) {
    FailureWords words = new FailureWords(network.sides().designed());
    String what = words.of(point.failure());
    return Candidate.of(
            Subject.ofNetwork(what),
            "the path that takes over when " + what + " fails carries the same VLANs",
            "it does not carry "
                + Words.vlans(network.design(), VlanSet.of(point.hosts().keySet())),
            "When "
                + what
                + " fails, spanning tree leads over links without the VLAN, though others carry"
                + " it: "
                + HostSinglePoint.taken(words, point.hosts())
                + ".",
            List.of(),
            Optional.empty())
        .about(VlanSet.of(point.hosts().keySet()));
  }
}
