package plumbline.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.finding.Finding;
import plumbline.finding.Severity;

class RunFolderTest {
  private static final Instant FIRST = Instant.parse("2026-11-11T02:10:00Z");
  private static final Instant SECOND = Instant.parse("2026-11-18T02:10:00Z");
  private static final Instant THIRD = Instant.parse("2026-11-25T02:10:00Z");
  private static final Optional<String> SITE = Optional.of(Runs.SITE);

  @TempDir private Path home;
  private RunFolder folder;
  private Path dir;

  @BeforeEach
  void make() {
    dir = home.resolve("history");
    folder = new RunFolder(dir);
  }

  @Test
  void a_folder_that_is_not_there_is_an_empty_history_and_is_made_by_the_first_run()
      throws IOException {
    assertThat(folder.before(FIRST, SITE))
        .isEqualTo(new Earlier(Optional.empty(), List.of(), 0, List.of()));
    assertThat(dir).doesNotExist();
    assertThat(folder.keep(FIRST, Runs.json(FIRST, Runs.findings(3))))
        .isEqualTo(RunFolder.Kept.WRITTEN);
    assertThat(names()).singleElement().asString().matches("2026-11-11T021000Z-[0-9a-f]{12}.json");
  }

  @Test
  void only_the_last_part_of_its_path_is_made() {
    RunFolder far = new RunFolder(home.resolve("not/there"));
    assertThatThrownBy(() -> far.keep(FIRST, "{}")).isInstanceOf(NoSuchFileException.class);
    assertThat(home.resolve("not")).doesNotExist();
  }

  @Test
  void a_kept_run_reads_as_it_was() throws IOException {
    List<Finding> findings =
        List.of(Runs.finding(1, 1, Severity.BREAKS, 231, 232), Runs.finding(1, 2, Severity.UNTIDY));
    folder.keep(FIRST, Runs.json(FIRST, findings));
    PastRun run = folder.before(SECOND, SITE).newest().orElseThrow();
    assertThat(run.at()).isEqualTo(FIRST);
    assertThat(run.configs()).containsOnlyKeys("pier-sw1");
    assertThat(run.findings()).extracting(PastFinding::since).allMatch(Optional::isPresent);
    // a default keeps no file, and a place in a design no column: the report has neither
    assertThat(run.findings())
        .extracting(PastFinding::finding)
        .usingRecursiveComparison()
        .ignoringFields("design")
        .isEqualTo(findings);
  }

  @Test
  void a_run_is_compared_with_the_newest_that_is_earlier_also_when_the_clock_was_set_back()
      throws IOException {
    for (Instant at : List.of(FIRST, THIRD)) {
      folder.keep(at, Runs.json(at, Runs.findings(2)));
    }
    Earlier back = folder.before(SECOND, SITE);
    assertThat(back.newest()).map(PastRun::at).contains(FIRST);
    assertThat(back.later()).isEqualTo(1);
    folder.keep(SECOND, Runs.json(SECOND, Runs.findings(1)));
    Earlier next = folder.before(THIRD.plusSeconds(1), SITE);
    assertThat(next.newest()).map(PastRun::at).contains(THIRD);
    assertThat(next.trend()).extracting(point -> point.at()).containsExactly(FIRST, SECOND, THIRD);
    // a clock that lost its battery
    Earlier lost = folder.before(Instant.EPOCH, SITE);
    assertThat(lost.newest()).isEmpty();
    assertThat(lost.later()).isEqualTo(3);
  }

  @Test
  void a_run_of_the_same_moment_is_not_compared_with_and_the_same_run_is_kept_once()
      throws IOException {
    String text = Runs.json(FIRST, Runs.findings(2));
    folder.keep(FIRST, text);
    assertThat(folder.before(FIRST.plusMillis(900), SITE).newest()).isEmpty();
    assertThat(folder.keep(FIRST, text)).isEqualTo(RunFolder.Kept.KNOWN);
    assertThat(names()).hasSize(1);
    folder.keep(FIRST, Runs.json(FIRST, Runs.findings(1)));
    assertThat(names()).hasSize(2);
  }

