package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Need;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/** A gateway without the packet filter that the design asks for its VLAN. */
final class GatewayFilterMissing implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "gateway-filter-missing",
          Group.SWITCH,
          Severity.WEAKENS,
          "a gateway of a filtered VLAN has no packet filter",
          RuleInfo.COMMON_PRACTICE,
          Set.of("vlans.filter"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    for (DesignVlan vlan : device.design().vlans().values()) {
      boolean asked =
          vlan.filter()
              && vlan.gateway() != GatewayNeed.FORBIDDEN
              && !Routed.isManagement(device, vlan.id());
      if (asked) {
        Routed.in(device, vlan.id()).forEach(gateway -> judge(device, vlan, gateway, outcomes));
      }
    }
  }

  /** What does not route needs no filter. */
  private static void judge(
      SwitchCase device, DesignVlan vlan, Gateway gateway, Outcomes outcomes) {
    Truth routes = Routed.routes(gateway);
    Setting<Boolean> filtered = gateway.filtered();
    Subject subject = Routed.subject(device, gateway);
    String designed = "a packet filter on each gateway for " + vlan;
    if (routes == Truth.NO) {
      return;
    }
    if (filtered.is(true)) {
      outcomes.conforms(subject);
    } else if (!filtered.isDecided()) {
      outcomes.add(
          Undecided.of(
              subject,
              device.cause(filtered),
              filtered.reason().orElse("the text does not tell"),
              designed,
              device.proofs(gateway.header(), filtered.evidence()),
              Optional.of(vlan.at())));
    } else if (routes == Truth.UNKNOWN) {
      Need open = Routed.open(gateway).orElseThrow();
      outcomes.add(Routed.undecided(device, gateway, open, designed, vlan.at()));
    } else {
      List<Evidence> evidence = new ArrayList<>(filtered.evidence());
      evidence.add(gateway.header());
      outcomes.add(
          Candidate.of(
                  subject,
                  designed,
                  "no packet filter in either direction",
                  "Every network that the switch reaches can open connections into "
                      + vlan
                      + ", and hosts there to every network.",
                  device.proofs(evidence),
                  Optional.of(vlan.at()))
              .about(VlanSet.of(vlan.id().number())));
    }
  }
}
