package plumbline.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.Service;
import plumbline.fabric.Failure;
import plumbline.finding.Severity;
import plumbline.promise.FailureWords;
import plumbline.promise.ServiceSide;
import plumbline.promise.SinglePoint;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A service that one failure stops, or two VLANs that one failure takes although kept apart. */
final class ServiceSinglePoint implements FabricRule {
  private static final Failure NOTHING = new Failure.None();
  private static final RuleInfo INFO =
      new RuleInfo(
          "service-single-point",
          Group.SERVICE,
          Severity.WEAKENS,
          "one failure stops a service, or takes two VLANs that must not fail together",
          RuleInfo.COMMON_PRACTICE,
          Set.of("services", "vlans.apart-from"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    Map<Failure, Map<VlanId, List<String>>> told = told(network);
    for (Service service : network.design().services().values()) {
      judge(network, service, told).ifPresent(outcomes::add);
    }
    for (DesignVlan vlan : network.design().vlans().values()) {
      for (String other : vlan.apartFrom()) {
        judge(network, vlan, network.design().vlans().get(other)).ifPresent(outcomes::add);
      }
    }
  }

  /** What the findings about hosts say of each failure: it counts as repaired. */
  private static Map<Failure, Map<VlanId, List<String>>> told(FabricCase network) {
    Map<Failure, Map<VlanId, List<String>>> told = new LinkedHashMap<>();
    if (network.told().test("host-single-point")) {
      for (SinglePoint point : HostSinglePoint.of(network)) {
        told.put(point.failure(), point.who());
      }
    }
    return told;
  }

  private static Optional<Outcome> judge(
      FabricCase network, Service service, Map<Failure, Map<VlanId, List<String>>> told) {
    ServiceSide designed = network.designed().service(service);
    Subject subject = Subject.ofNetwork(service.name());
    if (designed.works(NOTHING) == Truth.NO) {
      return Optional.of(broken(designed, subject));
    }
    List<Failure> stopping = new ArrayList<>();
    boolean open = false;
    for (Failure failure : designed.suspects()) {
      Truth works = designed.works(failure);
      if (works == Truth.NO && !isTold(designed, failure, told)) {
        stopping.add(failure);
      }
      open |= works == Truth.UNKNOWN;
    }
    if (!stopping.isEmpty()) {
      return Optional.of(weak(network, designed, subject, stopping));
    }
    boolean sure = !open && network.repaired().service(service).works(NOTHING) == Truth.YES;
    return sure && network.sides().isWhole()
        ? Optional.of(new Outcome.Conforms(subject))
        : Optional.empty();
  }

  private static boolean isTold(
      ServiceSide service, Failure failure, Map<Failure, Map<VlanId, List<String>>> told) {
    Map<VlanId, List<String>> hosts = told.getOrDefault(failure, Map.of());
    long rest =
        service.lost(failure).stream()
            .filter(
                member ->
                    !hosts.getOrDefault(member.vlan().id(), List.of()).contains(member.host()))
            .count();
    return service.service().members().size() - rest >= service.service().needs();
  }

  private static Candidate broken(ServiceSide service, Subject subject) {
    return candidate(
            service,
            subject,
            "too few of its members work: without " + members(service, NOTHING),
            "It does not work.")
        .at(Severity.BREAKS);
  }

  private static Candidate weak(
      FabricCase network, ServiceSide service, Subject subject, List<Failure> stopping) {
    FailureWords words = new FailureWords(network.sides().designed());
    // a switch takes its gateway with it
    List<String> things =
        stopping.stream()
            .filter(
                failure ->
                    !(failure instanceof Failure.OfGateway gateway)
                        || stopping.stream()
                            .noneMatch(
                                other ->
                                    other instanceof Failure.OfSwitch down
                                        && down.name().equals(gateway.name())))
            .map(words::of)
            .toList();
    return candidate(
        service,
        subject,
        "it stops with " + Words.list(things),
        "When "
            + things.get(0)
            + " fails, it loses "
            + members(service, stopping.get(0))
            + " and stops."
            + (things.size() == 1
                ? ""
                : " So it does when "
                    + Words.either(things.subList(1, things.size()))
                    + " fails."));
  }

  private static Candidate candidate(
      ServiceSide service, Subject subject, String found, String so) {
    Service one = service.service();
    Set<VlanId> vlans = new LinkedHashSet<>();
    one.members().forEach(member -> vlans.add(member.vlan().id()));
    return Candidate.of(
            subject,
            "at least "
                + one.needs()
                + " of "
                + Words.count(one.members().size(), "member")
                + " left when one "
                + Words.either(one.survives().stream().map(Service.Failure::toString).toList())
                + " fails",
            found,
            so,
            List.of(),
            Optional.of(one.at()))
        .about(VlanSet.of(vlans));
  }

  private static String members(ServiceSide service, Failure failure) {
    return Words.list(
        service.lost(failure).stream()
            .map(member -> member.host() + " in " + member.vlan())
            .toList());
  }

  private static Optional<Outcome> judge(FabricCase network, DesignVlan one, DesignVlan other) {
    Subject subject = Subject.ofNetwork(one.name() + " apart from " + other.name());
    Set<Failure> both = new LinkedHashSet<>(network.designed().taking(one.id()));
    both.retainAll(network.designed().taking(other.id()));
    if (both.isEmpty()) {
      return network.sides().isWhole()
          ? Optional.of(new Outcome.Conforms(subject))
          : Optional.empty();
    }
    FailureWords words = new FailureWords(network.sides().designed());
    List<String> things = both.stream().map(words::of).toList();
    return Optional.of(
        Candidate.of(
                subject,
                "no single failure takes both " + one + " and " + other,
                "both go with " + Words.list(things),
                "When "
                    + things.get(0)
                    + " fails, nobody in "
                    + one
                    + " or "
                    + other
                    + " has what they need there: what was kept apart fails together.",
                List.of(),
                Optional.of(one.at()))
            .about(VlanSet.of(one.id().number(), other.id().number())));
  }
}
