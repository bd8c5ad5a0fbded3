package plumbline.result;

import java.util.Optional;

/**
 * How the findings of a run stand against earlier runs and against waivers.
 *
 * @param past the comparison with earlier runs, where a history was given
 * @param accepted what waivers cover, where a file of them was given
 */
public record FollowUp(Optional<Past> past, Optional<Accepted> accepted) {
  /** A run that is compared with nothing. */
  public static final FollowUp NONE = new FollowUp(Optional.empty(), Optional.empty());
}
