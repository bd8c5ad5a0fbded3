package plumbline.result;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.finding.Finding;

/**
 * The comparison of a run with earlier ones.
 *
 * @param before the run that it is compared with; empty where none is earlier
 * @param setAside one line for each file of the history that is left out, and why
 * @param standings what became of each finding, by id: those of this run and {@code gone}
 * @param gone findings of the run before that this run has not: cleared or unchecked, by switch,
 *     port (numeric), rule, id
 * @param trend how many findings were open, run by run; the last is this one
 */
public record Past(
    Optional<Run> before,
    List<String> setAside,
    Map<String, Standing> standings,
    List<Finding> gone,
    List<TrendPoint> trend) {
  /** Copies the collections. */
  public Past {
    setAside = List.copyOf(setAside);
    standings = Map.copyOf(standings);
    gone = List.copyOf(gone);
    trend = List.copyOf(trend);
  }

  /**
   * An earlier run.
   *
   * @param file its name in the folder of the history
   * @param at when it was, UTC
   */
  public record Run(String file, Instant at) {}

  /**
   * What was open after a run, as far as was known: findings that the run could not check count as
   * they were, waived ones do not.
   *
   * @param at when the run was, UTC
   * @param breaks open findings of that severity
   * @param weakens open findings of that severity
   * @param unverified open findings of that severity
   * @param untidy open findings of that severity
   * @param waived findings that are waived
   * @param unchecked how many of the open ones the run could not check
   * @param oldest since when the oldest of the open ones stands; empty where none is open
   */
  public record TrendPoint(
      Instant at,
      int breaks,
      int weakens,
      int unverified,
      int untidy,
      int waived,
      int unchecked,
      Optional<LocalDate> oldest) {}

  /** What became of a finding of this run, or of one that is gone. */
  public Standing of(Finding finding) {
    return standings.get(finding.id());
  }
}
