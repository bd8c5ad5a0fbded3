package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.util.List;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.result.Result;

/**
 * The report for a ticket, as CommonMark: the verdict first, then what breaks, what weakens, what
 * the text does not tell and what is untidy, each with its evidence.
 */
public final class MarkdownReport {
  private static final String INPUTS = "Inputs";

  private final Result result;
  private final StringBuilder text = new StringBuilder();
  private final EdgePortNote note = new EdgePortNote();

  private MarkdownReport(Result result) {
    this.result = result;
  }

  /** Writes the report; each line ends in a line feed. */
  public static String of(Result result) {
    return new MarkdownReport(result).write();
  }

  private String write() {
    Headline head = new Headline(result);
    line("# " + head.word() + ": " + Markdown.words(head.summary()));
    line("");
    line(Markdown.words(head.scope()));
    section("Not audited", result.notAudited());
    section("Rules that failed; this is a bug in plumbline", result.ruleFailures());
    for (Severity severity : Severity.values()) {
      findings(severity);
    }
    section(TextFooter.NOT_TOLD, TextFooter.notTold(result));
    section(INPUTS, List.of());
    result.design().forEach(file -> input(file.file(), "design", file.sha256()));
    configs();
    result.skipped().forEach(left -> line("- " + Markdown.words(left)));
    return text.toString();
  }

  private void section(String title, List<String> lines) {
    if (!lines.isEmpty() || title.equals(INPUTS)) {
      line("");
      line("## " + title);
      line("");
      lines.forEach(one -> line("- " + Markdown.words(one)));
    }
  }

  private void findings(Severity severity) {
    List<Finding> some =
        result.findings().stream().filter(one -> one.severity() == severity).toList();
    if (some.isEmpty()) {
      return;
    }
    line("");
    line("## " + title(severity) + " (" + some.size() + ")");
    FindingOrder.bySwitchWorstFirst(some)
        .forEach(
            (name, ofSwitch) -> {
              line("");
              line("### " + (name.isEmpty() ? Words.heading(ofSwitch) : Markdown.words(name)));
              Alike.of(ofSwitch).forEach(this::block);
            });
  }

  private static String title(Severity severity) {
    return switch (severity) {
      case BREAKS -> "What breaks";
      case WEAKENS -> "What weakens";
      case UNVERIFIED -> "What the text does not tell";
      case UNTIDY -> "What is untidy";
    };
  }

  private void block(Alike alike) {
    Finding one = alike.first();
    line("");
    line(
        "- **"
            + Markdown.words(alike.heading())
            + "**: "
            + Markdown.words(note.on(one.consequence())));
    part("found", Markdown.words(note.on(Words.withFewLines(one.found()))));
    part("designed", Markdown.words(note.on(one.designed())));
    part(
        "also at",
        Markdown.words(one.others().stream().map(Place::toString).collect(joining(", "))));
    alike.evidence().forEach(line -> part("config", Markdown.code(line)));
    one.design().ifPresent(at -> part("design", Markdown.code(at.file() + ":" + at.line())));
    part("rule", one.rule());
  }

  private void part(String label, String words) {
    if (!words.isBlank()) {
      line("  - " + label + ": " + words);
    }
  }

  private void configs() {
    if (result.configs().size() > TextFooter.MOST_INPUTS) {
      line("- " + result.configs().size() + " configs; a --report FILE.json lists each");
    } else {
      result.configs().forEach(file -> input(file.file(), file.switchName(), file.sha256()));
    }
  }

  private void input(String file, String what, String sha256) {
    line(
        "- "
            + Markdown.code(file)
            + ", "
            + Markdown.words(what)
            + ", SHA-256 "
            + Markdown.code(sha256));
  }

  private void line(String words) {
    text.append(words.stripTrailing()).append('\n');
  }
}
