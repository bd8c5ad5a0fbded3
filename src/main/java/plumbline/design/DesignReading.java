package plumbline.design;

import java.util.List;
import java.util.Optional;
import plumbline.yaml.Problem;

/**
 * What came of reading a design.
 *
 * @param design the design; present only when there are no problems
 * @param problems all that is wrong in all files: files in the order given, each from top to bottom
 */
public record DesignReading(Optional<Design> design, List<Problem> problems) {
  /** Copies the problems. */
  public DesignReading {
    problems = List.copyOf(problems);
    if (design.isPresent() != problems.isEmpty()) {
      throw new IllegalArgumentException("a design is present when nothing is wrong");
    }
  }
}
