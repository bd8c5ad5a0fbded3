package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.result.Result;
import plumbline.result.Verdict;
import plumbline.text.Page;
import plumbline.text.Page.Ink;

/**
 * The report that is read on a terminal: the verdict and the worst finding in the first lines, then
 * every finding by switch and port, worst first, then what the run does not tell.
 */
public final class TextReport {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Result result;
  private final Page page;
  private final EdgePortNote note = new EdgePortNote();

  private TextReport(Result result, boolean colour) {
    this.result = result;
    this.page = new Page(colour);
  }

  /**
   * Writes the report.
   *
   * @param colour whether severities are coloured; they are spelled out in any case
   * @return lines of at most 80 columns, each ending in a line feed
   */
  public static String of(Result result, boolean colour) {
    return new TextReport(result, colour).write();
  }

  private String write() {
    head();
    FindingOrder.bySwitchWorstFirst(result.findings()).forEach(this::switchSection);
    withoutFinding();
    TextFooter.write(page, result);
    Legend.write(page, result.findings());
    return page.toString();
  }

  private void head() {
    Verdict verdict = result.verdict();
    page.marked(ink(verdict.result()), "", word(verdict) + ": ", summary(verdict));
    FindingOrder.worst(result.findings())
        .ifPresent(
            worst ->
                page.marked(
                    Ink.PLAIN, "", "Worst: ", place(worst) + ": " + note.on(worst.consequence())));
    page.paragraph(scope(verdict));
  }

  private static String word(Verdict verdict) {
    return verdict.result().toString().toUpperCase(Locale.ROOT);
  }

  private static Ink ink(Verdict.Word word) {
    return switch (word) {
      case CONFORMS -> Ink.WELL;
      case DRIFT -> Ink.ALARM;
      case INCOMPLETE -> Ink.DOUBT;
    };
  }

  private String summary(Verdict verdict) {
    List<String> counts = new ArrayList<>();
    count(counts, "breaks", verdict.breaks());
    count(counts, "weakens", verdict.weakens());
    count(counts, "unverified", verdict.unverified());
    count(counts, "untidy", verdict.untidy());
    if (verdict.waived() > 0) {
      counts.add(verdict.waived() + " waived");
    }
    if (!result.notAudited().isEmpty()) {
      counts.add(result.notAudited().size() + " not audited");
    }
    long doubt = result.narrowed().portsInDoubt();
    if (doubt > 0) {
      counts.add(Words.count(doubt, "port") + " in doubt for a rule that was not asked");
    }
    String list = String.join(", ", counts);
    return switch (verdict.result()) {
      case DRIFT -> list + "." + narrowed();
      case INCOMPLETE -> incomplete(verdict, list) + "." + narrowed();
      case CONFORMS ->
          audited().stream().allMatch(config -> config.portsDesigned() == 0)
              ? "no port was checked: the design covers none of these switches."
              : conforming(counts.isEmpty() ? "" : "; " + list) + narrowed() + unchecked();
    };
  }

  private String incomplete(Verdict verdict, String list) {
    if (audited().isEmpty()) {
      return "nothing was audited" + (list.isEmpty() ? "" : ": " + list);
    }
    return verdict.checked() == 0
        ? "nothing was checked: no rule that was asked applies to what was given"
            + (list.isEmpty() ? "" : "; " + list)
        : "no drift found, but not everything could be decided: " + list;
  }

  /** Claims no more than what was checked. */
  private String conforming(String counts) {
    if (!counts.isEmpty()) {
      return "nothing that counts as drift in this run" + counts + ".";
    }
    return result.notChecked().isEmpty() && result.narrowed().rules().isEmpty()
        ? "nothing differs from the design."
        : "nothing that was checked differs from the design.";
  }

  private String narrowed() {
    int rules = result.narrowed().rules().size();
    return rules == 0
        ? ""
        : " Only "
            + rules
            + " of "
            + Words.count(rules + result.narrowed().unasked(), "rule")
            + (rules == 1 ? " was asked." : " were asked.");
  }

  private String unchecked() {
    int keys = result.notChecked().size();
    return keys == 0
        ? ""
        : " Not checked by this version: "
            + Words.count(keys, "key")
            + " of the design, named at the end.";
  }

  private List<Result.ConfigFile> audited() {
    return result.configs().stream().filter(Result.ConfigFile::inDesign).toList();
  }

  /** Names the switches that were audited and that no finding is about. */
  private void withoutFinding() {
    if (result.findings().isEmpty()) {
      return;
    }
    Set<String> found = new HashSet<>();
    for (Finding finding : result.findings()) {
      found.add(finding.switchName());
      finding.others().forEach(place -> found.add(place.switchName()));
    }
    List<String> clean =
        audited().stream()
            .map(Result.ConfigFile::switchName)
            .filter(name -> !found.contains(name))
            .distinct()
            .toList();
    if (!clean.isEmpty()) {
      page.gap().heading("Without a finding").item(Words.names(clean));
    }
  }

  private static void count(List<String> counts, String word, int number) {
    if (number > 0) {
      counts.add(word + " " + number);
    }
  }

  private String scope(Verdict verdict) {
    long switches = audited().stream().map(Result.ConfigFile::switchName).distinct().count();
    String site = result.site().map(name -> " of " + name).orElse("");
    String revision = result.revision().map(change -> ", design " + change).orElse("");
    return Words.count(verdict.checked(), "check")
        + " on "
        + Words.count(switches, "switch")
        + site
        + revision
        + ", as of "
        + MINUTE.format(result.at())
        + ".";
  }

  private void switchSection(String name, List<Finding> findings) {
    page.gap().heading(name.isEmpty() ? "No switch of the design" : name);
    for (Alike alike : Alike.of(findings)) {
      page.gap();
      block(alike);
    }
  }

  private void block(Alike alike) {
    Finding finding = alike.first();
    String severity = finding.severity().toString().toUpperCase(Locale.ROOT);
    page.marked(ink(finding), "  ", severity + "  ", alike.heading());
    plumb("found", note.on(Words.withFewLines(finding.found())));
    plumb("designed", note.on(finding.designed()));
    plumb("so", note.on(finding.consequence()));
    plumb("also at", finding.others().stream().map(Place::toString).collect(joining(", ")));
    String label = "config";
    for (String line : alike.evidence()) {
      plumb(label, line);
      label = "";
    }
    finding.design().ifPresent(at -> plumb("design", at.file() + ":" + at.line()));
    plumb("rule", finding.rule());
  }

  /** One labelled line along the plumb line; nothing where there is nothing to say. */
  private void plumb(String label, String words) {
    if (!words.isBlank()) {
      page.hanging(
          "  | " + (label + " ".repeat(10)).substring(0, 10), "  | " + " ".repeat(10), words);
    }
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
