package plumbline.judge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plumbline.rules.Group;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.RuleInfo;
import plumbline.rules.Subject;

/**
 * What rules that were not asked say of a port and what bears on the answers of those that were: an
 * absent, shut or wrongly moded port. It hides nothing, but no answer may pass over it: a finding
 * at a shut port holds once the port is open, and a trunk's list says nothing of an access port.
 */
public final class InFront {
  private static final Set<Group> OF_PORTS =
      Set.of(Group.PORT, Group.BUNDLE, Group.PAIR, Group.LINK);
  private static final int MODE = 2;
  private static final int REST = 3;

  private InFront() {}

  /** Whether a rule is of the kind whose findings can stand in front of those of others. */
  public static boolean isPossible(RuleInfo rule) {
    return rule.group() == Group.PORT;
  }

  /**
   * The candidates that bear on what is asked: at ports of which rules that are asked say something
   * or, where the port is absent, might have.
   *
   * @param rules the rules that are asked
   * @param asked what these said
   * @param unasked what others said
   */
  public static List<Spoken> of(List<RuleInfo> rules, List<Spoken> asked, List<Spoken> unasked) {
    boolean ofPorts =
        rules.stream().anyMatch(rule -> OF_PORTS.contains(rule.group()) && rank(rule) > 0);
    Map<Subject, Integer> last = new HashMap<>();
    asked.stream()
        .filter(one -> OF_PORTS.contains(one.rule().group()))
        .forEach(one -> last.merge(portOf(one), rank(one.rule()), Math::max));
    return unasked.stream()
        .filter(one -> one.outcome().subject().port().isPresent())
        .filter(
            one ->
                isInFront(one, last.getOrDefault(portOf(one), 0))
                    || (ofPorts && rank(one.rule()) == 0 && isInFront(one, REST)))
        .toList();
  }

  /** The same outcomes; findings say what stands in front of them. */
  public static List<Spoken> noted(List<Spoken> asked, List<Spoken> inFront) {
    return inFront.isEmpty() ? asked : asked.stream().map(one -> noted(one, inFront)).toList();
  }

  private static Spoken noted(Spoken one, List<Spoken> inFront) {
    if (!(one.outcome() instanceof Candidate candidate) || !OF_PORTS.contains(one.rule().group())) {
      return one;
    }
    return inFront.stream()
        .filter(other -> portOf(other).equals(portOf(one)))
        .filter(other -> isInFront(other, rank(one.rule())))
        .findFirst()
        .map(other -> new Spoken(one.rule(), candidate.followedBy(note(other.rule()))))
        .orElse(one);
  }

  private static String note(RuleInfo rule) {
    return "A rule that was not asked, "
        + rule.id()
        + ", differs here too ("
        + rule.summary()
        + "): this holds once that is repaired.";
  }

  private static Subject portOf(Spoken one) {
    return Judge.portOf(one.outcome().subject());
  }

  private static boolean isInFront(Spoken one, int rank) {
    return one.outcome() instanceof Candidate candidate
        && (rank(one.rule()) < MODE || candidate.spoilsMode().isPresent())
        && rank(one.rule()) < rank;
  }

  private static int rank(RuleInfo rule) {
    return switch (rule.id()) {
      case Judge.ABSENT -> 0;
      case Judge.SHUT -> 1;
      default -> Judge.MODE_RULES.contains(rule.id()) ? MODE : REST;
    };
  }
}
