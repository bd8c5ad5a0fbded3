package plumbline.rules;

import java.time.LocalDate;
import java.util.List;
import plumbline.yaml.Position;

/**
 * One waiver beside the findings of a run; waivers for the same thing that differ in VLANs, dates
 * or severity are one case for each of both rules.
 *
 * @param subject what it is for
 * @param at where its file says so
 * @param until its last day, UTC
 * @param today the day of the run, UTC
 * @param fits the findings of the run that it covers, or did until it ended, as readers name them
 * @param decided whether the run checked all that it may be for
 * @param why why it fits none, a clause
 */
public record WaiverCase(
    Subject subject,
    Position at,
    LocalDate until,
    LocalDate today,
    List<String> fits,
    boolean decided,
    String why) {
  /** Copies the list. */
  public WaiverCase {
    fits = List.copyOf(fits);
  }

  /** Whether its last day is over. */
  public boolean isExpired() {
    return today.isAfter(until);
  }
}
