package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.DesignGateway;
import plumbline.design.DesignVlan;
import plumbline.fabric.VlanGraph.Point;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Gateways of one VLAN on several switches that do not back each other up. */
final class GatewayNotPaired implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "gateway-not-paired",
          Group.FABRIC,
          Severity.WEAKENS,
          "two gateways of a VLAN do not back each other up",
          "RFC 5798, sections 5.2.4, 6.1, 6.4 and 7.1; common practice",
          Set.of("gateways.active"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    for (DesignVlan vlan : network.design().vlans().values()) {
      List<GatewaySide> sides = sides(network, vlan);
      if (sides.size() > 1) {
        Optional<GatewaySide> active = active(network, sides);
        GatewaySide lead = lead(sides, active);
        for (GatewaySide other : sides) {
          if (!other.equals(lead)) {
            boolean before = sides.indexOf(lead) < sides.indexOf(other);
            outcome(network, before ? lead : other, before ? other : lead, active)
                .ifPresent(outcomes::add);
          }
        }
      }
    }
  }

  /** The gateways that were read and may work, in design order. */
  private static List<GatewaySide> sides(FabricCase network, DesignVlan vlan) {
    return network.design().gateways().values().stream()
        .filter(gateway -> gateway.outside().isEmpty())
        .flatMap(gateway -> network.at(gateway.name()).stream())
        .flatMap(device -> GatewaySide.of(device, vlan.id()).stream())
        .toList();
  }

  /** The one that the design makes active: by name, or because the only other one is not to be. */
  private static Optional<GatewaySide> active(FabricCase network, List<GatewaySide> sides) {
    VlanId vlan = sides.get(0).gateway().vlan();
    List<DesignGateway.Served> all =
        network.design().gateways().values().stream()
            .flatMap(gateway -> gateway.vlans().stream())
            .filter(served -> served.vlan().id().equals(vlan))
            .toList();
    if (all.stream().anyMatch(served -> served.active().orElse(false))) {
      return sides.stream().filter(side -> side.served().active().orElse(false)).findFirst();
    }
    List<DesignGateway.Served> left =
        all.stream().filter(served -> served.active().isEmpty()).toList();
    return all.size() == 2 && left.size() == 1
        ? sides.stream().filter(side -> side.served().equals(left.get(0))).findFirst()
        : Optional.empty();
  }

  /** The one that the others are held against: like most, and of these the active one. */
  private static GatewaySide lead(List<GatewaySide> sides, Optional<GatewaySide> active) {
    Map<List<String>, Long> alike =
        sides.stream()
            .collect(Collectors.groupingBy(GatewayNotPaired::groups, Collectors.counting()));
    long most = alike.values().stream().max(Long::compare).orElseThrow();
    List<GatewaySide> best =
        sides.stream().filter(side -> alike.get(groups(side)) == most).toList();
    return active.filter(best::contains).orElse(best.get(0));
  }

  private static List<String> groups(GatewaySide side) {
    return side.gateway().groups().stream()
        .map(group -> GatewaySide.words(group) + " " + group.version().value())
        .toList();
  }

  private static Optional<Outcome> outcome(
      FabricCase network, GatewaySide first, GatewaySide second, Optional<GatewaySide> active) {
    Optional<GatewaySide> wanted = active.filter(List.of(first, second)::contains);
    List<PairGap> gaps = new ArrayList<>(GatewayPair.gaps(first, second));
    gaps.addAll(GatewayAddresses.gaps(first, second));
    gaps.addAll(new GatewayRanks(first, second, wanted).gaps());
    Truth joined = joined(network, first, second);
    if (gaps.stream().noneMatch(gap -> gap.severity() == Severity.WEAKENS)
        && joined == Truth.NO
        && isElected(first)
        && !isTold(network, first.served().vlan())) {
      gaps.add(0, parted(first, second));
    }
    if (!gaps.isEmpty()) {
      return Optional.of(candidate(first, second, wanted, gaps));
    }
    Optional<Outcome> open =
        Stream.of(first, second)
            .flatMap(side -> open(side, designed(first, second, wanted)).stream())
            .findFirst();
    boolean unclear = joined == Truth.UNKNOWN && isElected(first);
    // what leaves the VLAN's way open is told where it is, or is outside the design
    return open.isPresent() || unclear ? open : Optional.of(new Outcome.Conforms(first.subject()));
  }

  /** Whether frames of the VLAN pass between the two, narrower findings repaired. */
  private static Truth joined(FabricCase network, GatewaySide first, GatewaySide second) {
    return network.designed().side(first.gateway().vlan()).joins(point(first), point(second));
  }

  /** A VLAN that must be one domain is told of as such. */
  private static boolean isTold(FabricCase network, DesignVlan vlan) {
    return vlan.oneDomain() && network.told().test("broadcast-domain-split");
  }

  private static Point point(GatewaySide side) {
    return new Point(side.name(), side.gateway().port());
  }

  /** Whether one of both is active by what they tell each other; anycast ones do not talk. */
  private static boolean isElected(GatewaySide side) {
    return side.gateway().groups().stream()
        .anyMatch(group -> group.kind() != Redundancy.Kind.ANYCAST);
  }

  private static PairGap parted(GatewaySide first, GatewaySide second) {
    return new PairGap(
        PairGap.End.NEITHER,
        first.served().vlan() + " does not pass between " + first.name() + " and " + second.name(),
        "",
        "They do not hear each other: both are active, each for its own part of the VLAN, and"
            + " replies that come in through the wrong one are lost.",
        List.of(),
        List.of());
  }

  private static Candidate candidate(
      GatewaySide first, GatewaySide second, Optional<GatewaySide> active, List<PairGap> gaps) {
    boolean turned =
        gaps.stream()
            .map(PairGap::departs)
            .filter(end -> end != PairGap.End.NEITHER)
            .findFirst()
            .filter(PairGap.End.SECOND::equals)
            .isPresent();
    GatewaySide near = turned ? second : first;
    GatewaySide far = turned ? first : second;
    List<Proof> proofs = new ArrayList<>(near.proofs(evidence(gaps, turned)));
    proofs.addAll(far.proofs(evidence(gaps, !turned)));
    boolean untidy = gaps.stream().allMatch(gap -> gap.severity() == Severity.UNTIDY);
    Candidate candidate =
        Candidate.of(
                near.subject(),
                designed(first, second, active),
                gaps.stream().map(gap -> found(gap, turned, far)).collect(Collectors.joining("; ")),
                gaps.stream().map(PairGap::so).distinct().collect(Collectors.joining(" ")),
                proofs,
                Optional.of(active.orElse(near).served().at()))
            .about(VlanSet.of(near.gateway().vlan().number()))
            .beside(List.of(far.place()));
    return untidy ? candidate.at(Severity.UNTIDY) : candidate;
  }

  private static List<Evidence> evidence(List<PairGap> gaps, boolean second) {
    return gaps.stream()
        .flatMap(gap -> (second ? gap.second() : gap.first()).stream())
        .distinct()
        .toList();
  }

  private static String found(PairGap gap, boolean turned, GatewaySide far) {
    if (gap.there().isEmpty()) {
      return gap.here();
    }
    return (turned ? gap.there() : gap.here())
        + "; "
        + (turned ? gap.here() : gap.there())
        + " at "
        + far.place();
  }

  private static String designed(
      GatewaySide first, GatewaySide second, Optional<GatewaySide> active) {
    return "gateways for "
        + first.served().vlan()
        + " on "
        + first.name()
        + " and "
        + second.name()
        + " that back each other up"
        + active.map(side -> ", " + side.name() + " active").orElse("");
  }

  private static Optional<Outcome> open(GatewaySide side, String designed) {
    Optional<Setting<?>> open = side.open();
    Optional<String> why =
        open.map(setting -> setting.reason().orElse("the text does not tell"))
            .or(side::openAddress);
    return why.map(
        reason ->
            Undecided.of(
                side.subject(),
                open.map(side.at()::cause).orElse(Undecided.Cause.OWN),
                reason,
                designed,
                side.proofs(
                    open
                        .<List<? extends Evidence>>map(Setting::evidence)
                        .orElse(side.gateway().addresses().evidence())
                        .stream()
                        .<Evidence>map(one -> one)
                        .toList()),
                Optional.of(side.served().at())));
  }
}
