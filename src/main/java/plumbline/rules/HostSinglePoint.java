package plumbline.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.Host;
import plumbline.fabric.Failure;
import plumbline.finding.Severity;
import plumbline.promise.FailureWords;
import plumbline.promise.SinglePoint;
import plumbline.rules.Outcome.Candidate;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** One thing whose failure takes a VLAN from hosts that have two ports into it. */
final class HostSinglePoint implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "host-single-point",
          Group.FABRIC,
          Severity.WEAKENS,
          "one failure takes a VLAN from a host that is plugged in twice",
          RuleInfo.COMMON_PRACTICE,
          Set.of("hosts.pairs under failures"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    List<SinglePoint> points = of(network);
    points.forEach(point -> outcomes.add(candidate(network, point)));
    for (Host host : network.design().hosts().values()) {
      boolean hit =
          points.stream()
              .flatMap(point -> point.hosts().values().stream())
              .anyMatch(hosts -> hosts.contains(host.name()));
      if (!host.pairs().isEmpty() && !hit && network.sides().isWhole()) {
        outcomes.conforms(Subject.ofNetwork(host.name()));
      }
    }
  }

  /** The single points, those of pairs left aside that end on one switch anyway. */
  static List<SinglePoint> of(FabricCase network) {
    return network
        .designed()
        .singlePoints(pair -> !network.told().test("pair-on-one-switch") || isApart(network, pair))
        .stream()
        .filter(point -> !point.takeover())
        .toList();
  }

  private static boolean isApart(FabricCase network, Host.Pair pair) {
    return network.design().hosts().values().stream()
        .filter(host -> host.pairs().contains(pair))
        .noneMatch(
            host ->
                PairOnOneSwitch.box(network.design(), host.ports().get(pair.first()).to())
                    .equals(
                        PairOnOneSwitch.box(
                            network.design(), host.ports().get(pair.second()).to())));
  }

  private static Candidate candidate(FabricCase network, SinglePoint point) {
    FailureWords words = new FailureWords(network.sides().designed());
    String what = words.of(point.failure());
    String taken = taken(words, point.hosts());
    return Candidate.of(
            new Subject(Optional.empty(), Optional.empty(), what),
            "hosts with two ports into a VLAN keep it when one thing fails",
            "they lose it with " + what,
            "When " + what + " fails, " + taken + ".",
            List.of(),
            at(network, point))
        .about(VlanSet.of(point.hosts().keySet()));
  }

  private static Optional<plumbline.yaml.Position> at(FabricCase network, SinglePoint point) {
    if (point.failure() instanceof Failure.OfSwitch down) {
      return Optional.of(network.design().switches().get(down.name()).at());
    }
    if (point.failure() instanceof Failure.OfLink cut) {
      return Optional.of(network.sides().designed().links().get(cut.link()).design().at());
    }
    if (point.failure() instanceof Failure.OfCable cut) {
      return Optional.of(network.sides().designed().links().get(cut.link()).design().at());
    }
    return Optional.empty();
  }

  /** Who loses which VLANs, as clauses. */
  static String taken(FailureWords words, Map<VlanId, List<String>> hosts) {
    Map<List<String>, List<String>> vlans = new java.util.LinkedHashMap<>();
    hosts.forEach(
        (vlan, who) ->
            vlans.computeIfAbsent(who, any -> new java.util.ArrayList<>()).add(words.vlan(vlan)));
    return vlans.entrySet().stream()
        .map(
            one ->
                Words.list(one.getKey())
                    + (one.getKey().size() == 1 ? " loses " : " lose ")
                    + Words.list(one.getValue()))
        .collect(java.util.stream.Collectors.joining("; "));
  }
}
