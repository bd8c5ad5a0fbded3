package plumbline.rules;

import java.util.Objects;
import java.util.Set;
import plumbline.finding.Severity;

/**
 * What a rule says of itself.
 *
 * @param id its name, lower case with hyphens; a promise to users
 * @param group when it is judged
 * @param floor severity of its findings unless the rule says otherwise for one of them
 * @param summary one line, no full stop
 * @param source clause, published requirement, or {@code common practice}
 * @param keys what it asks of a design, as the design spells it: a key of a role ({@code mode}),
 *     one value of such a key ({@code fast-start: true}), or a key elsewhere behind its section
 *     ({@code vlans.unused}). What no rule names here is reported as not checked
 */
public record RuleInfo(
    String id, Group group, Severity floor, String summary, String source, Set<String> keys) {
  /** The source of rules that rest on trade habit. */
  public static final String COMMON_PRACTICE = "common practice";

  /** Refuses missing parts and copies the keys. */
  public RuleInfo {
    Objects.requireNonNull(id);
    Objects.requireNonNull(group);
    Objects.requireNonNull(floor);
    Objects.requireNonNull(summary);
    Objects.requireNonNull(source);
    keys = Set.copyOf(keys);
  }

  /** A rule that asks no key of a design: it judges the inputs, or what every design implies. */
  public RuleInfo(String id, Group group, Severity floor, String summary, String source) {
    this(id, group, floor, summary, source, Set.of());
  }
}
