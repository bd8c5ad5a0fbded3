package plumbline.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plumbline.finding.Severity;
import plumbline.report.JsonReport;
import plumbline.report.ReportForm;
import plumbline.report.TextReport;
import plumbline.result.Result;
import plumbline.result.Verdict;
import plumbline.run.AuditRun;
import plumbline.run.DesignFiles;
import plumbline.run.ReadDesign;
import plumbline.run.WaiverFiles;

/** Holds configs against a design and reports what differs. */
@Command(
    name = "audit",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Holds saved configs against a design and reports every difference with its evidence and its"
          + " consequence, worst first.",
      "If any CONFIG is a folder, every switch of the design must have a config. If all are files"
          + " or -, only their switches are audited, and the report names the others."
    })
final class AuditCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "DESIGN",
      description =
          "The design: a file in YAML or JSON, or a folder whose *.yaml, *.yml and"
              + " *.json files are merged.")
  private String design;

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "CONFIG",
      description =
          "Saved configs: files, folders (read with all that is in them), or - for"
              + " standard input.")
  private List<String> configs;

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description =
          "Also write the report to FILE; its ending chooses the form: .csv, .json, .md,"
              + " .sarif, or .xml for JUnit. Can be given several times.")
  private List<Path> reports = new ArrayList<>();

  @Option(
      names = "--fail-on",
      paramLabel = "SEVERITY",
      converter = Converters.OfSeverity.class,
      description =
          "The severity from which on findings count as drift (status 1): breaks,"
              + " weakens (the default), unverified or untidy.")
  private Severity failOn = Severity.WEAKENS;

  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      converter = Converters.OfInstant.class,
      description =
          "Report as if it were DATE: 2026-11-25, or 2026-11-25T02:10:00Z; UTC. With"
              + " it, the same input gives the same bytes.")
  private Optional<Instant> asOf = Optional.empty();

  @Mixin private NarrowOptions narrow;

  @Mixin private FollowOptions follow;

  @Mixin private ColourOption colour;

  AuditCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    ReportFiles files = Reporting.files(spec, reports, ReportForm.endings());
    Converters.onlyOnce(spec, configs);
    follow.check(spec);
    Set<String> rules = narrow.rules(spec);
    DesignFiles.Answer answer = DesignFiles.read(design);
    if (answer instanceof DesignFiles.Answer.Unusable unusable) {
      unusable.lines().forEach(console::complain);
      return Status.USAGE;
    }
    ReadDesign read = ((DesignFiles.Answer.Usable) answer).design().beside(follow.notConfigs());
    narrow.keepOne(spec, rules, read.design());
    Set<String> switches = narrow.switches(spec, read.design());
    Reporting.keepInputs(spec, files, read.inputs(), configs);
    WaiverFiles.Answer accepted = follow.waivers();
    if (accepted instanceof WaiverFiles.Answer.Unusable unusable && follow.hasWaivers()) {
      unusable.lines().forEach(console::complain);
      return Status.USAGE;
    }
    Instant at = asOf.orElseGet(() -> Clock.systemUTC().instant());
    FollowOptions.Opened opened = follow.open(console, at, read.design());
    Result result =
        AuditRun.run(
            new AuditRun.Request(
                read,
                configs,
                failOn,
                at,
                rules,
                switches,
                accepted instanceof WaiverFiles.Answer.Usable usable
                    ? Optional.of(usable.waivers())
                    : Optional.empty(),
                opened.runs()),
            console.in(),
            console.progress());
    int kept =
        Math.max(
            opened.status(),
            follow.write(console, result, () -> JsonReport.of(result, Version.number())));
    int written = Math.max(kept, files.write(console, forms(result)));
    console.out().print(TextReport.of(result, colour.look(console)));
    console.out().flush();
    result.notAudited().forEach(console::complain);
    result.ruleFailures().forEach(console::complainAsProgram);
    return Math.max(written, status(result));
  }

  private Map<String, Supplier<String>> forms(Result result) {
    ReportForm.About about = new ReportForm.About(Version.number(), failOn, RuleTexts::all);
    Map<String, Supplier<String>> forms = new TreeMap<>();
    for (ReportForm form : ReportForm.values()) {
      forms.put(form.ending(), () -> form.write(result, about));
    }
    return forms;
  }

  /** The highest status that applies to an audit. */
  static int status(Result result) {
    if (!result.ruleFailures().isEmpty()) {
      return Status.BUG;
    }
    if (!result.notAudited().isEmpty()) {
      return Status.INCOMPLETE;
    }
    return result.verdict().result() == Verdict.Word.DRIFT ? Status.DRIFT : Status.DONE;
  }
}
