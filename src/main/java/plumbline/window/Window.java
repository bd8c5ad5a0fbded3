package plumbline.window;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.result.Change;
import plumbline.result.Change.Kind;
import plumbline.result.LineChange;
import plumbline.result.WindowFinding;
import plumbline.result.WindowResult;

/** Compares a network before and after a change window: a pure function of texts and designs. */
public final class Window {
  private Window() {}

  /**
   * Everything that is compared.
   *
   * @param design the design
   * @param from the design before the change; where it is given, the plan is where the two differ
   * @param switches the switches that are on both sides
   * @param rest switches that the window did not touch
   * @param oneSided names of switches that are on one side only, or whose other side could not be
   *     read
   * @param before the findings of the audit before the window
   * @param after the findings of the audit after the window
   * @param faults one line for each thing that is known already not to be comparable
   * @param failOn the severity from which on an introduced finding is not as planned
   */
  public record Input(
      Design design,
      Optional<Design> from,
      List<SwitchWindow> switches,
      List<SwitchWindow> rest,
      Set<String> oneSided,
      List<Finding> before,
      List<Finding> after,
      List<String> faults,
      Severity failOn) {
    /** Copies the collections. */
    public Input {
      switches = List.copyOf(switches);
      rest = List.copyOf(rest);
      oneSided = Set.copyOf(oneSided);
      before = List.copyOf(before);
      after = List.copyOf(after);
      faults = List.copyOf(faults);
    }
  }

  /**
   * What the comparison comes to.
   *
   * @param verdict the verdict
   * @param reason why, a sentence
   * @param changes by switch, port (numeric), setting, VLANs
   * @param lines changed lines that are not judged, by switch and section
   * @param findings the findings of both audits
   * @param notCompared one line for each thing that had to be compared and could not be
   */
  public record Outcome(
      WindowResult.Word verdict,
      String reason,
      List<Change> changes,
      List<LineChange> lines,
      List<WindowFinding> findings,
      List<String> notCompared) {
    /** Copies the lists. */
    public Outcome {
      changes = List.copyOf(changes);
      lines = List.copyOf(lines);
      findings = List.copyOf(findings);
      notCompared = List.copyOf(notCompared);
    }
  }

  /** Compares. */
  public static Outcome compare(Input input) {
    List<Change> changes = new ArrayList<>();
    List<LineChange> lines = new ArrayList<>();
    List<String> notCompared = new ArrayList<>(input.faults());
    for (SwitchWindow window : input.switches()) {
      SwitchJudge.Answer answer = SwitchJudge.of(window, input.design(), input.from());
      changes.addAll(Changes.of(window, input.design(), answer.judged()));
      lines.addAll(LineComparison.of(window, told(answer.judged())));
      notCompared.addAll(Gaps.of(window, answer.leftOpen(), input.faults()));
    }
    if (input.from().isPresent()) {
      for (SwitchWindow window : input.rest()) {
        SwitchJudge.Answer answer = SwitchJudge.of(window, input.design(), input.from());
        changes.addAll(Changes.of(window, input.design(), answer.judged()));
      }
      notCompared.addAll(Gaps.ofPlan(input));
    }
    Set<String> openBefore = open(input, window -> window.before());
    Set<String> openAfter = open(input, window -> window.after());
    List<WindowFinding> findings =
        FindingComparison.withUncovered(
            new FindingComparison(openBefore, openAfter).of(input.before(), input.after()));
    if (input.from().isEmpty()) {
      findings = FindingComparison.withNotDone(findings, new Partners(input.design()));
    }
    List<String> doubts =
        input.switches().stream()
            .flatMap(window -> Doubts.of(window).stream().map(why -> window.name() + ": " + why))
            .toList();
    VerdictOf verdict = new VerdictOf(input, changes, lines, findings, notCompared, doubts);
    return new Outcome(
        verdict.word(),
        verdict.reason(),
        changes,
        lines,
        findings,
        Stream.concat(doubts.stream(), notCompared.stream()).toList());
  }

  /** Picks one side of a switch. */
  private interface Pick {
    Side of(SwitchWindow window);
  }

  private static Set<String> open(Input input, Pick side) {
    Set<String> open = new TreeSet<>(input.oneSided());
    input.switches().stream()
        .filter(window -> side.of(window).isPart())
        .forEach(window -> open.add(window.name()));
    return open;
  }

  /** Ports and settings that are reported as changed, as the comparison of lines takes them. */
  private static Set<String> told(List<Judged> judged) {
    return judged.stream()
        .filter(one -> one.kind() != Kind.FOLLOWS && one.point().port().isPresent())
        .map(one -> one.point().port().get() + " " + one.point().setting())
        .collect(Collectors.toCollection(HashSet::new));
  }
}
