package plumbline.rules;

import java.util.Objects;
import plumbline.finding.Severity;

/**
 * What a rule says of itself.
 *
 * @param id its name, lower case with hyphens; a promise to users
 * @param group when it is judged
 * @param floor severity of its findings unless the rule says otherwise for one of them
 * @param summary one line, no full stop
 * @param source clause, published requirement, or {@code common practice}
 */
public record RuleInfo(String id, Group group, Severity floor, String summary, String source) {
  /** The source of rules that rest on trade habit. */
  public static final String COMMON_PRACTICE = "common practice";

  /** Refuses missing parts. */
  public RuleInfo {
    Objects.requireNonNull(id);
    Objects.requireNonNull(group);
    Objects.requireNonNull(floor);
    Objects.requireNonNull(summary);
    Objects.requireNonNull(source);
  }
}
