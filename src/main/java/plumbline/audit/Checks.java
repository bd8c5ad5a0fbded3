package plumbline.audit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.judge.Spoken;
import plumbline.result.Result;
import plumbline.rules.Group;
import plumbline.rules.Outcome;

/** Counts what was checked, by rule and by switch. */
final class Checks {
  private final SortedMap<String, Tally> byRule = new TreeMap<>();
  private final SortedMap<String, SortedMap<String, Tally>> bySwitch = new TreeMap<>();

  /**
   * Counts.
   *
   * @param rules ids of the rules that were asked
   * @param spoken what they said
   */
  Checks(Collection<String> rules, Collection<Spoken> spoken) {
    rules.forEach(rule -> byRule.put(rule, new Tally()));
    Set<Spoken> apart = new HashSet<>();
    for (Spoken one : spoken) {
      if (isCounted(one, apart)) {
        String rule = one.rule().id();
        byRule.get(rule).add(one.outcome());
        bySwitch
            .computeIfAbsent(one.outcome().subject().switchName(), any -> new TreeMap<>())
            .computeIfAbsent(rule, any -> new Tally())
            .add(one.outcome());
      }
    }
  }

  /** A pair or a link that differs in several settings is one subject that was checked. */
  private static boolean isCounted(Spoken one, Set<Spoken> apart) {
    boolean wide = one.rule().group() == Group.PAIR || one.rule().group() == Group.LINK;
    return !wide
        || one.outcome() instanceof Outcome.Conforms
        || apart.add(new Spoken(one.rule(), new Outcome.Conforms(one.outcome().subject())));
  }

  /** The counts of every rule that was asked, by id. */
  List<Result.RuleCount> byRule() {
    return byRule.entrySet().stream().map(one -> one.getValue().of(one.getKey())).toList();
  }

  /** The counts of every rule on every switch that it was asked about, by switch and id. */
  List<Result.SwitchCount> bySwitch() {
    List<Result.SwitchCount> counts = new ArrayList<>();
    bySwitch.forEach(
        (name, rules) ->
            rules.forEach(
                (rule, tally) -> counts.add(new Result.SwitchCount(name, tally.of(rule)))));
    return counts;
  }

  /** Subjects by what was said of them. */
  private static final class Tally {
    private int conforms;
    private int differs;
    private int undecided;

    void add(Outcome outcome) {
      if (outcome instanceof Outcome.Conforms) {
        conforms++;
      } else if (outcome instanceof Outcome.Candidate) {
        differs++;
      } else {
        undecided++;
      }
    }

    Result.RuleCount of(String rule) {
      return new Result.RuleCount(rule, conforms, differs, undecided);
    }
  }
}
