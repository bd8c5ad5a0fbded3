package plumbline.rules;

import java.util.Optional;
import plumbline.design.DesignPort.Place;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** A port that the design uses and the config shuts. */
final class PortShut implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "port-shut",
          Group.PORT,
          Severity.BREAKS,
          "a port that the design uses is shut",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    // a bundle known by its members' lines alone has no shut state of its own
    if (port.isSpare() || port.settings().isEmpty() || port.fromMember()) {
      return;
    }
    Setting<Boolean> shut = port.get(Keys.SHUT);
    String designed = "open for " + Words.behind(port.port());
    if (!shut.isDecided()) {
      outcomes.add(port.undecided(shut, designed, port.port().at()));
    } else if (shut.is(true)) {
      outcomes.add(
          Candidate.of(
              port.subject(),
              designed,
              "shut",
              consequence(port),
              port.proofs(shut),
              Optional.of(port.port().at())));
    } else {
      outcomes.conforms(port.subject());
    }
  }

  private static String consequence(PortCase port) {
    String behind = Words.behind(port.port());
    if (port.port().place() == Place.LINK) {
      return Words.capital(behind) + " is down.";
    }
    return port.port().place() == Place.MEMBER
        ? Words.capital(behind) + " is down: the bundle has one cable less."
        : Words.capital(behind) + " has no connection through this port.";
  }
}
