package plumbline.rules;

/** Takes what rules say. */
@FunctionalInterface
public interface Outcomes {
  /** Takes one outcome. */
  void add(Outcome outcome);

  /** The subject conforms. */
  default void conforms(Subject subject) {
    add(new Outcome.Conforms(subject));
  }
}
