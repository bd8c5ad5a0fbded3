package plumbline.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** Starts the program: arguments and streams in, exit status out. */
public final class Main {
  private final Console console;
  private final boolean debug;

  /**
   * Takes the streams of a run.
   *
   * @param in standard input
   * @param out standard output
   * @param err standard error
   * @param colourful whether standard output is a terminal whose user wants colour
   * @param debug whether bugs are reported with a trace
   */
  public Main(
      InputStream in, OutputStream out, OutputStream err, boolean colourful, boolean debug) {
    this.console = new Console(in, out, err, colourful);
    this.debug = debug;
  }

  /** Runs one command and leaves the process with its status. */
  public static void main(String[] args) {
    // The streams of System are print streams, which keep failures to themselves.
    Main main =
        new Main(
            System.in,
            new FileOutputStream(FileDescriptor.out),
            new FileOutputStream(FileDescriptor.err),
            wantsColour(),
            System.getProperty("plumbline.debug") != null);
    System.exit(main.run(args));
  }

  private static boolean wantsColour() {
    String noColour = System.getenv("NO_COLOR");
    return Boolean.getBoolean("plumbline.terminal")
        && (noColour == null || noColour.isEmpty())
        && !"dumb".equals(System.getenv("TERM"));
  }

  /** Runs one command and returns its exit status. */
  public int run(String... args) {
    int status;
    try {
      status =
          Usage.holdsEmpty(args)
              ? Usage.reportEmpty(console)
              : commandLine(console, debug).execute(args);
    } catch (Throwable bug) { // NOPMD the last guard: status 1 would say drift
      status = Bugs.report(console, bug, debug);
    }
    return console.close(status);
  }

  /** The command line with all commands; handlers are set last, so that they reach all of them. */
  static CommandLine commandLine(Console console, boolean debug) {
    CommandLine line = new CommandLine(new PlumblineCommand());
    line.addSubcommand(new AuditCommand(console));
    line.addSubcommand(new SettingsCommand(console));
    line.addSubcommand(new RulesCommand(console));
    line.addSubcommand(new DemoCommand(console));
    line.setExpandAtFiles(false);
    line.setUsageHelpWidth(80);
    line.setUsageHelpAutoWidth(false);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setOut(console.out());
    line.setErr(console.err());
    line.setParameterExceptionHandler((error, args) -> Usage.report(console, error));
    line.setExecutionExceptionHandler((bug, command, parsed) -> Bugs.report(console, bug, debug));
    return line;
  }
}
