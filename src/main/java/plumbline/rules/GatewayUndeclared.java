package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignGateway;
import plumbline.design.DesignVlan;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.effective.Gateway;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** A gateway on a switch on which the design places none for that VLAN. */
final class GatewayUndeclared implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "gateway-undeclared",
          Group.SWITCH,
          Severity.WEAKENS,
          "the switch routes a VLAN for which the design places no gateway on it",
          RuleInfo.COMMON_PRACTICE,
          Set.of("gateways"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** A design that names no gateway at all says nothing about where they are. */
  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    if (device.design().gateways().isEmpty()) {
      return;
    }
    List<Outcome> said = new ArrayList<>();
    for (DesignVlan vlan : device.design().vlans().values()) {
      // a forbidden gateway and an address in an unused VLAN have rules of their own
      boolean asked =
          vlan.gateway() != GatewayNeed.FORBIDDEN
              && !vlan.unused()
              && Routed.served(device, vlan.id()).isEmpty()
              && !Routed.isManagement(device, vlan.id());
      if (asked) {
        Routed.in(device, vlan.id())
            .forEach(gateway -> judge(device, vlan, gateway).ifPresent(said::add));
      }
    }
    said.forEach(outcomes::add);
    if (said.isEmpty()) {
      outcomes.conforms(device.subject());
    }
  }

  private static Optional<Outcome> judge(SwitchCase device, DesignVlan vlan, Gateway gateway) {
    Truth routes = Routed.routes(gateway);
    List<DesignGateway> places =
        device.design().gateways().values().stream()
            .filter(
                one ->
                    one.vlans().stream().anyMatch(served -> served.vlan().id().equals(vlan.id())))
            .toList();
    String designed = designed(vlan, places);
    Position at = places.stream().findFirst().map(DesignGateway::at).orElse(vlan.at());
    return switch (routes) {
      case NO -> Optional.empty();
      case UNKNOWN ->
          Optional.of(
              Routed.undecided(device, gateway, Routed.open(gateway).orElseThrow(), designed, at));
      case YES ->
          Optional.of(
              Candidate.of(
                      Routed.subject(device, gateway),
                      designed,
                      "an address on an interface that routes",
                      consequence(vlan, gateway),
                      Routed.proofs(device, gateway),
                      Optional.of(at))
                  .about(VlanSet.of(vlan.id().number())));
    };
  }

  private static String designed(DesignVlan vlan, List<DesignGateway> places) {
    return places.isEmpty()
        ? "no gateway for " + vlan + " anywhere"
        : "gateway for "
            + vlan
            + " on "
            + Words.list(places.stream().map(DesignGateway::name).toList())
            + " only";
  }

  private static String consequence(DesignVlan vlan, Gateway gateway) {
    String when =
        gateway.works().is(false) ? " as soon as an open port of the switch carries it" : "";
    return "Traffic between "
        + vlan
        + " and other networks can pass here"
        + when
        + ", by a way that the design does not plan, filter or watch.";
  }
}
