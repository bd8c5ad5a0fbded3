package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.finding.Severity;
import plumbline.promise.Reaching;
import plumbline.promise.Router;

/** A VLAN with gateways that somebody in it does not reach, whatever single ports are set to. */
final class GatewayUnreachable implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "gateway-unreachable",
          Group.FABRIC,
          Severity.BREAKS,
          "hosts of a VLAN have no way to any of its gateways",
          RuleInfo.COMMON_PRACTICE,
          Set.of("gateways.at", "switches.management", "vlans.gateway: required"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    for (DesignVlan vlan : network.design().vlans().values()) {
      network
          .designed()
          .toGateway(vlan.id())
          .filter(reaching -> reaching.asked() > 0)
          .flatMap(reaching -> judge(network, vlan, reaching))
          .ifPresent(outcomes::add);
    }
  }

  private static Optional<Outcome> judge(FabricCase network, DesignVlan vlan, Reaching designed) {
    List<String> gateways =
        network.designed().side(vlan.id()).routers().stream().map(Router::name).toList();
    String wanted =
        "every port that carries " + vlan + " reaches a gateway: " + Words.list(gateways);
    return new Reached(network, vlan, wanted, "a gateway in " + vlan)
        .judge(
            designed,
            network.repaired().toGateway(vlan.id()),
            "What is sent there in " + vlan + " to other networks is lost.");
  }
}
