package plumbline.audit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.finding.Place;
import plumbline.judge.Spoken;
import plumbline.port.PortName;
import plumbline.rules.Outcome;
import plumbline.rules.Subject;

/**
 * What rules answered, whether a finding came of it or not: for those who look at findings that an
 * audit does not have.
 */
public final class Answers {
  private final List<Spoken> spoken;

  private Answers(List<Spoken> spoken) {
    this.spoken = spoken;
  }

  /** The answers of the rules that were asked. */
  static Answers of(List<Spoken> spoken) {
    return new Answers(List.copyOf(spoken));
  }

  /** What a rule said of a subject. */
  public enum Answer {
    /** It is as designed. */
    CONFORMS,
    /** The text does not decide it. */
    UNDECIDED,
    /** It differs; where there is no finding, another one explains it. */
    DIFFERS
  }

  /** Something that a rule may have said. */
  @FunctionalInterface
  public interface Test {
    /** Whether it is of the kind that is looked for. */
    boolean is(
        String rule, String switchName, String port, Optional<PortName> name, String subject);
  }

  /**
   * The answers to some questions; of several to one the last in the order of {@link Answer}.
   *
   * @param ids of findings, whether there are such or not; those that no rule spoke of have none
   */
  public Map<String, Answer> to(Set<String> ids) {
    Map<String, Answer> answers = new HashMap<>();
    if (ids.isEmpty()) {
      return answers;
    }
    for (Spoken one : spoken) {
      String id = id(one);
      if (ids.contains(id)) {
        answers.merge(
            id, answer(one.outcome()), (old, next) -> old.compareTo(next) > 0 ? old : next);
      }
    }
    return answers;
  }

  /** Whether something that passes the test differs or is undecided. */
  public boolean hasOpen(Test test) {
    return spoken.stream()
        .filter(one -> !(one.outcome() instanceof Outcome.Conforms))
        .anyMatch(
            one -> {
              Subject subject = one.outcome().subject();
              return test.is(
                  one.rule().id(),
                  subject.switchName(),
                  subject.place().flatMap(Place::port).orElse(""),
                  subject.port(),
                  subject.words());
            });
  }

  private static Answer answer(Outcome outcome) {
    if (outcome instanceof Outcome.Conforms) {
      return Answer.CONFORMS;
    }
    return outcome instanceof Outcome.Undecided ? Answer.UNDECIDED : Answer.DIFFERS;
  }

  /** As findings have it. */
  private static String id(Spoken one) {
    Subject subject = one.outcome().subject();
    return one.rule().id()
        + "/"
        + subject.switchName()
        + "/"
        + subject.place().flatMap(Place::port).orElse("")
        + "/"
        + subject.words();
  }
}
