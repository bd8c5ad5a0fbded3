package plumbline.waiver;

import java.util.List;
import java.util.Optional;
import plumbline.yaml.Problem;

/**
 * What came of reading a file of waivers.
 *
 * @param waivers the waivers; empty where there is a problem
 * @param problems all that is wrong, in the order of the file
 */
public record WaiverReading(Optional<WaiverFile> waivers, List<Problem> problems) {
  /** Copies the problems. */
  public WaiverReading {
    problems = List.copyOf(problems);
  }
}
