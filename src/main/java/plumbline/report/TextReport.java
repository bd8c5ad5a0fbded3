package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
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
  private final Result result;
  private final Page page;
  private final EdgePortNote note = new EdgePortNote();
  private final TextFollowUp followUp;
  private final TextWaivers waivers;

  private TextReport(Result result, Page.Look look) {
    this.result = result;
    this.page = new Page(look);
    this.followUp = new TextFollowUp(result);
    this.waivers = new TextWaivers(result);
  }

  /**
   * Writes the report.
   *
   * @param look how wide it is, and whether severities are coloured; they are spelled out anyway
   * @return lines of at most that width, each ending in a line feed
   */
  public static String of(Result result, Page.Look look) {
    return new TextReport(result, look).write();
  }

  /** Writes the report in the usual width. */
  public static String of(Result result, boolean colour) {
    return of(result, Page.Look.usual(colour));
  }

  private String write() {
    head();
    followUp.news().forEach(this::part);
    followUp.cleared(page);
    followUp.rest().forEach(this::part);
    followUp.unchecked(page);
    part(waivers.part());
    waivers.write(page);
    withoutFinding();
    result.followUp().past().ifPresent(past -> TextTrend.write(page, past));
    TextFooter.write(page, result);
    waivers.input().ifPresent(page::item);
    Legend.write(page, AllFindings.of(result));
    return page.toString();
  }

  private void part(TextFollowUp.Part part) {
    if (!part.title().isEmpty() && !part.findings().isEmpty()) {
      page.gap().heading(part.title());
    }
    FindingOrder.bySwitchWorstFirst(part.findings()).forEach(this::switchSection);
  }

  private void head() {
    Headline head = new Headline(result);
    page.marked(
        ink(result.verdict().result()),
        "",
        head.word() + ": ",
        head.summary() + followUp.summary());
    FindingOrder.worst(result.findings()).ifPresent(worst -> head("Worst: ", worst));
    followUp.worstNew().ifPresent(worst -> head("Worst new: ", worst));
    page.paragraph(head.scope());
  }

  private void head(String mark, Finding finding) {
    page.marked(Ink.PLAIN, "", mark, place(finding) + ": " + note.on(finding.consequence()));
  }

  private static Ink ink(Verdict.Word word) {
    return switch (word) {
      case CONFORMS -> Ink.WELL;
      case DRIFT -> Ink.ALARM;
      case INCOMPLETE -> Ink.DOUBT;
    };
  }

  /** Names the switches that were audited and that no finding is about. */
  private void withoutFinding() {
    List<Finding> findings =
        Stream.concat(result.findings().stream(), waivers.waived().stream()).toList();
    if (findings.isEmpty()) {
      return;
    }
    Set<String> found = new HashSet<>();
    for (Finding finding : findings) {
      found.add(finding.switchName());
      finding.others().forEach(place -> found.add(place.switchName()));
    }
    List<String> clean =
        new Headline(result)
            .audited().stream()
                .map(Result.ConfigFile::switchName)
                .filter(name -> !found.contains(name))
                .distinct()
                .toList();
    if (!clean.isEmpty()) {
      page.gap().heading("Without a finding").item(Words.names(clean));
    }
  }

  private void switchSection(String name, List<Finding> findings) {
    page.gap().heading(name.isEmpty() ? Words.heading(findings) : name);
    for (Alike alike : Alike.of(findings, followUp::key)) {
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
    followUp.lines(finding).forEach(this::plumb);
    String waived = "waived";
    for (String line : waivers.lines(finding)) {
      plumb(waived, line);
      waived = "";
    }
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
