package plumbline.history;

import java.util.List;
import java.util.Optional;
import plumbline.result.Past;

/**
 * What a folder of runs tells a new one.
 *
 * @param newest the newest run that is earlier than the new one and can be read
 * @param trend what was open after each earlier run, oldest first
 * @param later how many runs are later than the new one; reports do not tell of them, for a run
 *     that is made again must say the same
 * @param setAside one line for each file that is left out, and why
 */
public record Earlier(
    Optional<PastRun> newest, List<Past.TrendPoint> trend, int later, List<String> setAside) {
  /** Copies the lists. */
  public Earlier {
    trend = List.copyOf(trend);
    setAside = List.copyOf(setAside);
  }
}
