package plumbline.judge;

import java.util.Optional;
import java.util.stream.Stream;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;

/** Tells two differences of one pair or link as one. */
final class Merged {
  private Merged() {}

  /**
   * Both as one.
   *
   * @param floor the severity of one that has none of its own
   */
  static Candidate of(Candidate first, Candidate second, Severity floor) {
    Severity one = first.severity().orElse(floor);
    Severity other = second.severity().orElse(floor);
    return new Candidate(
        first.subject(),
        Optional.of(one.reaches(other) ? one : other),
        first.vlans().plus(second.vlans()),
        joined("; ", first.designed(), second.designed()),
        joined("; ", first.found(), second.found()),
        joined(" ", first.consequence(), second.consequence()),
        Stream.concat(first.proofs().stream(), second.proofs().stream()).distinct().toList(),
        first.design(),
        Stream.concat(first.others().stream(), second.others().stream()).distinct().toList(),
        first.needsMode(),
        first.spoilsMode(),
        false,
        first.across());
  }

  private static String joined(String by, String one, String other) {
    return one.contains(other) ? one : one + by + other;
  }
}
