package plumbline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import plumbline.run.ConfigReading;
import plumbline.text.Wording;

/** What commands check of their {@code --report} options before anything is read. */
final class Reporting {
  private Reporting() {}

  /** The files asked for; wrong usage where an ending names no form. */
  static ReportFiles files(CommandSpec spec, List<Path> files, Collection<String> endings) {
    try {
      return ReportFiles.of(files, endings);
    } catch (ReportFiles.UnknownForm e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }

  /** Refuses to write a report over a design or a config. */
  static void keepInputs(
      CommandSpec spec, ReportFiles files, Collection<Path> design, List<String> configs) {
    List<Path> inputs = new ArrayList<>(design);
    configs.stream().filter(ConfigReading::isFile).map(Path::of).forEach(inputs::add);
    Optional<Path> overwritten = files.overwritten(inputs);
    if (overwritten.isPresent()) {
      throw new ParameterException(
          spec.commandLine(),
          "--report "
              + Wording.quote(overwritten.get().toString())
              + ": the report would replace an input");
    }
  }
}
