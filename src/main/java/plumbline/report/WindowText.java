package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;
import plumbline.finding.Proof;
import plumbline.result.Change;
import plumbline.result.Change.Kind;
import plumbline.result.LineChange;
import plumbline.result.Result;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.result.WindowResult;
import plumbline.text.Page;
import plumbline.text.Page.Ink;

/**
 * The report on a change window that is read on a terminal: the verdict with its reason in the
 * first line, then what is not as planned, then what is, then what the run does not tell.
 */
public final class WindowText {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** How many lines of evidence stand below a value. */
  private static final int MOST_EVIDENCE = 3;

  private final WindowResult result;
  private final Page page;
  private final EdgePortNote note = new EdgePortNote();

  private WindowText(WindowResult result, Page.Look look) {
    this.result = result;
    this.page = new Page(look);
  }

  /**
   * Writes the report.
   *
   * @param look how the page looks; what it says is spelled out in any case
   * @return lines as wide as the look has them, each ending in a line feed
   */
  public static String of(WindowResult result, Page.Look look) {
    return new WindowText(result, look).write();
  }

  private String write() {
    head();
    WindowFindings findings = new WindowFindings(page, result, note);
    changes("Planned and not done", Kind.PLANNED_NOT_DONE, Ink.ALARM);
    findings.notDone();
    changes("Not planned", Kind.UNPLANNED, Ink.ALARM);
    changes("Away from the design", Kind.AWAY, Ink.ALARM);
    changes("Beside the design", Kind.BESIDE, Ink.CAUTION);
    findings.introduced();
    findings.undecided();
    changes("Not decided", Kind.UNDECIDED, Ink.DOUBT);
    lines("Lines that changed and are not judged", false);
    changes("Planned and done", Kind.PLANNED_DONE, Ink.WELL);
    changes("Towards the design", Kind.TOWARDS, Ink.WELL);
    follows();
    lines("Lines that changed and have no bearing on what is compared", true);
    findings.cleared();
    findings.standing();
    findings.unchecked();
    if (!result.notCompared().isEmpty()) {
      page.gap().heading("Not compared");
      result.notCompared().forEach(page::item);
    }
    Footer.write(page, result);
    Legend.write(page, findings.shown());
    return page.toString();
  }

  private void head() {
    String word = result.verdict().toString().toUpperCase(Locale.ROOT);
    page.marked(ink(), "", word + ": ", note.on(Words.withFewLines(result.reason())));
    page.paragraph(counts());
    Result audit = result.audit();
    page.paragraph(
        compared()
            + ". "
            + audit.site().map(name -> name + ", ").orElse("")
            + audit.revision().map(change -> "design " + change + ", ").orElse("")
            + "as of "
            + MINUTE.format(audit.at())
            + ".");
    if (result.rest().isEmpty() && !audit.notInScope().isEmpty()) {
      page.paragraph(
          "Without --rest, links, pairs and services that reach "
              + Words.names(audit.notInScope())
              + " are unchecked.");
    }
  }

  private Ink ink() {
    return switch (result.verdict()) {
      case AS_PLANNED -> Ink.WELL;
      case NOT_AS_PLANNED -> Ink.ALARM;
      case INCOMPLETE -> Ink.DOUBT;
    };
  }

  private String compared() {
    List<String> after = result.after().stream().map(Result.ConfigFile::switchName).toList();
    List<String> both =
        result.before().stream()
            .map(Result.ConfigFile::switchName)
            .filter(after::contains)
            .sorted()
            .toList();
    return both.isEmpty()
        ? "No switch compared"
        : Words.count(both.size(), "switch") + " compared: " + Words.names(both);
  }

