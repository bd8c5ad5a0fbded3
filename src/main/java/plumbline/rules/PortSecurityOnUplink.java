package plumbline.rules;

import java.util.Optional;
import plumbline.design.DesignPort;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.yaml.Position;

/** A limit on addresses where the addresses of many machines arrive. */
final class PortSecurityOnUplink implements PortRule {
  private static final String DESIGNED = "no limit on the addresses behind the port";
  private static final RuleInfo INFO =
      new RuleInfo(
          "port-security-on-uplink",
          Group.PORT,
          Severity.WEAKENS,
          "the number of addresses is limited on a host's trunk or on a link",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish = port.wish(RoleKeys.PORT_SECURITY);
    boolean wanted = wish.filter(Wanted::value).isPresent();
    if (wanted || !port.isSwitching() || !port.mayFastStart() || !isUplink(port)) {
      return;
    }
    Setting<Boolean> limit = port.get(Keys.PORT_SECURITY);
    Position at = wish.map(Wanted::at).orElse(port.port().at());
    if (!limit.isDecided()) {
      outcomes.add(port.gap(limit, DESIGNED, at));
    } else if (limit.is(true)) {
      Candidate limited =
          Candidate.of(
              port.subject(),
              DESIGNED,
              "port security: the number of addresses is limited",
              consequence(port),
              port.proofs(limit),
              Optional.of(at));
      outcomes.add(port.modeToRepairFor(limit).map(limited::boundTo).orElse(limited));
    } else {
      outcomes.conforms(port.subject());
    }
  }

  /** Behind a host's access port is one machine; a trunk leads to a virtual switch. */
  private static boolean isUplink(PortCase port) {
    if (port.isLinkEnd()) {
      return true;
    }
    boolean trunk =
        port.wishedMode()
            .map(Wanted::value)
            .map(PortMode.TRUNK::equals)
            .orElseGet(() -> port.get(Keys.MODE).is(PortMode.TRUNK));
    return port.port().place() == DesignPort.Place.HOST && trunk;
  }

  private static String consequence(PortCase port) {
    return port.isLinkEnd()
        ? "Every address behind the "
            + port.port().subject()
            + " counts: one more than the limit is cut off or disables the port, and the link with"
            + " it."
        : "Every virtual machine behind "
            + Words.behind(port.port())
            + " counts: when a failover brings more than the limit, they are cut off or the port is"
            + " disabled.";
  }
}
