package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may be wrong with the texts of a change window. */
class WindowInputsTest {
  private static final String SITE = "testdata/window/site/";
  private static final String DESIGN = SITE + "design.yaml";
  private static final String BEFORE = SITE + "before";
  private static final String NORTH_1 = BEFORE + "/north-sw1.cfg";
  private static final String NORTH_1_AFTER = SITE + "after/north-sw1.cfg";

  @TempDir private Path folder;

  private static Run window(String before, String after, String... more) {
    return Run.of(
        Stream.concat(
                Stream.of(
                    "window",
                    DESIGN,
                    "--before",
                    before,
                    "--after",
                    after,
                    "--as-of",
                    "2026-11-25"),
                Stream.of(more))
            .toArray(String[]::new));
  }

  /** The first sentence of the report without its line breaks. */
  private static String verdict(Run run) {
    return run.out().substring(0, run.out().indexOf("\nChanges: ")).replaceAll("\\s+", " ");
  }

  private static String flat(Run run) {
    return run.out().replaceAll("\\s+(\\| +)?", " ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "binary.cfg | is binary, not text",
        "empty.cfg | is empty",
        "pipe | is a pipe, socket or device, not a file",
        "nowhere.cfg | does not exist",
        "prose.txt | is no config: it holds no statement about a switch"
      })
  void what_cannot_be_read_makes_the_window_incomplete(String name, String reason)
      throws IOException, InterruptedException {
    Files.write(folder.resolve("binary.cfg"), new byte[] {'a', 0, 'b'});
    Files.write(folder.resolve("empty.cfg"), new byte[0]);
    Files.writeString(folder.resolve("prose.txt"), "It rained all day.\n");
    new ProcessBuilder("mkfifo", folder.resolve("pipe").toString()).start().waitFor();
    Run run = window(NORTH_1, folder.resolve(name).toString());
    assertThat(verdict(run)).startsWith("INCOMPLETE: ").contains(reason);
    assertThat(run.err()).contains(name + ": " + reason);
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void a_text_that_is_cut_short_clears_nothing() throws IOException {
    String text = Files.readString(Path.of(NORTH_1_AFTER));
    Path cut = folder.resolve("cut.cfg");
    Files.writeString(cut, text.substring(0, text.indexOf("interface GigabitEthernet1/0/6") + 40));
    Run run = window(NORTH_1, cut.toString());
    assertThat(verdict(run)).startsWith("INCOMPLETE: ").contains("is cut short");
    assertThat(flat(run)).contains("Findings: 0 cleared").doesNotContain("removed");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void sides_that_were_swapped_are_noticed_by_their_times() {
    Run run = window(SITE + "after", BEFORE);
    assertThat(verdict(run)).startsWith("INCOMPLETE: north-sw1: the text before was changed at");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void one_file_on_both_sides_is_no_window() {
    Run run = window(NORTH_1, NORTH_1);
    assertThat(verdict(run))
        .startsWith("INCOMPLETE: " + NORTH_1 + ": the same file is given as before and as after");
    assertThat(flat(run)).contains("Changes: none.");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void of_a_folder_and_a_file_the_switches_of_the_file_are_compared() {
    Run run = window(BEFORE, NORTH_1_AFTER);
    assertThat(verdict(run)).startsWith("AS-PLANNED: 3 changes");
    assertThat(flat(run))
        .contains(
            "1 config of the folder before is left out: the other side is about other switches");
    assertThat(run.status()).isZero();
  }

  @Test
  void a_switch_on_one_side_only_is_named() {
    Run run = window(NORTH_1, SITE + "after/north-sw2.cfg");
    assertThat(flat(run))
        .contains(
            "north-sw1: no config of this switch was given as after",
            "north-sw2: no config of this switch was given as before",
            "No switch compared.");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void a_text_without_hostname_beside_one_with_it_is_no_whole_config() throws IOException {
    String text = Files.readString(Path.of(NORTH_1_AFTER)).replace("hostname NORTH-SW1\n", "");
    Run run =
        Run.reading(
            text, "window", DESIGN, "--before", NORTH_1, "--after", "-", "--as-of", "2026-11-25");
    assertThat(verdict(run))
        .startsWith("INCOMPLETE: north-sw1: the text after has no hostname line");
    assertThat(run.status()).isEqualTo(2);
  }

  @Test
  void every_line_fits_a_terminal_and_reports_in_a_folder_are_left_out() throws IOException {
    Path configs = Files.createDirectory(folder.resolve("after"));
    Files.copy(Path.of(NORTH_1_AFTER), configs.resolve("north-sw1.cfg"));
    Path json = configs.resolve("window.json");
    Run first = window(NORTH_1, configs.toString(), "--report", json.toString());
    Files.writeString(configs.resolve("window.txt"), first.out());
    Run second = window(NORTH_1, configs.toString());
    assertThat(verdict(second)).isEqualTo(verdict(first)).startsWith("AS-PLANNED: ");
    assertThat(second.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(flat(second).replace(" ", ""))
        .contains("window.json:leftout,foritisareportofplumbline")
        .contains("window.txt:leftout,foritisareportofplumbline");
  }
}
