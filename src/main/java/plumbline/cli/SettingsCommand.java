package plumbline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plumbline.inspect.SettingsCsv;
import plumbline.inspect.SettingsJson;
import plumbline.inspect.SettingsText;
import plumbline.inspect.SwitchView;
import plumbline.port.PortName;
import plumbline.run.DesignFiles;
import plumbline.run.ReadDesign;
import plumbline.run.SettingsRun;

/** Shows what switches really do. */
@Command(
    name = "settings",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Shows what switches really do: the effective settings of every port, port lines, bundle"
          + " lines, global lines and defaults combined, each with the line that it rests on."
          + " Needs no design."
    })
final class SettingsCommand implements Callable<Integer> {
  private static final String JSON = ".json";
  private static final String CSV = ".csv";

  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0..*",
      arity = "1..*",
      paramLabel = "CONFIG",
      description =
          "Saved configs: files, folders (read with all that is in them), or - for"
              + " standard input.")
  private List<String> configs;

  @Option(
      names = "--design",
      paramLabel = "DESIGN",
      description = "Show what this design says of each setting beside it, and where they differ.")
  private Optional<String> design = Optional.empty();

  @Option(
      names = "--at",
      paramLabel = "PORT",
      converter = Converters.OfPort.class,
      description = "Show this port only, with every setting; in any spelling, such as gi1/0/1.")
  private Optional<PortName> port = Optional.empty();

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description =
          "Also write the settings to FILE; its ending chooses the form: .json or .csv."
              + " Can be given several times.")
  private List<Path> reports = new ArrayList<>();

  @Mixin private ColourOption colour;

  SettingsCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    ReportFiles files = Reporting.files(spec, reports, List.of(JSON, CSV));
    Converters.onlyOnce(spec, configs);
    Optional<ReadDesign> read = Optional.empty();
    if (design.isPresent()) {
      DesignFiles.Answer answer = DesignFiles.read(design.get());
      if (answer instanceof DesignFiles.Answer.Unusable unusable) {
        unusable.lines().forEach(console::complain);
        return Status.USAGE;
      }
      read = Optional.of(((DesignFiles.Answer.Usable) answer).design());
    }
    Reporting.keepInputs(spec, files, read.map(ReadDesign::paths).orElse(List.of()), configs);
    SettingsRun.Answer answer = SettingsRun.run(configs, read, console.in(), console.progress());
    List<SwitchView> switches = at(answer);
    int written =
        files.write(
            console,
            Map.of(JSON, () -> SettingsJson.of(switches), CSV, () -> SettingsCsv.of(switches)));
    if (!switches.isEmpty()) {
      console.out().print(SettingsText.of(switches, colour.look(console)));
    }
    console.out().flush();
    answer.skipped().forEach(console::complain);
    answer.unread().forEach(console::complain);
    int status = answer.unread().isEmpty() ? Status.DONE : Status.INCOMPLETE;
    return Math.max(written, answer.bug() ? Status.BUG : status);
  }

  /** The switches, or the one port of those that open it. */
  private List<SwitchView> at(SettingsRun.Answer answer) {
    List<SwitchView> all =
        answer.switches().stream()
            .map(one -> SwitchView.of(one.name(), one.settings(), one.designed()))
            .toList();
    if (port.isEmpty()) {
      return all;
    }
    List<SwitchView> opening = all.stream().flatMap(view -> view.at(port.get()).stream()).toList();
    if (opening.isEmpty() && !all.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "--at: no config given opens port " + port.get() + SimilarPorts.hint(port.get(), all));
    }
    List<String> without =
        all.stream()
            .filter(view -> view.settings().port(port.get()).isEmpty())
            .map(SwitchView::name)
            .toList();
    if (!without.isEmpty()) {
      console.complainAsProgram(
          "--at: left out, for they do not open port "
              + port.get()
              + ": "
              + String.join(", ", without));
    }
    return opening;
  }
}
