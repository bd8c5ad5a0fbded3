package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;

/** Two ports that back each other up and end in the same thing that fails. */
final class PairOnOneSwitch implements PairRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "pair-on-one-switch",
          Group.PAIR,
          Severity.WEAKENS,
          "both ports of a pair end on one switch or one member of a stack",
          RuleInfo.COMMON_PRACTICE,
          Set.of("hosts.pairs"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PairCase pair, Outcomes outcomes) {
    TwoEnds ends = pair.ends();
    if (!box(pair.first()).equals(box(pair.second()))) {
      outcomes.conforms(ends.subject(pair.first()));
      return;
    }
    String box = box(pair.first());
    outcomes.add(
        Candidate.of(
                ends.subject(pair.first()),
                "two switches, or two members of a stack",
                "both on " + box,
                "When "
                    + box
                    + " fails or is reloaded, "
                    + pair.host().name()
                    + " loses "
                    + pair.pair().first()
                    + " and "
                    + pair.pair().second()
                    + " at once.",
                List.of(),
                Optional.of(pair.pair().at()))
            .beside(ends.beside(pair.first())));
  }

  private static String box(PortCase port) {
    return box(port.design(), port.port());
  }

  /** The thing that fails; the first number of a port's name is its member of a stack. */
  static String box(Design design, DesignPort port) {
    List<Integer> stack = design.switches().get(port.switchName()).stack();
    int member = port.port().numbers().get(0);
    boolean says = port.port().kind().isPhysical() && stack.contains(member);
    return (says ? "member " + member + " of " : "") + port.switchName();
  }
}
