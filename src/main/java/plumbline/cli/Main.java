package plumbline.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Duration;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import plumbline.text.Page;

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
    this(new Console(in, out, err, colourful), debug);
  }

  private Main(Console console, boolean debug) {
    this.console = console;
    this.debug = debug;
  }

  /** Runs one command and leaves the process with its status. */
  public static void main(String[] args) {
    // The streams of System are print streams, which keep failures to themselves.
    Main main =
        new Main(
            new Console(
                System.in,
                new FileOutputStream(FileDescriptor.out),
                new FileOutputStream(FileDescriptor.err),
                wantsColour(),
                columns(),
                wantsProgress(),
                Duration.ofMillis(
                    Long.getLong("plumbline.progress.delay", Progress.DELAY.toMillis()))),
            System.getProperty("plumbline.debug") != null);
    System.exit(main.run(args));
  }

  private static boolean isTerminal() {
    return Boolean.getBoolean("plumbline.terminal");
  }

  /**
   * The terminal's width: what the variable {@code COLUMNS} says, or what the launcher has seen.
   * Files and pipes get the usual one, so that the same input gives the same bytes there.
   */
  private static int columns() {
    return isTerminal()
        ? Stream.of(System.getenv("COLUMNS"), System.getProperty("plumbline.columns"))
            .filter(word -> word != null && word.matches("[1-9][0-9]{0,3}"))
            .mapToInt(Integer::parseInt)
            .findFirst()
            .orElse(Page.Look.USUAL)
        : Page.Look.USUAL;
  }

  private static boolean wantsColour() {
    return isTerminal() && isUnset("NO_COLOR") && !isDumb();
  }

  /**
   * Build servers set {@code CI}, also where they offer a terminal (common practice, no source).
   */
  private static boolean wantsProgress() {
    return Boolean.getBoolean("plumbline.error.terminal") && isUnset("CI") && !isDumb();
  }

  private static boolean isUnset(String variable) {
    String value = System.getenv(variable);
    return value == null || value.isEmpty();
  }

  private static boolean isDumb() {
    return "dumb".equals(System.getenv("TERM"));
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
