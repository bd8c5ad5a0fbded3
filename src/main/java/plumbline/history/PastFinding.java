package plumbline.history;

import java.time.LocalDate;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.result.Standing;
import plumbline.result.State;

/**
 * A finding as a run has kept it.
 *
 * @param finding what it said
 * @param state what had become of it then; empty where that run was compared with nothing
 * @param since the day of the first run that had it; empty where that run was compared with nothing
 * @param before what it was when it was last decided, where it was undecided or another then
 */
public record PastFinding(
    Finding finding,
    Optional<State> state,
    Optional<LocalDate> since,
    Optional<Standing.Before> before) {
  /** Whether it was still there, or might have been. */
  boolean isOpen() {
    return !state.equals(Optional.of(State.CLEARED));
  }

  /** What it was when a run last could tell all of it. */
  Standing.Before decided() {
    Standing.Before now = new Standing.Before(finding.severity(), finding.vlans());
    return state.equals(Optional.of(State.CHANGED)) ? now : before.orElse(now);
  }
}
