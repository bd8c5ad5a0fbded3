package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The weekly job of the manual, run by the shell as it stands there. */
class WeeklyJobIT {
  private static final Pattern SCRIPT =
      Pattern.compile("<!-- script: weekly -->\n```sh\n(?<script>(?s:.*?))```\n");

  @TempDir private Path folder;

  @BeforeEach
  void write() throws IOException, InterruptedException {
    Matcher script = SCRIPT.matcher(Files.readString(Path.of("docs/manual.md")));
    assertThat(script.find()).isTrue();
    Files.writeString(folder.resolve("weekly"), script.group("script"));
    assertThat(Launched.in(folder, List.of(Launched.PROGRAM.toString(), "demo", ".")).status())
        .isZero();
  }

  private Launched weekly(String configs) throws IOException, InterruptedException {
    String path = "PATH=" + Launched.PROGRAM.getParent() + ":$PATH";
    return Launched.in(
        folder, List.of("sh", "-c", path + " sh weekly design.yaml " + configs + " reports"));
  }

  private List<String> kept(String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("reports"))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(ending))
          .toList();
    }
  }

  @Test
  void it_prints_the_report_where_the_configs_drift() throws IOException, InterruptedException {
    Launched run = weekly("drifted");
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.out().lines().findFirst().orElseThrow())
        .matches("[0-9]{4}-[0-9]{2}-[0-9]{2}: drift, status 1");
    assertThat(run.out()).contains("\nDRIFT: ");
    assertThat(run.err()).isEmpty();
    assertThat(kept(".json")).hasSize(1);
    assertThat(kept(".txt")).hasSize(1);
  }

  @Test
  void it_prints_one_line_where_they_conform() throws IOException, InterruptedException {
    Launched run = weekly("clean");
    assertThat(run.out())
        .matches("[0-9]{4}-[0-9]{2}-[0-9]{2}: the configs conform to the design\n");
    assertThat(run.status()).isZero();
  }

  @Test
  void it_does_not_take_an_incomplete_run_or_none_for_a_good_one()
      throws IOException, InterruptedException {
    Files.createDirectory(folder.resolve("some"));
    Files.copy(folder.resolve("clean/core-south.cfg"), folder.resolve("some/core-south.cfg"));
    Launched incomplete = weekly("some");
    assertThat(incomplete.out()).contains(": incomplete, status 2\n");
    assertThat(incomplete.status()).isEqualTo(2);
    Files.writeString(folder.resolve("design.yaml"), "format: plumbline-design/1\nvlan: {}\n");
    Launched none = weekly("clean");
    assertThat(none.out()).contains(": nothing was audited, status 64\n").contains("unknown key");
    assertThat(none.status()).isEqualTo(64);
  }
}
