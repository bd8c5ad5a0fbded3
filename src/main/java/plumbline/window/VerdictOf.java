package plumbline.window;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.result.Change;
import plumbline.result.Change.Kind;
import plumbline.result.LineChange;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.result.WindowResult.Word;
import plumbline.setting.Keys;
import plumbline.vlan.VlanSet;

/** The one verdict on a window, and its reason. */
final class VerdictOf {
  private static final Set<Kind> ELSE = Set.of(Kind.UNPLANNED, Kind.AWAY, Kind.BESIDE);

  private final Window.Input input;
  private final List<Change> changes;
  private final List<LineChange> lines;
  private final List<WindowFinding> findings;
  private final List<String> notCompared;
  private final List<String> doubts;
  private final List<String> wrong;
  private final List<String> open;

  VerdictOf(
      Window.Input input,
      List<Change> changes,
      List<LineChange> lines,
      List<WindowFinding> findings,
      List<String> notCompared,
      List<String> doubts) {
    this.input = input;
    this.changes = changes;
    this.lines = lines;
    this.findings = findings;
    this.notCompared = notCompared;
    this.doubts = doubts;
    this.wrong = wrong();
    this.open = open();
  }

  /** The verdict. */
  Word word() {
    if (!doubts.isEmpty()) {
      return Word.INCOMPLETE;
    }
    if (!wrong.isEmpty()) {
      return Word.NOT_AS_PLANNED;
    }
    return open.isEmpty() ? Word.AS_PLANNED : Word.INCOMPLETE;
  }

  /** Why, in one sentence: the first reason, and how many there are besides. */
  String reason() {
    return switch (word()) {
      case AS_PLANNED -> asPlanned();
      case NOT_AS_PLANNED -> first(wrong);
      case INCOMPLETE -> first(doubts.isEmpty() ? open : doubts);
    };
  }

  private static String first(List<String> reasons) {
    int more = reasons.size() - 1;
    String words = reasons.get(0) + (more == 0 ? "" : "; and " + more + " more");
    return words.endsWith(".") ? words : words + ".";
  }

  private List<String> wrong() {
    List<String> reasons = new ArrayList<>();
    changes.stream()
        .filter(change -> change.kind() == Kind.PLANNED_NOT_DONE)
        .forEach(change -> reasons.add("not done at " + change.place() + ": " + undone(change)));
    Set<Optional<Place>> told =
        changes.stream()
            .filter(change -> change.kind() == Kind.PLANNED_NOT_DONE)
            .map(change -> Optional.of(change.place()))
            .collect(Collectors.toCollection(HashSet::new));
    findings.stream()
        .filter(one -> one.notDone() && !told.contains(one.finding().place()))
        .forEach(one -> reasons.add("not done at " + told(one.finding())));
    List<Finding> introduced = introduced();
    Set<Optional<Place>> broken =
        introduced.stream()
            .filter(finding -> finding.severity() == Severity.BREAKS)
            .map(Finding::place)
            .collect(Collectors.toSet());
    List<Change> others =
        changes.stream()
            .filter(change -> ELSE.contains(change.kind()))
            .sorted(
                Comparator.comparing(
                        (Change change) -> !broken.contains(Optional.of(change.place())))
                    .thenComparing(Change::kind))
            .toList();
    others.forEach(
        change -> reasons.add(title(change.kind()) + change.place() + ": " + done(change)));
    others.forEach(change -> told.add(Optional.of(change.place())));
    introduced.stream()
        .filter(finding -> !told.contains(finding.place()))
        .forEach(finding -> reasons.add("introduced at " + told(finding)));
    return reasons;
  }

  /** Findings that the window introduced and that count, the worst first. */
  private List<Finding> introduced() {
    return findings.stream()
        .filter(one -> one.isIntroduced() && one.finding().severity().reaches(input.failOn()))
        .map(WindowFinding::finding)
        .sorted(Comparator.comparing(Finding::severity))
        .toList();
  }

  private static String title(Kind kind) {
    return switch (kind) {
      case UNPLANNED -> "unplanned at ";
      case AWAY -> "away from the design at ";
      default -> "beside the design at ";
    };
  }

  private static String undone(Change change) {
    if (change.setting().equals(Keys.ALLOWED.name())) {
      VlanSet list = change.after().flatMap(VlanSet::parse).orElse(VlanSet.NONE);
      String state = list.intersects(change.vlans()) ? " still allowed" : " not allowed";
      return vlans(change).strip() + state;
    }
    if (change.setting().equals(Point.VLAN)) {
      String state = change.after().isPresent() ? " still there" : " not created";
      return vlans(change).strip() + state;
    }
    return change.setting()
        + (change.vlans().isEmpty() ? "" : vlans(change))
        + " "
        + change.wordsAfter()
        + ", designed "
        + change.designed().orElse("nothing");
  }

  private static String done(Change change) {
    return change.setting()
        + (change.vlans().isEmpty() ? "" : vlans(change))
        + (change.setting().equals(Keys.ALLOWED.name())
            ? ""
            : " " + change.wordsBefore() + " -> " + change.wordsAfter());
  }

  private static String vlans(Change change) {
    return (change.vlans().size() == 1 ? " VLAN " : " VLANs ") + change.vlans();
  }

  private static String told(Finding finding) {
    String place = finding.place().map(Object::toString).orElse(finding.subject());
    return place + ": " + finding.found();
  }

  private List<String> open() {
    List<String> reasons = new ArrayList<>(notCompared);
    changes.stream()
        .filter(change -> change.kind() == Kind.UNDECIDED)
        .forEach(
            change -> reasons.add("not decided at " + change.place() + ": " + change.setting()));
    lines.stream()
        .filter(line -> !line.harmless())
        .forEach(
            line ->
                reasons.add(
                    "lines that are not judged changed on "
                        + line.switchName()
                        + ": "
                        + line.section()));
    findings.stream()
        .filter(one -> one.state() == State.NEW || one.state() == State.UNCHECKED)
        .filter(one -> one.finding().severity() == Severity.UNVERIFIED)
        .forEach(one -> reasons.add("not decided at " + told(one.finding())));
    nothing().ifPresent(reasons::add);
    return reasons;
  }

  /** Without a plan, that nothing changed is as planned only where nothing was left to do. */
  private Optional<String> nothing() {
    long left =
        findings.stream()
            .filter(one -> one.state() == State.STANDING || one.state() == State.CHANGED)
            .filter(one -> one.finding().severity().reaches(input.failOn()))
            .count();
    return changes.isEmpty() && lines.isEmpty() && input.from().isEmpty() && left > 0
        ? Optional.of(
            "nothing changed, and "
                + count(left, "finding")
                + (left == 1 ? " stands" : " stand")
                + "; whether that was the plan only --from can tell")
        : Optional.empty();
  }

  private String asPlanned() {
    int planned = count(Kind.PLANNED_DONE);
    int towards = count(Kind.TOWARDS);
    if (changes.isEmpty()) {
      return input.from().isPresent()
          ? "nothing changed, and nothing that is planned is left to do."
          : "nothing changed, and nothing was left to do.";
    }
    if (input.from().isPresent()) {
      String done =
          switch (planned) {
            case 0 -> "all that is planned was done before";
            case 1 -> "the planned change is done";
            default -> "all " + planned + " planned changes are done";
          };
      return done + ", and nothing else changed.";
    }
    return (towards == 1
            ? "1 change, towards the design"
            : towards + " changes, all towards the design")
        + ", and nothing else.";
  }

  private int count(Kind kind) {
    return (int) changes.stream().filter(change -> change.kind() == kind).count();
  }

  private static String count(long number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }
}
