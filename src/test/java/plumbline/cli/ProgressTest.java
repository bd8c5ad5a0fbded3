package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class ProgressTest {
  private static final String WIPE = "\r\u001b[K";

  private final StringWriter text = new StringWriter();
  private long now = Long.MAX_VALUE - 5;

  private Progress progress(boolean terminal) {
    return new Progress(new PrintWriter(text), terminal, () -> now, Duration.ofSeconds(2));
  }

  private void pass(long milliseconds) {
    now += milliseconds * 1_000_000;
  }

  @Test
  void a_short_run_shows_nothing() {
    Progress progress = progress(true);
    pass(1999);
    progress.read(10, 20);
    progress.comparing(20);
    progress.end();
    assertThat(text.toString()).isEmpty();
  }

  @Test
  void a_long_run_shows_one_line_that_is_rewritten_and_wiped() {
    Progress progress = progress(true);
    progress.read(1, 2000);
    pass(2000);
    progress.read(900, 2000);
    pass(100);
    progress.read(950, 2000);
    pass(100);
    progress.comparing(1999);
    progress.end();
    progress.end();
    assertThat(text.toString())
        .isEqualTo(
            WIPE
                + "plumbline: read 900 of 2000 files"
                + WIPE
                + "plumbline: read 950 of 2000 files"
                + WIPE
                + "plumbline: comparing 1999 configs with the design"
                + WIPE);
  }

  @Test
  void it_is_not_rewritten_more_often_than_anyone_can_read_and_never_runs_backwards() {
    Progress progress = progress(true);
    pass(2500);
    progress.read(5, 9);
    pass(99);
    progress.read(7, 9);
    pass(1);
    progress.read(6, 9);
    assertThat(text.toString()).isEqualTo(WIPE + "plumbline: read 5 of 9 files");
    progress.read(8, 9);
    assertThat(text.toString()).endsWith(WIPE + "plumbline: read 8 of 9 files");
  }

  @Test
  void what_is_no_terminal_gets_nothing() {
    Progress progress = progress(false);
    pass(60_000);
    progress.read(1, 2);
    progress.comparing(2);
    progress.end();
    assertThat(text.toString()).isEmpty();
  }
}
