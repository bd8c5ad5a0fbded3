package plumbline.rules;

import java.util.List;
import java.util.Optional;

/** Every rule of the program: a literal list, sorted by id. */
public final class RuleCatalogue {
  /** All rules. */
  public static final List<Rule> ALL = List.of();

  private RuleCatalogue() {}

  /** The rule of that id, if there is one. */
  public static Optional<Rule> named(String id) {
    return ALL.stream().filter(rule -> rule.info().id().equals(id)).findFirst();
  }
}
