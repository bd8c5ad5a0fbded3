package plumbline.result;

import java.util.Objects;
import plumbline.finding.Finding;
import plumbline.vlan.VlanSet;

/**
 * A finding of the audits before and after a change window.
 *
 * @param finding as it is after the window; as it was where it is cleared or was not checked again
 * @param state {@link State#NEW} where the window introduced it
 * @param newVlans VLANs that it was not about before, where it was there
 * @param clearedVlans VLANs that it is not about any more, where it is still there
 * @param worse whether it was there and its severity is higher now
 * @param notDone whether the same was cleared elsewhere in this window, so that it was to be
 *     cleared here as well
 */
public record WindowFinding(
    Finding finding,
    State state,
    VlanSet newVlans,
    VlanSet clearedVlans,
    boolean worse,
    boolean notDone) {
  /** Refuses missing parts. */
  public WindowFinding {
    Objects.requireNonNull(finding);
    Objects.requireNonNull(state);
  }

  /** Whether the window introduced it, or more of it. */
  public boolean isIntroduced() {
    return !notDone && (state == State.NEW || worse || !newVlans.isEmpty());
  }
}
