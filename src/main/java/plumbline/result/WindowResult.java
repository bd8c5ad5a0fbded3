package plumbline.result;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Everything that reports of a change window say.
 *
 * @param verdict the verdict
 * @param reason why, a sentence
 * @param from the files of the design before the change; empty where none was given: the design
 *     alone is then the plan
 * @param audit the audit after the window, with what it was made from and what it does not tell
 * @param before the configs before the window, in the order given, folders sorted
 * @param after the configs after the window, likewise
 * @param rest configs of switches that the window did not touch, likewise
 * @param changes by switch, port (numeric), setting, VLANs
 * @param lines changed lines that are not judged, by switch and section
 * @param findings findings of both audits, by switch, port (numeric), rule, id
 * @param notCompared one line for each thing that had to be compared and could not be
 * @param remarks one line for each thing to be known of the inputs
 */
public record WindowResult(
    Word verdict,
    String reason,
    Optional<List<Result.InputFile>> from,
    Result audit,
    List<Result.ConfigFile> before,
    List<Result.ConfigFile> after,
    List<Result.ConfigFile> rest,
    List<Change> changes,
    List<LineChange> lines,
    List<WindowFinding> findings,
    List<String> notCompared,
    List<String> remarks) {
  /** Copies the lists. */
  public WindowResult {
    from = from.map(List::copyOf);
    before = List.copyOf(before);
    after = List.copyOf(after);
    rest = List.copyOf(rest);
    changes = List.copyOf(changes);
    lines = List.copyOf(lines);
    findings = List.copyOf(findings);
    notCompared = List.copyOf(notCompared);
    remarks = List.copyOf(remarks);
  }

  /** What a change window comes to. */
  public enum Word {
    /** All that was planned is done, and nothing else changed. */
    AS_PLANNED,
    /** Something planned is not done, something else changed, or drift was introduced. */
    NOT_AS_PLANNED,
    /** Neither can be said. */
    INCOMPLETE;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** How many changes are of a kind. */
  public int count(Change.Kind kind) {
    return (int) changes.stream().filter(change -> change.kind() == kind).count();
  }

  /** How many findings are in a state. */
  public int count(State state) {
    return (int) findings.stream().filter(finding -> finding.state() == state).count();
  }
}
