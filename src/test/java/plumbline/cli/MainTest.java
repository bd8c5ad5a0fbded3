package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class MainTest {
  static Stream<String> commands() {
    Console console =
        new Console(
            InputStream.nullInputStream(),
            OutputStream.nullOutputStream(),
            OutputStream.nullOutputStream(),
            false);
    return Main.commandLine(console, false).getSubcommands().keySet().stream();
  }

  @Test
  void the_commands_are_these() {
    assertThat(commands()).containsExactly("audit", "settings", "rules", "demo");
  }

  @Test
  void the_bare_program_is_wrong_usage() {
    Run run = Run.of();
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .isEqualTo(
            """
            plumbline: a command is missing; expected audit, settings, rules or demo
            plumbline: see plumbline --help
            """);
  }

  @Test
  void an_unknown_command_is_wrong_usage() {
    Run run = Run.of("adit");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .startsWith("plumbline: unknown command \"adit\"; did you mean \"audit\"?\n");
  }

  @ParameterizedTest
  @MethodSource("commands")
  void every_command_explains_itself_on_standard_output(String command) {
    for (String help : List.of("--help", "-h")) {
      Run run = Run.of(command, help);
      assertThat(run.status()).isZero();
      assertThat(run.err()).isEmpty();
      assertThat(run.out()).startsWith("Usage: plumbline " + command);
      assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    }
  }

  @ParameterizedTest
  @MethodSource("commands")
  void every_command_tells_the_version_on_standard_output(String command) {
    for (String version : List.of("--version", "-V")) {
      Run run = Run.of(command, version);
      assertThat(run).isEqualTo(new Run(0, "plumbline development\n", ""));
    }
  }

  @Test
  void the_program_explains_itself_with_every_status() {
    Run run = Run.of("--help");
    assertThat(run.status()).isZero();
    assertThat(run.out()).contains("audit", "settings", "rules", "demo");
    assertThat(run.out().lines().map(String::strip))
        .anyMatch(line -> line.startsWith("0 "))
        .anyMatch(line -> line.startsWith("1 "))
        .anyMatch(line -> line.startsWith("2 "))
        .anyMatch(line -> line.startsWith("64 "))
        .anyMatch(line -> line.startsWith("70 "))
        .anyMatch(line -> line.startsWith("74 "));
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void every_command_refuses_an_option_it_does_not_know(String command) {
    Run run = Run.of(command, "--frobnicate", "x", "y");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("--frobnicate", "plumbline " + command + " --help");
    assertThat(run.err().lines()).hasSize(2).allMatch(line -> line.startsWith("plumbline: "));
  }

  @ParameterizedTest
  @ValueSource(strings = {"audit", "audit design.yaml", "settings", "settings --at Gi1/0/1"})
  void what_is_missing_is_wrong_usage(String line) {
    Run run = Run.of(line.split(" ", -1));
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("missing required parameter");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "audit||x",
        "audit|x|",
        "settings|",
        "settings|x|--design=",
        "settings|x|--at|",
        "audit|x|y|--report|",
        "audit|x|y|--only=",
        "demo|",
        "settings|--|"
      })
  void an_empty_argument_is_wrong_usage(String line) {
    Run run = Run.of(line.split("\\|", -1));
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .isEqualTo(
            """
            plumbline: an argument is empty; expected a value, or no argument at all
            plumbline: see plumbline --help
            """);
  }

  @ParameterizedTest
  @CsvSource({
    "audit, --failon=breaks, --failon, --fail-on",
    "audit, --colr, --colr, --color",
    "settings, --rep, --rep, --report",
    "settings, --desing, --desing, --design"
  })
  void an_unknown_option_gets_the_nearest_one(
      String command, String typed, String named, String meant) {
    assertThat(Run.of(command, typed, "x", "y").err())
        .startsWith(
            "plumbline: unknown option \"" + named + "\"; did you mean \"" + meant + "\"?\n");
  }

  @Test
  void an_at_sign_names_no_file_of_arguments() {
    Run run = Run.of("rules", "@pom.xml");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err()).contains("unknown rule \"@pom.xml\"");
  }

  @ParameterizedTest
  @MethodSource("commands")
  void output_that_cannot_be_written_is_said_and_has_its_status(String command) {
    Run run = Run.into(failing(new IOException("No space left on device")), command, "--help");
    assertThat(run.status()).isEqualTo(74);
    assertThat(run.err())
        .isEqualTo("plumbline: standard output cannot be written: No space left on device\n");
  }

  @ParameterizedTest
  @MethodSource("commands")
  void a_reader_that_goes_away_is_no_fault(String command) {
    Run run = Run.into(failing(new IOException("Broken pipe")), command, "--help");
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("commands")
  void a_bug_in_any_command_is_one_line_without_its_message(String command) throws Exception {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(InputStream.nullInputStream(), OutputStream.nullOutputStream(), err, false);
    CommandLine line = Main.commandLine(console, false).getSubcommands().get(command);
    Exception bug = new IllegalStateException("enable secret hunter2");
    int status = line.getExecutionExceptionHandler().handleExecutionException(bug, line, null);
    assertThat(status).isEqualTo(70);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .startsWith("plumbline: internal error: IllegalStateException at plumbline.cli.MainTest:")
        .endsWith("; this is a bug, please report it\n")
        .doesNotContain("hunter2");
  }

  @Test
  void an_error_of_the_machine_does_not_look_like_drift() {
    Run run =
        Run.from(failingInput(new LinkageError("enable secret hunter2")), false, "settings", "-");
    assertThat(run.status()).isEqualTo(70);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).doesNotContain("hunter2");
  }

  @Test
  void a_bug_while_one_config_is_read_names_the_config() {
    Run run =
        Run.from(
            failingInput(new IllegalStateException("enable secret hunter2")),
            false,
            "settings",
            "-");
    assertThat(run.status()).isEqualTo(70);
    assertThat(run.err())
        .startsWith("-: could not be read for a bug in this program: IllegalStateException")
        .doesNotContain("hunter2");
    assertThat(run.err().lines()).hasSize(1);
  }

  @Test
  void a_trace_comes_only_when_asked_and_without_messages() {
    Run run =
        Run.from(failingInput(new LinkageError("enable secret hunter2")), true, "settings", "-");
    assertThat(run.err().lines().count()).isGreaterThan(5);
    assertThat(run.err())
        .contains("  at plumbline.", "java.lang.LinkageError")
        .doesNotContain("hunter2");
  }

  private static InputStream failingInput(Throwable failure) {
    return new InputStream() {
      @Override
      public int read() {
        if (failure instanceof Error error) {
          throw error;
        }
        throw (RuntimeException) failure;
      }

      @Override
      public int read(byte[] octets, int from, int count) {
        return read();
      }
    };
  }

  private static OutputStream failing(IOException failure) {
    return new OutputStream() {
      @Override
      public void write(int octet) throws IOException {
        throw failure;
      }
    };
  }
}
