package plumbline.report;

import java.util.List;
import java.util.Optional;

/**
 * What build servers see of one switch.
 *
 * @param name name of the switch
 * @param properties what was read
 * @param cases one for each rule that was checked there, by rule
 */
record JUnitSuite(String name, List<Property> properties, List<Case> cases) {
  JUnitSuite {
    properties = List.copyOf(properties);
    cases = List.copyOf(cases);
  }

  /**
   * Something to know beside the cases.
   *
   * @param name of what
   * @param value it
   */
  record Property(String name, String value) {}

  /**
   * One rule on one switch.
   *
   * @param name id of the rule
   * @param answer what came of it
   * @param message one line about it; empty for a pass
   * @param type a word for the kind of failure; empty for a pass
   * @param words more about it, line by line
   */
  record Case(String name, Answer answer, String message, String type, List<String> words) {
    Case {
      words = List.copyOf(words);
    }
  }

  /** What can come of a case. */
  enum Answer {
    /** Checked, and nothing in it counts as drift. */
    PASS(Optional.empty()),
    /** Something in it counts as drift. */
    FAILURE(Optional.of("failure")),
    /** It could not be carried out. */
    ERROR(Optional.of("error")),
    /** What was given does not tell: neither a pass nor a failure. */
    SKIPPED(Optional.of("skipped"));

    private final Optional<String> element;

    Answer(Optional<String> element) {
      this.element = element;
    }

    /** Name of the element that says so; none for a pass. */
    Optional<String> element() {
      return element;
    }
  }
}
