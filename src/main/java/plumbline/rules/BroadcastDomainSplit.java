package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.finding.Severity;
import plumbline.promise.Reaching;

/** A VLAN that must be one broadcast domain and falls apart. */
final class BroadcastDomainSplit implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "broadcast-domain-split",
          Group.FABRIC,
          Severity.BREAKS,
          "a VLAN that must be one broadcast domain is in several parts",
          RuleInfo.COMMON_PRACTICE,
          Set.of("vlans.one-domain"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    for (DesignVlan vlan : network.design().vlans().values()) {
      if (vlan.oneDomain()) {
        network
            .designed()
            .inDomain(vlan.id())
            .flatMap(reaching -> judge(network, vlan, reaching))
            .ifPresent(outcomes::add);
      }
    }
  }

  private static Optional<Outcome> judge(FabricCase network, DesignVlan vlan, Reaching designed) {
    return new Reached(network, vlan, vlan + " is one broadcast domain", "the rest of " + vlan)
        .judge(
            designed,
            network.repaired().inDomain(vlan.id()),
            "Machines in "
                + vlan
                + " cannot move between the parts, and what runs in one does not hear the other.");
  }
}
