package plumbline.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Processes that are killed, run out of disk or meet in one folder: no run is lost or halved. */
class RunFolderFaultsIT {
  private static final int RUNS = 200;
  private static final Instant LATER = Instant.parse("2027-01-01T00:00:00Z");

  @TempDir private Path home;

  @Test
  void what_was_kept_before_a_kill_still_reads_and_no_half_file_is_taken_for_a_run()
      throws Exception {
    Path dir = home.resolve("history");
    Set<String> kept = new TreeSet<>();
    for (int kill : List.of(1, 20, 47, 90, 130)) {
      Process writer = start(List.of(), dir, RUNS, 200, kill);
      try (BufferedReader said = said(writer)) {
        for (int line = 0; line < kill; line++) {
          kept.add(keptIn(said.readLine()));
        }
        // the kernel's kill, in the middle of whatever it does
        writer.toHandle().destroyForcibly();
        for (String line = said.readLine(); line != null; line = said.readLine()) {
          if (line.endsWith(".json")) {
            kept.add(keptIn(line));
          }
        }
      }
      assertThat(writer.waitFor()).isEqualTo(137);
    }
    Earlier earlier = new RunFolder(dir).before(LATER, Optional.empty());
    List<String> runs = names(dir).stream().filter(name -> !name.startsWith(".")).toList();
    assertThat(runs).containsAll(kept).allMatch(name -> RunName.parse(name).isPresent());
    assertThat(earlier.trend()).hasSameSizeAs(runs);
    assertThat(earlier.setAside()).allMatch(line -> line.contains("unfinished"));
    assertWhole(dir, runs);
  }

  @Test
  void five_processes_at_once_keep_all_their_runs() throws Exception {
    Path dir = home.resolve("history");
    List<Process> writers = new ArrayList<>();
    for (int writer = 1; writer <= 5; writer++) {
      writers.add(start(List.of(), dir, 20, 50, writer));
    }
    Set<String> kept = new TreeSet<>();
    for (Process writer : writers) {
      try (BufferedReader said = said(writer)) {
        said.lines().forEach(line -> kept.add(keptIn(line)));
      }
      assertThat(writer.waitFor()).isZero();
    }
    assertThat(kept).hasSize(100);
    assertThat(names(dir)).containsExactlyElementsOf(kept);
    assertThat(new RunFolder(dir).before(LATER, Optional.empty()).trend()).hasSize(100);
    assertWhole(dir, names(dir));
  }

  @Test
  void five_processes_with_the_same_run_keep_it_once() throws Exception {
    Path dir = home.resolve("history");
    List<Process> writers = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      writers.add(start(List.of(), dir, 30, 20, 7));
    }
    for (Process writer : writers) {
      try (BufferedReader said = said(writer)) {
        assertThat(said.lines().map(RunFolderFaultsIT::keptIn)).hasSize(30);
      }
      assertThat(writer.waitFor()).isZero();
    }
    assertThat(names(dir)).hasSize(30);
    assertWhole(dir, names(dir));
  }

  @Test
  void a_disk_that_is_full_leaves_earlier_runs_and_nothing_else() throws Exception {
    Path dir = home.resolve("history");
    Process small = start(List.of(), dir, 3, 5, 1);
    assertThat(small.waitFor()).isZero();
    List<String> before = names(dir);
    // No file may grow beyond 64 blocks of 512 bytes (POSIX, ulimit -f); these runs are larger.
    Process limited = start(List.of("sh", "-c", "ulimit -f 64; exec \"$@\"", "sh"), dir, 4, 200, 2);
    try (BufferedReader said = said(limited)) {
      assertThat(said.lines()).hasSize(4).allMatch(line -> line.startsWith("failed "));
    }
    assertThat(limited.waitFor()).isZero();
    assertThat(names(dir)).isEqualTo(before).hasSize(3);
    assertWhole(dir, before);
  }

  /** Each is read to its end, as the newest of all would be. */
  private static void assertWhole(Path dir, List<String> names) throws IOException {
    for (String name : names) {
      RunName run = RunName.parse(name).orElseThrow();
      String text = Files.readString(dir.resolve(name));
      assertThat(RunName.of(run.at(), text)).as(name).isEqualTo(run);
      assertThat(text).endsWith("\n}\n");
    }
  }

  private static Process start(List<String> before, Path dir, int runs, int findings, int number)
      throws IOException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:-UsePerfData", "-Xmx200m", "-cp"));
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(RunWriter.class.getName());
    command.addAll(List.of(dir.toString(), "" + runs, "" + findings, "" + number));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  private static BufferedReader said(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  private static String keptIn(String line) {
    assertThat(line).startsWith("kept ");
    return line.substring("kept ".length());
  }

  private static List<String> names(Path dir) throws IOException {
    try (Stream<Path> files = Files.list(dir)) {
      return files.map(file -> file.getFileName().toString()).sorted().collect(Collectors.toList());
    }
  }
}
