package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/** An address of a routing switch in a VLAN that must never be routed. */
final class GatewayForbidden implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "gateway-forbidden",
          Group.SWITCH,
          Severity.BREAKS,
          "a VLAN that must never be routed has a gateway on the switch",
          RuleInfo.COMMON_PRACTICE,
          Set.of("vlans.gateway: forbidden"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    List<DesignVlan> forbidden =
        device.design().vlans().values().stream()
            .filter(vlan -> vlan.gateway() == GatewayNeed.FORBIDDEN)
            .toList();
    List<Outcome> said = new ArrayList<>();
    for (DesignVlan vlan : forbidden) {
      if (!Routed.isManagement(device, vlan.id())) {
        Routed.in(device, vlan.id())
            .forEach(gateway -> judge(device, vlan, gateway).ifPresent(said::add));
      }
    }
    said.forEach(outcomes::add);
    if (!forbidden.isEmpty() && said.isEmpty()) {
      outcomes.conforms(device.subject());
    }
  }

  /** An address on a switch that does not route is a host's. */
  private static Optional<Outcome> judge(SwitchCase device, DesignVlan vlan, Gateway gateway) {
    if (gateway.has(Kind.ADDRESS) == Truth.NO || gateway.has(Kind.ROUTING) == Truth.NO) {
      return Optional.empty();
    }
    boolean shut = gateway.has(Kind.OPEN) == Truth.NO || gateway.has(Kind.PARENT) == Truth.NO;
    boolean certain =
        gateway.has(Kind.ADDRESS) == Truth.YES && gateway.has(Kind.ROUTING) == Truth.YES;
    if (Routed.open(gateway).isPresent() && !(shut && certain)) {
      return Optional.of(
          Routed.undecided(device, gateway, Routed.open(gateway).get(), designed(vlan), vlan.at()));
    }
    Candidate candidate =
        Candidate.of(
                Routed.subject(device, gateway),
                designed(vlan),
                "an address on an interface that " + (shut ? "is shut" : "routes"),
                shut ? later(vlan) : consequence(vlan, gateway),
                Routed.proofs(device, gateway),
                Optional.of(vlan.at()))
            .about(VlanSet.of(vlan.id().number()));
    if (shut) {
      return Optional.of(candidate.at(Severity.UNTIDY));
    }
    return Optional.of(gateway.works().is(false) ? candidate.at(Severity.WEAKENS) : candidate);
  }

  private static String designed(DesignVlan vlan) {
    return "no gateway for " + vlan;
  }

  private static String later(DesignVlan vlan) {
    return "Nothing is routed now; once the interface is opened, " + vlan + " is.";
  }

  private static String consequence(DesignVlan vlan, Gateway gateway) {
    if (gateway.works().is(false)) {
      return "Nothing is routed now, as no open port of the switch carries "
          + vlan
          + "; once one does, what lives there is no longer shut off from other networks.";
    }
    String unless = gateway.works().isDecided() ? "" : ", if an open port of the switch carries it";
    return "The design shuts "
        + vlan
        + " off from all other networks; here they can be reached from it, and it from them"
        + unless
        + ".";
  }
}