  private String counts() {
    List<String> kinds = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      int number = result.count(kind);
      if (number > 0) {
        kinds.add(number + " " + kind);
      }
    }
    int lines = result.lines().stream().mapToInt(line -> line.added() + line.removed()).sum();
    long notDone = count(WindowFinding::notDone);
    long undecided = count(WindowFindings::isUndecided);
    int unchecked = result.count(State.UNCHECKED);
    return "Changes: "
        + (kinds.isEmpty() ? "none" : String.join(", ", kinds))
        + (result.lines().isEmpty()
            ? ""
            : "; besides "
                + Words.count(lines, "line")
                + " in "
                + Words.count(result.lines().size(), "section"))
        + ". Findings: "
        + result.count(State.CLEARED)
        + " cleared, "
        + (notDone == 0 ? "" : notDone + " not done, ")
        + count(WindowFindings::isDrift)
        + " introduced, "
        + count(WindowFindings::isStanding)
        + " standing"
        + (undecided == 0 ? "" : ", " + undecided + " undecided")
        + (unchecked == 0 ? "" : ", " + unchecked + " unchecked")
        + ".";
  }

  private long count(Predicate<WindowFinding> which) {
    return result.findings().stream().filter(which).count();
  }

  private void changes(String title, Kind kind, Ink ink) {
    List<Change> all = result.changes().stream().filter(one -> one.kind() == kind).toList();
    if (all.isEmpty()) {
      return;
    }
    page.gap().heading(title);
    for (List<Change> alike : alike(all)) {
      page.gap();
      block(alike, ink);
    }
  }

  /** Changes of one switch that differ in the port only, in the order of the first. */
  private static List<List<Change>> alike(List<Change> changes) {
    Map<Object, List<Change>> groups = new LinkedHashMap<>();
    for (Change one : changes) {
      groups
          .computeIfAbsent(
              List.of(
                  one.place().switchName(),
                  one.place().port().isPresent(),
                  one.setting(),
                  one.vlans(),
                  one.before(),
                  one.after(),
                  one.designed()),
              any -> new ArrayList<>())
          .add(one);
    }
    return List.copyOf(groups.values());
  }

  private void block(List<Change> alike, Ink ink) {
    Change first = alike.get(0);
    page.marked(ink, "  ", heading(alike), "");
    value("before", first.wordsBefore(), first.evidenceBefore());
    value("after", first.wordsAfter(), first.evidenceAfter());
    first.designed().ifPresent(words -> plumb("designed", words));
    first.design().ifPresent(at -> plumb("design", at.file() + ":" + at.line()));
  }

  private String heading(List<Change> alike) {
    Change first = alike.get(0);
    String ports = PortRanges.of(alike.stream().map(one -> one.place().port().orElse("")).toList());
    String subject = alike.size() > 1 ? Words.count(alike.size(), "port") : first.subject();
    return first.place().switchName()
        + (ports.isEmpty() ? "" : " " + ports)
        + (subject.isEmpty() ? "" : " (" + subject + ")")
        + ": "
        + what(first);
  }

  private String what(Change change) {
    return note.on(change.setting())
        + (change.vlans().isEmpty()
            ? ""
            : (change.vlans().size() == 1 ? ", VLAN " : ", VLANs ") + change.vlans());
  }

  private void value(String label, String words, List<Proof> evidence) {
    plumb(label, words);
    List<String> lines = Words.evidence(evidence);
    lines.stream().limit(MOST_EVIDENCE).forEach(line -> plumb("", line));
    if (lines.size() > MOST_EVIDENCE) {
      plumb("", "and " + (lines.size() - MOST_EVIDENCE) + " more, each in a --report FILE.json");
    }
  }

  /** One labelled line along the plumb line. */
  private void plumb(String label, String words) {
    page.hanging(
        "  | " + (label + " ".repeat(10)).substring(0, 10), "  | " + " ".repeat(10), words);
  }

  private void follows() {
    List<Change> all = result.changes().stream().filter(one -> one.kind() == Kind.FOLLOWS).toList();
    if (all.isEmpty()) {
      return;
    }
    page.gap().heading("Follows from these changes");
    for (List<Change> alike : alike(all)) {
      Change first = alike.get(0);
      page.item(heading(alike) + ": " + first.wordsBefore() + " -> " + first.wordsAfter());
    }
  }

  private void lines(String title, boolean harmless) {
    List<LineChange> all =
        result.lines().stream().filter(line -> line.harmless() == harmless).toList();
    if (all.isEmpty()) {
      return;
    }
    page.gap().heading(title);
    all.forEach(line -> page.item(words(line)));
  }

  private static String words(LineChange line) {
    String first =
        line.firstWords().isEmpty()
            ? ""
            : "; first words: " + line.firstWords().stream().collect(joining(" ..., ")) + " ...";
    return line.switchName()
        + ", "
        + line.section()
        + ": "
        + Stream.of(
                line.added() == 0 ? "" : line.added() + " added",
                line.removed() == 0 ? "" : line.removed() + " removed",
                line.reordered() ? "the same lines in another order" : "")
            .filter(part -> !part.isEmpty())
            .collect(joining(", "))
        + first;
  }

  /** The end of the report. */
  private static final class Footer {
    private Footer() {}

    static void write(Page page, WindowResult result) {
      TextFooter.write(page, result.audit());
      page.gap().heading("Before the window");
      result.before().forEach(file -> page.item(file.file() + ": " + file.switchName()));
      if (result.before().isEmpty()) {
        page.item("no config");
      }
      result
          .from()
          .ifPresent(
              files ->
                  page.item(
                      "Design before the change: "
                          + files.stream().map(Result.InputFile::file).collect(joining(", "))));
    }
  }
}
