package plumbline.history;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.finding.Finding;
import plumbline.finding.ResultOrder;
import plumbline.finding.Severity;
import plumbline.result.Past;
import plumbline.result.Standing;
import plumbline.result.State;
import plumbline.vlan.VlanSet;

/**
 * The findings of a run beside those of the run before: each is in one of five states.
 *
 * @param standings what became of each, by id
 * @param gone those of the run before that the run has not, by switch, port, rule, id
 */
public record Comparison(Map<String, Standing> standings, List<Finding> gone) {
  private static final String UNDECIDED_NOW = "the text does not decide it any more";

  /** Copies the collections. */
  public Comparison {
    standings = Map.copyOf(standings);
    gone = List.copyOf(gone);
  }

  /** The findings of a first run: all are new. */
  public static Comparison ofFirst(List<Finding> now, LocalDate today) {
    Map<String, Standing> standings = new LinkedHashMap<>();
    now.forEach(one -> standings.put(one.id(), Standing.fresh(today)));
    return new Comparison(standings, List.of());
  }

  /**
   * Compares.
   *
   * @param before the run before
   * @param now all findings of the run, waived ones too
   * @param today its day, UTC
   * @param decider tells of what the run has not
   */
  public static Comparison of(PastRun before, List<Finding> now, LocalDate today, Decider decider) {
    Map<String, PastFinding> open = before.open();
    Map<String, Standing> standings = new LinkedHashMap<>();
    for (Finding finding : now) {
      PastFinding past = open.get(finding.id());
      standings.put(
          finding.id(),
          past == null
              ? Standing.fresh(today)
              : standing(finding, past, since(past, before), decider.sawAll()));
    }
    List<Finding> gone = new ArrayList<>();
    for (Map.Entry<String, PastFinding> one : open.entrySet()) {
      if (!standings.containsKey(one.getKey())) {
        PastFinding past = one.getValue();
        standings.put(one.getKey(), fate(decider.of(past, before), past, since(past, before)));
        gone.add(past.finding());
      }
    }
    gone.sort(ResultOrder.BY_PLACE);
    return new Comparison(standings, gone);
  }

  private static LocalDate since(PastFinding past, PastRun before) {
    return past.since().orElseGet(before::day);
  }

  private static Standing fate(Decider.Fate fate, PastFinding past, LocalDate since) {
    if (fate instanceof Decider.Fate.Cleared cleared) {
      return Standing.cleared(since, cleared.by());
    }
    return new Standing(
        State.UNCHECKED,
        since,
        VlanSet.NONE,
        // It is kept as it was told last, which may be as undecided.
        Optional.of(past.decided()).filter(was -> !isSame(past.finding(), was)),
        Optional.empty(),
        ((Decider.Fate.Unchecked) fate).why());
  }

  private static Standing standing(Finding now, PastFinding past, LocalDate since, boolean sawAll) {
    Standing.Before was = past.decided();
    boolean wasDecided = was.severity() != Severity.UNVERIFIED;
    if (now.severity() == Severity.UNVERIFIED && wasDecided) {
      return new Standing(
          State.UNCHECKED, since, VlanSet.NONE, Optional.of(was), Optional.empty(), UNDECIDED_NOW);
    }
    boolean told =
        sawAll || now.severity().reaches(was.severity()) || !now.vlans().equals(was.vlans());
    return isSame(now, was) || !told
        ? new Standing(
            State.STANDING,
            since,
            VlanSet.NONE,
            Optional.of(was).filter(any -> !told),
            Optional.empty(),
            "")
        : new Standing(
            State.CHANGED,
            since,
            now.vlans().minus(was.vlans()),
            Optional.of(was),
            Optional.empty(),
            "");
  }

  private static boolean isSame(Finding finding, Standing.Before was) {
    return finding.severity() == was.severity() && finding.vlans().equals(was.vlans());
  }

  /**
   * What is open after the run.
   *
   * @param at when it is said to be
   * @param counted its findings that count
   * @param waived ids of findings that are waived, those of this run and carried ones
   */
  public Past.TrendPoint point(Instant at, List<Finding> counted, Set<String> waived) {
    List<Finding> open = new ArrayList<>(counted);
    int unchecked = 0;
    for (Finding one : gone) {
      if (standings.get(one.id()).state() == State.UNCHECKED && !waived.contains(one.id())) {
        open.add(one);
        unchecked++;
      }
    }
    return new Past.TrendPoint(
        at,
        count(open, Severity.BREAKS),
        count(open, Severity.WEAKENS),
        count(open, Severity.UNVERIFIED),
        count(open, Severity.UNTIDY),
        waived.size(),
        unchecked
            + (int)
                counted.stream()
                    .filter(one -> standings.get(one.id()).state() == State.UNCHECKED)
                    .count(),
        open.stream().map(one -> standings.get(one.id()).since()).min(LocalDate::compareTo));
  }

  private static int count(List<Finding> findings, Severity severity) {
    return (int) findings.stream().filter(one -> one.severity() == severity).count();
  }
}
