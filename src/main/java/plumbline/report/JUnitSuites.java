package plumbline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.report.JUnitSuite.Answer;
import plumbline.report.JUnitSuite.Case;
import plumbline.report.JUnitSuite.Property;
import plumbline.result.Result;
import plumbline.result.Result.RuleCount;

/** A result cut into suites and cases. */
final class JUnitSuites {
  /** The suite of what is at no switch; the brackets keep it apart from switches' names. */
  private static final String RUN = "(run)";

  private final Result result;
  private final Severity failOn;
  private final SortedMap<String, SortedMap<String, RuleCount>> counts = new TreeMap<>();
  private final Map<String, Map<String, List<Finding>>> findings = new TreeMap<>();

  private JUnitSuites(Result result, Severity failOn) {
    this.result = result;
    this.failOn = failOn;
    for (Result.ConfigFile config : result.configs()) {
      if (config.inDesign()) {
        ofSwitch(config.switchName());
      }
    }
    result
        .switchChecks()
        .forEach(one -> ofSwitch(one.switchName()).put(one.count().rule(), one.count()));
    for (Finding one : result.findings()) {
      ofSwitch(one.switchName()).putIfAbsent(one.rule(), new RuleCount(one.rule(), 0, 0, 0));
      findings
          .computeIfAbsent(one.switchName(), any -> new TreeMap<>())
          .computeIfAbsent(one.rule(), any -> new ArrayList<>())
          .add(one);
    }
  }

  private SortedMap<String, RuleCount> ofSwitch(String name) {
    return counts.computeIfAbsent(name, any -> new TreeMap<>());
  }

  /** The suite of the run, then those of the switches by name. */
  static List<JUnitSuite> of(Result result, Severity failOn) {
    return new JUnitSuites(result, failOn).suites();
  }

  private List<JUnitSuite> suites() {
    List<JUnitSuite> suites = new ArrayList<>();
    List<Case> ofRun = new ArrayList<>(List.of(inputs(), rules()));
    ofRun.addAll(cases(""));
    List<Property> about = new ArrayList<>();
    about.add(new Property("verdict", result.verdict().result().toString()));
    about.add(new Property("fail-on", failOn.toString()));
    result.revision().ifPresent(revision -> about.add(new Property("revision", revision)));
    result.design().forEach(file -> file(about, "design", file.file(), file.sha256()));
    if (!result.silentRules().isEmpty()) {
      about.add(new Property("silent", String.join(",", result.silentRules())));
    }
    if (!result.notInScope().isEmpty()) {
      about.add(new Property("outside", String.join(",", result.notInScope())));
    }
    suites.add(new JUnitSuite(RUN, about, ofRun));
    for (String name : counts.keySet()) {
      if (!name.isEmpty()) {
        suites.add(new JUnitSuite(name, configs(name), cases(name)));
      }
    }
    return suites;
  }

  private List<Property> configs(String name) {
    List<Property> files = new ArrayList<>();
    result.configs().stream()
        .filter(config -> config.switchName().equals(name))
        .forEach(config -> file(files, "config", config.file(), config.sha256()));
    return files;
  }

  private static void file(List<Property> to, String kind, String file, String sha256) {
    to.add(new Property(kind, file));
    to.add(new Property(kind + " sha-256", sha256));
  }

  /** Whether all was audited that had to be; a server that looks at nothing else must fail. */
  private Case inputs() {
    List<String> lines = new ArrayList<>(result.notAudited());
    if (result.verdict().checked() == 0) {
      lines.add("nothing was checked: no rule that was asked applies to what was given");
    }
    return lines.isEmpty()
        ? new Case("(every input was audited)", Answer.PASS, "", "", List.of())
        : new Case("(every input was audited)", Answer.ERROR, lines.get(0), "not-audited", lines);
  }

  private Case rules() {
    List<String> lines = result.ruleFailures();
    return lines.isEmpty()
        ? new Case("(every rule ran)", Answer.PASS, "", "", List.of())
        : new Case("(every rule ran)", Answer.ERROR, lines.get(0), "bug", lines);
  }

  private List<Case> cases(String name) {
    List<Case> cases = new ArrayList<>();
    counts
        .getOrDefault(name, new TreeMap<>())
        .forEach(
            (rule, count) ->
                cases.add(
                    of(
                        count,
                        findings.getOrDefault(name, Map.of()).getOrDefault(rule, List.of()))));
    return cases;
  }

  private Case of(RuleCount count, List<Finding> found) {
    Optional<Finding> worst = FindingOrder.worst(found);
    List<String> words = found.stream().flatMap(one -> words(one).stream()).toList();
    if (worst.isPresent() && worst.get().severity().reaches(failOn)) {
      return new Case(
          count.rule(),
          Answer.FAILURE,
          message(found, worst.get()),
          worst.get().severity().toString(),
          words);
    }
    Optional<Finding> open =
        found.stream().filter(one -> one.severity() == Severity.UNVERIFIED).findFirst();
    if (open.isPresent()) {
      return new Case(
          count.rule(), Answer.SKIPPED, message(found, open.get()), "unverified", words);
    }
    if (count.undecided() > 0) {
      return elsewhere(
          count, Words.count(count.undecided(), "subject") + " could not be decided here", words);
    }
    if (found.isEmpty() && count.differs() > 0) {
      return elsewhere(count, Words.count(count.differs(), "difference"), words);
    }
    return new Case(count.rule(), Answer.PASS, "", "", words);
  }

  /** Not a pass: it differs or is undecided for a reason that has a finding of its own. */
  private static Case elsewhere(RuleCount count, String what, List<String> words) {
    String message = what + "; another finding tells the reason";
    return new Case(count.rule(), Answer.SKIPPED, message, "elsewhere", words);
  }

  private static String message(List<Finding> found, Finding one) {
    String more = found.size() == 1 ? "" : " (" + (found.size() - 1) + " more below)";
    return one.severity() + ": " + where(one) + ": " + one.consequence() + more;
  }

  private static String where(Finding one) {
    return new Alike(List.of(one)).heading();
  }

  private static List<String> words(Finding one) {
    List<String> lines = new ArrayList<>();
    lines.add(one.severity() + ": " + where(one));
    lines.add("  found: " + one.found());
    lines.add("  designed: " + one.designed());
    lines.add("  so: " + one.consequence());
    Words.evidence(one.evidence()).forEach(line -> lines.add("  config: " + line));
    one.design().ifPresent(at -> lines.add("  design: " + at.file() + ":" + at.line()));
    return lines;
  }
}
