package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignGateway;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Need;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/** A gateway of the design that cannot route for its VLAN now. */
final class GatewayNotWorking implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "gateway-not-working",
          Group.SWITCH,
          Severity.WEAKENS,
          "a gateway that the design places on the switch does not work",
          RuleInfo.COMMON_PRACTICE,
          Set.of("gateways"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    List<DesignGateway.Served> served = Routed.served(device);
    if (served.isEmpty()) {
      return;
    }
    routing(device, served).ifPresent(outcomes::add);
    served.forEach(one -> judge(device, one).ifPresent(outcomes::add));
  }

  /** That the switch does not route at all is one cause for all its gateways. */
  private static Optional<Outcome> routing(SwitchCase device, List<DesignGateway.Served> served) {
    Setting<Boolean> routing = device.settings().routing();
    VlanSet vlans = VlanSet.of(served.stream().map(one -> one.vlan().id()).toList());
    String words = Words.vlans(device.design(), vlans);
    String designed = "routing between VLANs, as a gateway for " + words;
    if (!routing.isDecided()) {
      return Optional.of(
          Undecided.of(
              device.subject(),
              device.cause(routing),
              "whether the switch routes: " + routing.reason().orElse("nothing says so"),
              designed,
              device.proofs(routing.evidence()),
              Optional.of(served.get(0).at())));
    }
    if (routing.is(true)) {
      return Optional.empty();
    }
    boolean line = routing.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
    return Optional.of(
        Candidate.of(
                device.subject(),
                designed,
                "the switch does not route between VLANs",
                "No gateway of this switch works: hosts in "
                    + words
                    + " cannot leave their VLAN"
                    + " through it."
                    + unfiltered(device, served),
                line ? device.proofs(routing.evidence()) : device.absence("no ip routing line"),
                Optional.of(served.get(0).at()))
            .about(vlans));
  }

  /** Gateways that would route without their filter; what keeps one shut is told with that. */
  private static String unfiltered(SwitchCase device, List<DesignGateway.Served> served) {
    List<String> open =
        served.stream()
            .filter(
                one ->
                    one.vlan().filter()
                        && Routed.in(device, one.vlan().id()).stream()
                            .anyMatch(GatewayNotWorking::routesUnfiltered))
            .map(one -> one.vlan().toString())
            .toList();
    return open.isEmpty()
        ? ""
        : " Once it routes, "
            + Words.list(open)
            + (open.size() == 1 ? " lies" : " lie")
            + " open to every network that it reaches: no packet filter stands on "
            + (open.size() == 1 ? "the gateway." : "the gateways.");
  }

  private static boolean routesUnfiltered(Gateway gateway) {
    return gateway.filtered().is(false)
        && gateway.has(Kind.ADDRESS) == Truth.YES
        && gateway.has(Kind.OPEN) == Truth.YES
        && gateway.has(Kind.PARENT) == Truth.YES;
  }

  /** Of several interfaces in the VLAN one that works is enough. */
  private static Optional<Outcome> judge(SwitchCase device, DesignGateway.Served served) {
    List<Gateway> interfaces = Routed.in(device, served.vlan().id());
    if (interfaces.isEmpty()) {
      return Optional.of(absent(device, served));
    }
    List<Optional<Outcome>> said =
        interfaces.stream().map(gateway -> judge(device, gateway, served)).toList();
    return said.stream()
        .filter(one -> one.filter(Candidate.class::isInstance).isEmpty())
        .findFirst()
        .orElse(said.get(0));
  }

  private static Outcome absent(SwitchCase device, DesignGateway.Served served) {
    SwitchSettings settings = device.settings();
    PortName port = PortName.of(PortKind.VLAN, served.vlan().id().number());
    Subject subject =
        Subject.ofPort(
            device.designed().name(), settings.fullName(port), port, served.vlan().name());
    String lack = "no interface in " + served.vlan();
    if (settings.isPortAbsent(port) == Truth.UNKNOWN) {
      boolean cut = settings.truncation().isPresent() && !settings.script();
      return Undecided.of(
          subject,
          cut ? Undecided.Cause.CUT : Undecided.Cause.TEXT,
          settings.whyPortsMayBeMissing().orElse(lack),
          GatewayFailure.designed(served),
          device.absence(lack),
          Optional.of(served.at()));
    }
    Evidence.Line removed = settings.removed().get(port);
    return Candidate.of(
            subject,
            GatewayFailure.designed(served),
            lack,
            GatewayFailure.consequence(device, served),
            removed != null ? device.proofs(List.of(removed)) : device.absence(lack),
            Optional.of(served.at()))
        .about(VlanSet.of(served.vlan().id().number()));
  }

  private static Optional<Outcome> judge(
      SwitchCase device, Gateway gateway, DesignGateway.Served served) {
    List<Need> failing =
        gateway.needs().stream()
            .filter(need -> need.holds() == Truth.NO && need.kind() != Kind.ROUTING)
            .toList();
    Truth address =
        gateway.has(Kind.ADDRESS) == Truth.YES
            ? served.address().map(gateway::answersTo).orElse(Truth.YES)
            : Truth.YES;
    if (!failing.isEmpty() || address == Truth.NO) {
      return Optional.of(GatewayFailure.of(device, gateway, served, failing, address));
    }
    Optional<Need> open =
        gateway.needs().stream()
            .filter(need -> need.holds() == Truth.UNKNOWN && need.kind() != Kind.ROUTING)
            .findFirst();
    if (open.isPresent()) {
      return Optional.of(
          Routed.undecided(
              device, gateway, open.get(), GatewayFailure.designed(served), served.at()));
    }
    if (address == Truth.UNKNOWN) {
      Need unclear =
          new Need(
              Kind.ADDRESS, address, "whether it has that address", gateway.addresses().evidence());
      return Optional.of(
          Routed.undecided(device, gateway, unclear, GatewayFailure.designed(served), served.at()));
    }
    return gateway.has(Kind.ROUTING) == Truth.YES
        ? Optional.of(new Outcome.Conforms(Routed.subject(device, gateway)))
        : Optional.empty();
  }
}
