package plumbline.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import plumbline.design.DesignPort;
import plumbline.design.Host;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Failure;
import plumbline.fabric.LinkEnd;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.promise.FailureWords;
import plumbline.promise.SinglePoint;
import plumbline.rules.Outcome.Candidate;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** One thing whose failure takes a VLAN from hosts that have two ports into it. */
final class HostSinglePoint implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "host-single-point",
          Group.FABRIC,
          Severity.WEAKENS,
          "one failure takes a VLAN from a host that is plugged in twice",
          RuleInfo.COMMON_PRACTICE,
          Set.of("hosts.pairs", "switches.stack"));

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
              .flatMap(point -> point.who().values().stream())
              .anyMatch(hosts -> hosts.contains(host.name()));
      if (!host.pairs().isEmpty() && !hit && network.sides().isWhole()) {
        outcomes.conforms(Subject.ofNetwork(host.name()));
      }
    }
  }

  /**
   * The things that take a VLAN from hosts with pairs, without another path that takes over. Pairs
   * that end on one switch anyway are told there.
   */
  static List<SinglePoint> of(FabricCase network) {
    List<SinglePoint> points = new ArrayList<>();
    for (SinglePoint point : network.designed().singlePoints()) {
      Map<VlanId, List<String>> hosts = new TreeMap<>();
      point
          .who()
          .forEach(
              (vlan, who) -> {
                List<String> paired =
                    who.stream().filter(name -> isPaired(network, name, vlan)).toList();
                if (!paired.isEmpty()) {
                  hosts.put(vlan, paired);
                }
              });
      if (point.takeover().isEmpty() && !hosts.isEmpty()) {
        points.add(new SinglePoint(point.failure(), point.takeover(), hosts));
      }
    }
    return points;
  }

  /** Whether both ports of some pair are to carry the VLAN. */
  private static boolean isPaired(FabricCase network, String name, VlanId vlan) {
    Host host = network.design().hosts().get(name);
    return host != null
        && host.pairs().stream()
            .anyMatch(
                pair -> {
                  DesignPort one = host.ports().get(pair.first()).to();
                  DesignPort other = host.ports().get(pair.second()).to();
                  boolean apart =
                      !PairOnOneSwitch.box(network.design(), one)
                          .equals(PairOnOneSwitch.box(network.design(), other));
                  return one.role().neededVlans().contains(vlan)
                      && other.role().neededVlans().contains(vlan)
                      && (apart || !network.told().test("pair-on-one-switch"));
                });
  }

  private static Candidate candidate(FabricCase network, SinglePoint point) {
    FailureWords words = new FailureWords(network.sides().designed());
    String what = words.of(point.failure());
    return Candidate.of(
            subject(network, point.failure(), what),
            "hosts with two ports into a VLAN keep it when one thing fails",
            "they lose it with " + what,
            "When " + what + " fails, " + taken(words, point.who()) + ".",
            List.of(),
            at(network, point.failure()))
        .about(VlanSet.of(point.who().keySet()));
  }

  private static Subject subject(FabricCase network, Failure failure, String what) {
    if (failure instanceof Failure.OfSwitch down) {
      Subject whole = Subject.ofSwitch(down.name());
      return new Subject(whole.place(), whole.port(), down.member().isPresent() ? what : "");
    }
    List<FabricLink> links = network.sides().designed().links();
    if (failure instanceof Failure.OfLink cut) {
      LinkEnd end = links.get(cut.link()).first();
      return port(network, end.port(), end.port().port());
    }
    if (failure instanceof Failure.OfCable cut) {
      FabricLink link = links.get(cut.link());
      return port(network, link.first().port(), link.cables().get(cut.cable()).first());
    }
    return failure instanceof Failure.OfPort cut
        ? network.design().portsOf(cut.switchName()).stream()
            .filter(port -> port.port().equals(cut.port()))
            .map(port -> port(network, port, cut.port()))
            .findFirst()
            .orElse(Subject.ofNetwork(what))
        : Subject.ofNetwork(what);
  }

  private static Subject port(FabricCase network, DesignPort port, PortName name) {
    String fullName =
        network
            .sides()
            .designed()
            .settings(port.switchName())
            .map(device -> device.fullName(name))
            .orElse(name.toString());
    return Subject.ofPort(port.switchName(), fullName, name, port.subject());
  }

  private static Optional<Position> at(FabricCase network, Failure failure) {
    if (failure instanceof Failure.OfSwitch down) {
      return Optional.of(network.design().switches().get(down.name()).at());
    }
    List<FabricLink> links = network.sides().designed().links();
    if (failure instanceof Failure.OfLink cut) {
      return Optional.of(links.get(cut.link()).design().at());
    }
    return failure instanceof Failure.OfCable cut
        ? Optional.of(links.get(cut.link()).design().at())
        : Optional.empty();
  }

  /** Who loses which VLANs, as clauses. */
  static String taken(FailureWords words, Map<VlanId, List<String>> all) {
    Map<List<String>, List<String>> vlans = new LinkedHashMap<>();
    all.forEach(
        (vlan, who) -> vlans.computeIfAbsent(who, any -> new ArrayList<>()).add(words.vlan(vlan)));
    return vlans.entrySet().stream()
        .map(
            one ->
                Words.list(one.getKey())
                    + (one.getKey().size() == 1 ? " loses " : " lose ")
                    + Words.list(one.getValue()))
        .collect(Collectors.joining("; "));
  }
}