  @Test
  void what_is_damaged_or_foreign_is_set_aside_by_name_and_left_as_it_is() throws IOException {
    folder.keep(FIRST, Runs.json(FIRST, Runs.findings(2)));
    String second = Runs.json(SECOND, Runs.findings(2));
    String other = Runs.json(SECOND, Runs.findings(1));
    write("2026-11-18T021000Z-aaaaaaaaaaaa.json", second.substring(0, second.length() / 2));
    write("2026-11-18T021000Z-bbbbbbbbbbbb.json", "");
    write("2026-11-18T021000Z-cccccccccccc.json", second + second);
    write("2026-11-18T021000Z-dddddddddddd.json", "{\"format\": \"plumbline-settings/1\"}");
    write("2026-11-19T021000Z-eeeeeeeeeeee.json", second);
    write("2026-11-18T021000Z-ffffffffffff.json", other.replace(Runs.SITE, "Another site"));
    write("2026-11-18T021000Z-0000000000aa.json", second.replace("\"weakens\",", "\"bad\","));
    write("2026-11-18T021000Z-0000000000bb.json", "\0\1\2");
    write("2026-02-30T021000Z-0000000000cc.json", second);
    write("notes.txt", "kept by hand");
    write(".hidden", "");
    write(".plumbline-unfinished-999999999-1-a", second.substring(0, 100));
    Files.createDirectory(dir.resolve("2026-11-18T021000Z-0000000000dd.json"));
    List<String> before = names();
    Earlier earlier = folder.before(THIRD, SITE);
    assertThat(earlier.newest()).map(PastRun::at).contains(FIRST);
    assertThat(earlier.trend()).hasSize(1);
    assertThat(earlier.setAside())
        .containsExactly(
            ".plumbline-unfinished-999999999-1-a: unfinished, by a run that was killed; left out,"
                + " and can be deleted",
            "2026-02-30T021000Z-0000000000cc.json: not named as a run is; left out, and left as it"
                + " is",
            "2026-11-18T021000Z-0000000000aa.json: lacks a part that every finding has; left out,"
                + " and left as it is",
            "2026-11-18T021000Z-0000000000bb.json: breaks off, is damaged, or is no report of plumbline;"
                + " left out, and left as it is",
            "2026-11-18T021000Z-0000000000dd.json: is no file; left out, and left as it is",
            "2026-11-18T021000Z-aaaaaaaaaaaa.json: breaks off, is damaged, or is no report of plumbline;"
                + " left out, and left as it is",
            "2026-11-18T021000Z-bbbbbbbbbbbb.json: breaks off, is damaged, or is no report of plumbline;"
                + " left out, and left as it is",
            "2026-11-18T021000Z-cccccccccccc.json: goes on after its end; left out, and left as it"
                + " is",
            "2026-11-18T021000Z-dddddddddddd.json: is no report of a kind that this version reads;"
                + " left out, and left as it is",
            "2026-11-18T021000Z-ffffffffffff.json: is of another site; left out, and left as it is",
            "2026-11-19T021000Z-eeeeeeeeeeee.json: says another moment than its name; left out, and"
                + " left as it is",
            "notes.txt: not named as a run is; left out, and left as it is");
    assertThat(names()).isEqualTo(before);
  }

  @Test
  void a_run_that_breaks_off_anywhere_is_never_taken_for_one() throws IOException {
    String text = Runs.json(FIRST, Runs.findings(2));
    folder.keep(SECOND, Runs.json(SECOND, Runs.findings(2)));
    Path broken = dir.resolve("2026-11-11T021000Z-aaaaaaaaaaaa.json");
    for (int length = 0; length < text.length() - 1; length += 7) {
      Files.writeString(broken, text.substring(0, length));
      // the older of two, of which only the head is read
      assertThat(folder.before(THIRD, SITE).trend()).as("%d characters", length).hasSize(1);
      // and the newest
      assertThat(folder.before(SECOND, SITE).newest()).as("%d characters", length).isEmpty();
    }
    Files.writeString(broken, text);
    assertThat(folder.before(THIRD, SITE).trend()).hasSize(2);
  }

  @Test
  void a_report_that_was_put_there_by_hand_counts_from_its_own_day() throws IOException {
    String bare =
        Runs.json(FIRST, Runs.findings(1))
            .replaceAll("(?s)  \"history\": \\{.*?\n  \\},\n", "")
            .replace("\"state\": \"new\"", "\"state\": null")
            .replace("\"since\": \"2026-11-11\"", "\"since\": null");
    assertThat(bare).doesNotContain("trend");
    Files.createDirectory(dir);
    write("2026-11-11T021000Z-aaaaaaaaaaaa.json", bare);
    PastRun run = folder.before(SECOND, SITE).newest().orElseThrow();
    assertThat(run.point().weakens()).isEqualTo(1);
    Finding same = run.findings().get(0).finding();
    Comparison compared =
        Comparison.of(run, List.of(same), java.time.LocalDate.parse("2026-11-18"), Fixed.CLEARED);
    assertThat(compared.standings().get(same.id()).since()).hasToString("2026-11-11");
  }

  @Test
  void a_file_in_the_place_of_the_folder_is_refused_and_kept() throws IOException {
    Files.writeString(dir, "a report");
    assertThatThrownBy(() -> folder.keep(FIRST, "{}")).isInstanceOf(NotDirectoryException.class);
    assertThatThrownBy(() -> folder.before(FIRST, SITE)).isInstanceOf(NotDirectoryException.class);
    assertThat(dir).hasContent("a report");
  }

  @Test
  void a_damaged_file_of_the_very_name_is_not_replaced() throws IOException {
    String text = Runs.json(FIRST, Runs.findings(1));
    folder.keep(FIRST, text);
    Path file = dir.resolve(names().get(0));
    Files.writeString(file, "damaged");
    assertThatThrownBy(() -> folder.keep(FIRST, text))
        .isInstanceOf(java.nio.file.FileAlreadyExistsException.class);
    assertThat(file).hasContent("damaged");
    assertThat(names()).hasSize(1);
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(dir.resolve(name), text);
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(dir)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
