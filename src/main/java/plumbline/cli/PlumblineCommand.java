package plumbline.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program itself; it does nothing without a command. */
@Command(
    name = "plumbline",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Holds saved configs of IOS-style switches against a declared design and says what differs,"
          + " and what follows from it. It reads files and never connects to a switch."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExit status:%n",
    footer = {
      "  0   done; for audit: nothing at or above --fail-on; for window: as planned",
      "  1   drift at or above --fail-on; for window: not as planned",
      "  2   something that had to be audited, compared or shown could not be",
      "  64  wrong usage, or a design or a file of waivers that cannot be used",
      "  70  a bug in plumbline",
      "  74  a report, a history or standard output could not be written",
      "Of several that apply the highest counts. Status 0 alone does not say that the",
      "configs conform: the verdict in the report does."
    })
final class PlumblineCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(),
        "a command is missing; expected audit, window, settings, rules or demo");
  }
}
