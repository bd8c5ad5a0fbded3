package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;

/** A port that the design covers and the config never opens. */
final class PortAbsent implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "port-absent",
          Group.PORT,
          Severity.WEAKENS,
          "a port of the design has no stanza in the config",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    // a bundle that stands in its members' lines alone is as present as they are
    if (port.isSpare() || port.fromMember()) {
      return;
    }
    if (port.settings().isPresent()) {
      outcomes.conforms(port.subject());
      return;
    }
    Optional<String> why = port.at().settings().whyPortsMayBeMissing();
    Evidence.Line removed = port.at().settings().removed().get(port.port().port());
    if (removed == null && why.isEmpty() && isBundle(port) && noMemberIsThere(port)) {
      // its members say so: once they are there, their lines stand for it
      return;
    }
    if (removed != null) {
      outcomes.add(absent(port, port.at().proofs(List.of(removed))));
    } else if (why.isPresent()) {
      outcomes.add(open(port, why.get()));
    } else {
      outcomes.add(absent(port, port.at().absence("the text opens no such port")));
    }
  }

  private static Candidate absent(PortCase port, List<Proof> proofs) {
    return port.withoutWay(
        Candidate.of(
            port.subject(),
            designed(port),
            "no stanza for " + port.fullName(),
            "The switch has no such port, or its config does not show it: nothing that the design"
                + " promises "
                + Words.behind(port.port())
                + " is set up there."
                + loneBundle(port),
            proofs,
            Optional.of(port.port().at())));
  }

  private static boolean isBundle(PortCase port) {
    return port.port().port().kind().isBundle();
  }

  private static boolean noMemberIsThere(PortCase port) {
    List<PortCase> members = port.members();
    return !members.isEmpty() && members.stream().allMatch(one -> one.settings().isEmpty());
  }

  private static String loneBundle(PortCase port) {
    return isBundle(port) || !noMemberIsThere(port)
        ? ""
        : " No member of its bundle is there: "
            + Words.behind(port.designedBundle().orElseThrow())
            + " has no cable here.";
  }

  /** A lost or ambiguous header may be this port's; a cut or pasted text need not hold it. */
  private static Undecided open(PortCase port, String why) {
    SwitchSettings settings = port.at().settings();
    boolean cut = settings.truncation().isPresent() && !settings.script();
    return Undecided.of(
        port.subject(),
        cut ? Undecided.Cause.CUT : Undecided.Cause.TEXT,
        why,
        designed(port),
        settings.doubtfulHeaders().isEmpty()
            ? port.at().absence("the text opens no such port")
            : port.at().proofs(settings.doubtfulHeaders()),
        Optional.of(port.port().at()));
  }

  private static String designed(PortCase port) {
    return port.fullName() + " for " + Words.behind(port.port());
  }
}
