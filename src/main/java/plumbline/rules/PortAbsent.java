package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;

/** A port that the design covers and the config never opens. */
final class PortAbsent implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "port-absent",
          Group.PORT,
          Severity.BREAKS,
          "a port of the design has no stanza in the config",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    if (port.isSpare()) {
      return;
    }
    if (port.settings().isPresent()) {
      outcomes.conforms(port.subject());
      return;
    }
    outcomes.add(undecided(port).map(Outcome.class::cast).orElseGet(() -> absent(port)));
  }

  private static Candidate absent(PortCase port) {
    return Candidate.of(
        port.subject(),
        designed(port),
        "no stanza for " + port.fullName(),
        "The switch has no such port, or its config does not show it: nothing that the design"
            + " promises "
            + Words.behind(port.port())
            + " is set up there.",
        port.at().absence("the text opens no such port"),
        Optional.of(port.port().at()));
  }

  /** A lost or ambiguous header may be this port's; a cut or pasted text need not hold it. */
  private static Optional<Undecided> undecided(PortCase port) {
    var settings = port.at().settings();
    if (settings.truncation().isPresent()) {
      return Optional.of(
          open(
              port,
              Undecided.Cause.CUT,
              "the text is cut short",
              port.at().absence("the text opens no such port before it stops")));
    }
    if (settings.script()) {
      return Optional.of(
          open(
              port,
              Undecided.Cause.TEXT,
              "the text is a script",
              port.at().absence("the script does not open this port")));
    }
    if (!settings.doubtfulHeaders().isEmpty()) {
      return Optional.of(
          open(
              port,
              Undecided.Cause.TEXT,
              "an interface header of the text names no clear port",
              port.at().proofs(settings.doubtfulHeaders())));
    }
    return Optional.empty();
  }

  private static Undecided open(
      PortCase port, Undecided.Cause cause, String why, List<Proof> proofs) {
    return Undecided.of(
        port.subject(), cause, why, designed(port), proofs, Optional.of(port.port().at()));
  }

  private static String designed(PortCase port) {
    return port.fullName() + " for " + Words.behind(port.port());
  }
}
