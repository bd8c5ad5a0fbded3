package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import plumbline.finding.Place;
import plumbline.result.Result;
import plumbline.result.Result.ConfigFile;
import plumbline.text.Page;

/** The end of a text report: what was not audited, what it cannot tell, what it was made from. */
final class TextFooter {
  /** Above this number the inputs are summed up, so that a report of a fleet stays readable. */
  static final int MOST_INPUTS = 12;

  /** The heading over what the run leaves open. */
  static final String NOT_TOLD = "What this report does not tell";

  private TextFooter() {}

  static void write(Page page, Result result) {
    section(page, "Not audited", result.notAudited());
    section(page, "Rules that failed; this is a bug in plumbline", result.ruleFailures());
    section(page, NOT_TOLD, notTold(result));
    page.gap().heading("Inputs");
    item(
        page,
        "Design: " + result.design().stream().map(Result.InputFile::file).collect(joining(", ")));
    configs(page, result.configs());
    result.skipped().forEach(line -> item(page, line));
  }

  /** What the run leaves open, one line each. */
  static List<String> notTold(Result result) {
    List<String> lines = new ArrayList<>(narrowed(result.narrowed()));
    if (!result.notInScope().isEmpty()) {
      lines.add(
          "Outside this run: "
              + Words.names(result.notInScope())
              + (result.notInScope().size() == 1 ? ". Its ports" : ". Their ports")
              + ", and what needs both ends of a link or both ports of a pair "
              + (result.notInScope().size() == 1 ? "on it" : "on them")
              + ", were not checked.");
    }
    if (!result.ageUnknown().isEmpty()) {
      boolean one = result.ageUnknown().size() == 1;
      lines.add(
          "The design sets max-age-days, but "
              + (one
                  ? "the text of 1 switch does not tell how old it is: "
                  : "the texts of "
                      + result.ageUnknown().size()
                      + " switches do not tell how old they are: ")
              + Words.names(result.ageUnknown())
              + ".");
    }
    if (!result.notChecked().isEmpty()) {
      lines.add(
          "No rule of this version checks these keys of the design: "
              + result.notChecked().stream().map(TextFooter::describe).collect(joining(", "))
              + ". What they ask may differ unseen.");
    }
    lines.add(
        result.silentRules().isEmpty()
            ? "The design switches no rule off."
            : "Rules that the design switches off: "
                + String.join(", ", result.silentRules())
                + ".");
    lines.add(
        "Config text does not show link state, ports that the switch itself disabled, cabling,"
            + " addresses learned, or settings that wait for a reload.");
    return lines;
  }

  private static List<String> narrowed(Result.Narrowed narrowed) {
    List<String> lines = new ArrayList<>();
    if (!narrowed.rules().isEmpty()) {
      lines.add(
          "Only these rules were asked: "
              + String.join(", ", narrowed.rules())
              + ". What "
              + (narrowed.unasked() == 1
                  ? "the other one"
                  : "the " + narrowed.unasked() + " others")
              + " would report is not told.");
    }
    for (Result.InFront one : narrowed.inFront()) {
      lines.add(
          "Not asked, but it bears on what was asked: "
              + one.rule()
              + " at "
              + Words.names(one.places().stream().map(Place::toString).toList())
              + ".");
    }
    if (!narrowed.switches().isEmpty()) {
      lines.add("Only these switches were asked for: " + Words.names(narrowed.switches()) + ".");
    }
    return lines;
  }

  private static void section(Page page, String title, List<String> lines) {
    if (!lines.isEmpty()) {
      page.gap().heading(title);
      lines.forEach(line -> item(page, line));
    }
  }

  private static void item(Page page, String words) {
    page.item(words);
  }

  private static void configs(Page page, List<ConfigFile> configs) {
    if (configs.size() <= MOST_INPUTS) {
      configs.forEach(config -> item(page, describe(config)));
      return;
    }
    Map<String, Integer> dialects = new TreeMap<>();
    int unknown = 0;
    int ports = 0;
    int designed = 0;
    for (ConfigFile config : configs) {
      dialects.merge(config.dialect(), 1, Integer::sum);
      unknown += config.unknownStatements();
      ports += config.ports();
      designed += config.portsDesigned();
    }
    item(
        page,
        Words.count(configs.size(), "config")
            + ", by dialect: "
            + dialects.entrySet().stream()
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(joining(", "))
            + "; "
            + Words.count(unknown, "unknown statement")
            + "; "
            + Words.count(designed, "port")
            + " in the design, "
            + ports
            + " in the configs. A --report FILE.json lists each.");
  }

  private static String describe(Result.NotChecked asked) {
    return asked.key() + " (" + Words.count(asked.uses(), asked.of()) + ")";
  }

  private static String describe(ConfigFile config) {
    return config.file()
        + ": "
        + config.switchName()
        + ", "
        + Words.count(config.lines(), "line")
        + ", "
        + (config.inDesign()
            ? Words.count(config.portsDesigned(), "port") + " in the design, "
            : "")
        + (config.inDesign() ? config.ports() + "" : Words.count(config.ports(), "port"))
        + " in the config, "
        + config.dialect()
        + " dialect ("
        + config.dialectReason()
        + "), "
        + Words.count(config.unknownStatements(), "unknown statement");
  }
}
