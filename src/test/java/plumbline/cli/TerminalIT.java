package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.text.Display;

/** What a terminal gets to see, through a terminal of the system's own. */
class TerminalIT {
  private static final String AUDIT =
      Launched.PROGRAM + " audit design.yaml drifted --as-of 2026-11-25";

  @TempDir private Path folder;

  @BeforeEach
  void write_the_demo() throws Exception {
    DemoFiles.write(folder);
  }

  private String onTerminal(String command, String... environment) throws Exception {
    String settings = "CI=1 TERM=xterm " + String.join(" ", environment);
    String line = "env -u NO_COLOR -u COLUMNS " + settings + " sh -c '" + command + "'";
    return Launched.in(folder, List.of("script", "-qec", line, "/dev/null"))
        .out()
        .replace("\r\n", "\n");
  }

  private static int widest(String seen) {
    return Display.clean(seen.lines().reduce("", (one, two) -> wider(one, two))).length();
  }

  private static String wider(String one, String two) {
    return Display.width(Display.clean(one)) >= Display.width(Display.clean(two)) ? one : two;
  }

  @Test
  void it_is_coloured_unless_somebody_does_not_want_that() throws Exception {
    assertThat(onTerminal(AUDIT)).startsWith("\u001b[1;31mDRIFT:\u001b[0m ");
    // the convention of NO_COLOR: set, and not empty
    assertThat(onTerminal(AUDIT, "NO_COLOR=1")).startsWith("DRIFT: ").doesNotContain("\u001b");
    assertThat(onTerminal(AUDIT, "NO_COLOR=")).contains("\u001b[1;31mDRIFT:");
    assertThat(onTerminal(AUDIT, "TERM=dumb")).doesNotContain("\u001b");
    assertThat(onTerminal(AUDIT + " --color always", "NO_COLOR=1")).contains("\u001b[1;31mDRIFT:");
    assertThat(onTerminal(AUDIT + " --color never")).doesNotContain("\u001b");
    assertThat(onTerminal(AUDIT + " | cat")).startsWith("DRIFT: ").doesNotContain("\u001b");
  }

  /** Colour is never the only sign: without its codes the text is that of a pipe. */
  @Test
  void the_words_are_those_of_a_pipe() throws Exception {
    String coloured = onTerminal("stty cols 80; " + AUDIT);
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", ""))
        .isEqualTo(onTerminal(AUDIT + " | cat"));
    assertThat(coloured).doesNotContain("\u001b]8;");
  }

  @Test
  void lines_are_as_wide_as_the_terminal() throws Exception {
    assertThat(widest(onTerminal("stty cols 100; " + AUDIT))).isBetween(90, 100);
    assertThat(widest(onTerminal("stty cols 62; " + AUDIT))).isBetween(58, 62);
    assertThat(widest(onTerminal("stty cols 300; " + AUDIT))).isBetween(110, 120);
    assertThat(widest(onTerminal("stty cols 0; " + AUDIT))).isBetween(76, 80);
    assertThat(widest(onTerminal("stty cols 100; " + AUDIT, "COLUMNS=70"))).isBetween(66, 70);
    assertThat(widest(onTerminal("stty cols 100; " + AUDIT, "COLUMNS=wide"))).isBetween(90, 100);
  }

  @Test
  void files_and_pipes_are_eighty_columns_wide_whatever_the_terminal_is() throws Exception {
    assertThat(widest(onTerminal("stty cols 100; " + AUDIT + " | cat", "COLUMNS=70")))
        .isBetween(76, 80);
    onTerminal("stty cols 100; " + AUDIT + " > report.txt", "COLUMNS=70");
    assertThat(widest(Files.readString(folder.resolve("report.txt")))).isBetween(76, 80);
  }

  @Test
  void a_reader_that_takes_one_line_leaves_nothing_on_standard_error() throws Exception {
    Launched run =
        Launched.in(
            folder,
            List.of(
                "sh",
                "-c",
                AUDIT + " --report r.sarif --report r.xml | head -1; test -s r.sarif -a -s r.xml"));
    assertThat(run.status()).isZero();
    assertThat(run.out()).startsWith("DRIFT").hasLineCount(1);
    assertThat(run.err()).isEmpty();
  }
}
