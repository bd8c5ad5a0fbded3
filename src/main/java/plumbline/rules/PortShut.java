package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.design.DesignPort;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
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
          Severity.WEAKENS,
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
    Optional<PortSettings> bundle =
        port.get(Keys.SHUT).is(false) ? undesignedBundle(port) : Optional.empty();
    Setting<Boolean> shut =
        bundle
            .map(one -> one.get(Keys.SHUT).because(port.get(Keys.BUNDLE).evidence()))
            .orElseGet(() -> port.get(Keys.SHUT));
    String designed = "open for " + Words.behind(port.port());
    if (!shut.isDecided()) {
      outcomes.add(port.undecided(shut, designed, port.port().at()));
    } else if (shut.is(true)) {
      outcomes.add(
          port.withoutWay(
              Candidate.of(
                  port.subject(),
                  designed,
                  bundle.map(one -> one.fullName() + ", which it joins, is shut").orElse("shut"),
                  consequence(port),
                  port.proofs(shut),
                  Optional.of(port.port().at()))));
    } else {
      outcomes.conforms(port.subject());
    }
  }

  /** The bundle that takes the port down with it and has no place in the design to say so. */
  private static Optional<PortSettings> undesignedBundle(PortCase port) {
    if (port.port().place() == DesignPort.Place.MEMBER) {
      return Optional.empty();
    }
    PortSettings open = port.settings().orElseThrow();
    return port.at().settings().ports().values().stream()
        .filter(one -> open.isMemberOf(one.name()) && port.at().designOf(one.name()).isEmpty())
        .filter(one -> !one.get(Keys.SHUT).is(false))
        .findFirst();
  }

  private static String member(PortCase port) {
    List<PortCase> members = port.members();
    boolean allShut =
        members.stream()
            .allMatch(
                one -> one.settings().filter(open -> open.get(Keys.SHUT).is(true)).isPresent());
    if (!allShut) {
      return reserve(port)
          .filter(Reserve::isDown)
          .map(left -> "This cable passes nothing: " + left.words())
          .orElse("This cable passes nothing, so that the bundle lacks it.");
    }
    String link = Words.behind(port.designedBundle().orElseThrow());
    return members.size() == 1
        ? "This cable passes nothing, and the bundle has no other: " + link + " is down."
        : "This cable passes nothing, nor does another: all "
            + members.size()
            + " members are shut, and "
            + link
            + " is down.";
  }

  private static Optional<Reserve> reserve(PortCase member) {
    SwitchSettings device = member.at().settings();
    return member
        .designedBundle()
        .flatMap(bundle -> device.port(bundle.port()))
        .map(bundle -> Reserve.of(bundle, device.membersOf(bundle.name())));
  }

  private static String consequence(PortCase port) {
    String behind = Words.behind(port.port());
    return switch (port.port().place()) {
      case LINK -> Words.capital(behind) + " passes nothing.";
      case MEMBER -> member(port);
      default -> Words.capital(behind) + " has no connection through this port.";
    };
  }
}
