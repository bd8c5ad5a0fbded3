package plumbline.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plumbline.finding.Severity;
import plumbline.report.WindowJson;
import plumbline.report.WindowText;
import plumbline.result.WindowResult;
import plumbline.run.DesignFiles;
import plumbline.run.ReadDesign;
import plumbline.run.WindowRun;

/** Compares configs before and after a change with what was planned. */
@Command(
    name = "window",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    customSynopsis =
        "plumbline window [OPTIONS] DESIGN --before=PATH --after=PATH%n"
            + "                        [--rest=PATH] [--from=DESIGN]",
    description = {
      "Compares what switches do before and after a change, and says whether the change did what"
          + " was planned, all of it, and nothing else. Settings are compared, not lines.",
      "With --from, the plan is where the two designs differ. Without it, the design is the plan."
    })
final class WindowCommand implements Callable<Integer> {
  private static final String JSON = ".json";

  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "DESIGN",
      description =
          "The design as it is to be after the change: a file in YAML or JSON, or a folder whose"
              + " *.yaml, *.yml and *.json files are merged.")
  private String design;

  @Option(
      names = "--before",
      paramLabel = "PATH",
      description =
          "A config from before the change, a folder of them, or - for standard input. Can be"
              + " given several times.")
  private List<String> before = new ArrayList<>();

  @Option(
      names = "--after",
      paramLabel = "PATH",
      description =
          "A config from after the change, a folder of them, or - for standard input. Can be given"
              + " several times.")
  private List<String> after = new ArrayList<>();

  @Option(
      names = "--rest",
      paramLabel = "PATH",
      description =
          "Configs of switches that the change did not touch, so that links, pairs and services"
              + " can be judged; of switches that it did, the others count. Can be given several"
              + " times.")
  private List<String> rest = new ArrayList<>();

  @Option(
      names = "--from",
      paramLabel = "DESIGN",
      description = "The design as it was before the change: the plan is where the two differ.")
  private Optional<String> from = Optional.empty();

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description =
          "Also write the report to FILE; its ending chooses the form: .json. Can be given several"
              + " times.")
  private List<Path> reports = new ArrayList<>();

  @Option(
      names = "--fail-on",
      paramLabel = "SEVERITY",
      converter = Converters.OfSeverity.class,
      description =
          "The severity from which on a finding that the change introduced is not as planned:"
              + " breaks, weakens (the default), unverified or untidy.")
  private Severity failOn = Severity.WEAKENS;

  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      converter = Converters.OfInstant.class,
      description =
          "Report as if it were DATE: 2026-11-25, or 2026-11-25T02:10:00Z; UTC. With it, the same"
              + " input gives the same bytes.")
  private Optional<Instant> asOf = Optional.empty();

  @Mixin private ColourOption colour;

  WindowCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    needed("--before", before);
    needed("--after", after);
    ReportFiles files = Reporting.files(spec, reports, List.of(JSON));
    List<String> configs = Stream.of(before, after, rest).flatMap(List::stream).toList();
    Converters.onlyOnce(spec, configs);
    Optional<ReadDesign> read = read(design);
    Optional<ReadDesign> old = from.flatMap(this::read);
    if (read.isEmpty() || old.isPresent() != from.isPresent()) {
      return Status.USAGE;
    }
    List<Path> designs = new ArrayList<>(read.get().paths());
    old.ifPresent(one -> designs.addAll(one.paths()));
    Reporting.keepInputs(spec, files, designs, configs);
    WindowResult result =
        WindowRun.run(
            new WindowRun.Request(
                read.get(),
                old,
                before,
                after,
                rest,
                failOn,
                asOf.orElseGet(() -> Clock.systemUTC().instant())),
            console.in(),
            console.progress());
    int written = files.write(console, Map.of(JSON, () -> WindowJson.of(result, Version.number())));
    console.out().print(WindowText.of(result, colour.look(console)));
    console.out().flush();
    result.notCompared().forEach(console::complain);
    result.audit().ruleFailures().forEach(console::complainAsProgram);
    return Math.max(written, status(result));
  }

  /** Not by the library: that would hide an option that is misspelled. */
  private void needed(String option, List<String> paths) {
    if (paths.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), option + " is missing; expected a config, a folder, or -");
    }
  }

  /** The design; what is wrong with it is said. */
  private Optional<ReadDesign> read(String typed) {
    DesignFiles.Answer answer = DesignFiles.read(typed);
    if (answer instanceof DesignFiles.Answer.Unusable unusable) {
      unusable.lines().forEach(console::complain);
      return Optional.empty();
    }
    return Optional.of(((DesignFiles.Answer.Usable) answer).design());
  }

  private static int status(WindowResult result) {
    if (!result.audit().ruleFailures().isEmpty()) {
      return Status.BUG;
    }
    if (!result.notCompared().isEmpty()) {
      return Status.INCOMPLETE;
    }
    return switch (result.verdict()) {
      case AS_PLANNED -> Status.DONE;
      case NOT_AS_PLANNED -> Status.DRIFT;
      case INCOMPLETE -> Status.INCOMPLETE;
    };
  }
}
