package plumbline.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plumbline.finding.Severity;
import plumbline.report.TextReport;
import plumbline.result.Result;
import plumbline.run.AuditRun;
import plumbline.run.DesignFiles;

/** Writes the demo scenario and audits it. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Writes the demo scenario, a site with two terminals, and audits its drifted state. The"
          + " status is 0 although there is drift: the demo did what it should."
    })
final class DemoCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "DIR",
      arity = "0..1",
      description =
          "The folder to write to; plumbline-demo unless given. Other files of the same"
              + " names are never overwritten.")
  private String folder = "plumbline-demo";

  @Mixin private ColourOption colour;

  DemoCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Path home = Path.of(folder);
    try {
      Optional<Path> foreign = DemoFiles.foreign(home);
      if (foreign.isPresent()) {
        throw new ParameterException(
            spec.commandLine(),
            foreign.get() + " exists and is not the demo's; name another folder");
      }
      DemoFiles.write(home);
    } catch (IOException e) {
      console.complain(folder + ": the demo cannot be written");
      return Status.CANNOT_WRITE;
    }
    String design = home.resolve(DemoFiles.DESIGN).toString();
    String drifted = home.resolve(DemoFiles.DRIFTED).toString();
    DesignFiles.Answer answer = DesignFiles.read(design);
    if (!(answer instanceof DesignFiles.Answer.Usable usable)) {
      throw new IllegalStateException("the demo's design cannot be used");
    }
    Result result =
        AuditRun.run(
            new AuditRun.Request(
                usable.design(),
                List.of(drifted),
                Severity.WEAKENS,
                Clock.systemUTC().instant(),
                Set.of(),
                Set.of()),
            console.in());
    console.out().print(TextReport.of(result, colour.look(console)));
    console
        .out()
        .print(
            "\nThis was: plumbline audit "
                + design
                + " "
                + drifted
                + "\nAs designed: plumbline audit "
                + design
                + " "
                + home.resolve(DemoFiles.CLEAN)
                + "\n");
    console.out().flush();
    result.ruleFailures().forEach(console::complainAsProgram);
    return result.ruleFailures().isEmpty() ? Status.DONE : Status.BUG;
  }
}
