package plumbline.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.result.Result;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.result.WindowResult;
import plumbline.text.Page;
import plumbline.text.Page.Ink;

/** The findings in the report on a change window: in full what is new, in one line what is not. */
final class WindowFindings {
  /** How many standing findings are listed. */
  private static final int MOST_LISTED = 12;

  private final Page page;
  private final WindowResult result;
  private final EdgePortNote note;
  private final List<Finding> shown = new ArrayList<>();

  WindowFindings(Page page, WindowResult result, EdgePortNote note) {
    this.page = page;
    this.result = result;
    this.note = note;
  }

  /** The findings written so far. */
  List<Finding> shown() {
    return List.copyOf(shown);
  }

  /** Findings that stand and that were cleared elsewhere in the window. */
  void notDone() {
    inFull("Done elsewhere in this window and not here", WindowFinding::notDone);
  }

  /** Findings that are new or worse. */
  void introduced() {
    inFull("Drift introduced", WindowFindings::isDrift);
  }

  /** Findings that say that the text does not tell. */
  void undecided() {
    inFull("Not decided after the window", WindowFindings::isUndecided);
  }

  /** Whether the window introduced a difference, or more of it. */
  static boolean isDrift(WindowFinding one) {
    return one.isIntroduced() && one.finding().severity() != Severity.UNVERIFIED;
  }

  /** Whether the text after does not tell what the text before did. */
  static boolean isUndecided(WindowFinding one) {
    return one.isIntroduced() && one.finding().severity() == Severity.UNVERIFIED;
  }

  private void inFull(String title, Predicate<WindowFinding> which) {
    List<WindowFinding> all =
        result.findings().stream()
            .filter(which)
            .sorted(Comparator.comparing(one -> one.finding().severity()))
            .toList();
    if (all.isEmpty()) {
      return;
    }
    page.gap().heading(title);
    for (WindowFinding one : all) {
      page.gap();
      block(one);
    }
  }

  private void block(WindowFinding one) {
    Finding finding = one.finding();
    shown.add(finding);
    page.marked(
        ink(finding),
        "  ",
        finding.severity().toString().toUpperCase(Locale.ROOT) + "  ",
        place(finding));
    plumb("found", note.on(Words.withFewLines(finding.found())));
    plumb("designed", note.on(finding.designed()));
    plumb("so", note.on(finding.consequence()));
    if (!one.newVlans().isEmpty()) {
      plumb("new", "VLANs " + one.newVlans());
    }
    String label = "config";
    for (String line : Words.evidence(finding.evidence())) {
      plumb(label, line);
      label = "";
    }
    finding.design().ifPresent(at -> plumb("design", at.file() + ":" + at.line()));
    plumb("rule", finding.rule());
  }

  private void plumb(String label, String words) {
    if (!words.isBlank()) {
      page.hanging(
          "  | " + (label + " ".repeat(10)).substring(0, 10), "  | " + " ".repeat(10), words);
    }
  }

  /** Findings that are gone, in whole or in part. */
  void cleared() {
    List<WindowFinding> all =
        result.findings().stream()
            .filter(one -> one.state() == State.CLEARED || !one.clearedVlans().isEmpty())
            .toList();
    listed("Drift cleared", all, all.size());
  }

  /** Findings that stand on the switches of the window, and how many stand elsewhere. */
  void standing() {
    Set<String> switches =
        Stream.concat(result.before().stream(), result.after().stream())
            .map(Result.ConfigFile::switchName)
            .collect(Collectors.toSet());
    List<WindowFinding> all =
        result.findings().stream().filter(WindowFindings::isStanding).toList();
    List<WindowFinding> here =
        all.stream().filter(one -> isAbout(one.finding(), switches)).toList();
    listed("Drift standing", here, all.size());
  }

  /** Whether a finding was there before as it is now, or partly, and nothing more is to be said. */
  static boolean isStanding(WindowFinding one) {
    return (one.state() == State.STANDING || one.state() == State.CHANGED)
        && !one.notDone()
        && !one.isIntroduced();
  }

  /** Findings of which one side does not tell. */
  void unchecked() {
    List<WindowFinding> all =
        result.findings().stream().filter(one -> one.state() == State.UNCHECKED).toList();
    listed("Not checked on both sides", all, all.size());
  }

  private static boolean isAbout(Finding finding, Set<String> switches) {
    return finding.place().isEmpty()
        || Stream.concat(finding.place().stream(), finding.others().stream())
            .map(Place::switchName)
            .anyMatch(switches::contains);
  }

  private void listed(String title, List<WindowFinding> all, int inTotal) {
    if (inTotal == 0) {
      return;
    }
    page.gap().heading(title);
    all.stream().limit(MOST_LISTED).forEach(this::line);
    int more = Math.max(0, all.size() - MOST_LISTED);
    if (more > 0) {
      page.item("and " + more + " more, each in a --report FILE.json");
    }
    int elsewhere = inTotal - all.size();
    if (elsewhere > 0) {
      page.item(Words.count(elsewhere, "finding") + " on switches that are not in the window");
    }
  }

  private void line(WindowFinding one) {
    Finding finding = one.finding();
    shown.add(finding);
    page.item(
        finding.severity().toString().toUpperCase(Locale.ROOT)
            + " "
            + place(finding)
            + ": "
            + note.on(Words.withFewLines(finding.found()))
            + (one.clearedVlans().isEmpty() ? "" : "; no more about VLANs " + one.clearedVlans())
            + " ("
            + finding.rule()
            + ")");
  }

  private static String place(Finding finding) {
    if (finding.place().isEmpty()) {
      return Words.file(finding);
    }
    String where = finding.place().get().toString();
    return finding.subject().isEmpty() ? where : where + " (" + finding.subject() + ")";
  }

  private static Ink ink(Finding finding) {
    return switch (finding.severity()) {
      case BREAKS -> Ink.ALARM;
      case WEAKENS -> Ink.CAUTION;
      case UNVERIFIED -> Ink.DOUBT;
      case UNTIDY -> Ink.PLAIN;
    };
  }
}
