package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Progress on a real terminal, which {@code script} of every Debian's base system offers. */
class ProgressIT {
  private static final String AUDIT =
      Launched.PROGRAM + " audit plumbline-demo/design.yaml plumbline-demo/drifted";

  @TempDir private Path folder;

  @BeforeEach
  void write_the_demo() throws Exception {
    Launched.in(folder, List.of(Launched.PROGRAM.toString(), "demo"));
  }

  /** What a terminal gets to see of a command that is in no hurry to show progress. */
  private String onTerminal(String command, String... environment) throws Exception {
    String settings =
        "CI= TERM=xterm PLUMBLINE_JAVA_OPTS=-Dplumbline.progress.delay=0 "
            + String.join(" ", environment);
    return Launched.in(
            folder, List.of("script", "-qec", "env " + settings + " " + command, "/dev/null"))
        .out();
  }

  @Test
  void a_terminal_sees_one_line_that_is_wiped_before_the_report() throws Exception {
    String seen = onTerminal(AUDIT + " --colour never");
    assertThat(seen).contains("\r\u001b[Kplumbline: read ");
    assertThat(seen.substring(0, seen.indexOf("DRIFT")))
        .endsWith("\r\u001b[K")
        .doesNotContain("\n");
    assertThat(seen.substring(seen.indexOf("DRIFT"))).doesNotContain("\u001b");
  }

  @Test
  void a_redirected_report_holds_nothing_of_it() throws Exception {
    String seen = onTerminal("sh -c '" + AUDIT + " > report.txt'");
    assertThat(seen).contains("plumbline: read ").endsWith("\r\u001b[K");
    assertThat(Files.readString(folder.resolve("report.txt")))
        .startsWith("DRIFT")
        .doesNotContain("\u001b");
  }

  @Test
  void neither_pipes_nor_build_servers_get_it() throws Exception {
    assertThat(onTerminal("sh -c '" + AUDIT + " --colour never 2>&1 | cat'"))
        .startsWith("DRIFT")
        .doesNotContain("\u001b");
    assertThat(onTerminal(AUDIT + " --colour never", "CI=true"))
        .startsWith("DRIFT")
        .doesNotContain("\u001b");
    assertThat(onTerminal(AUDIT + " --colour never", "TERM=dumb")).doesNotContain("\u001b");
  }
}
