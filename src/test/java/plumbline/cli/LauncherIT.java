package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LauncherIT {
  @TempDir private Path folder;

  @Test
  void it_runs_from_any_directory_and_finds_its_pages() throws Exception {
    Launched run =
        Launched.in(folder, List.of(Launched.PROGRAM.toString(), "rules", "mode-differs"));
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("# ");
  }

  @Test
  void it_tells_the_version_of_its_manifest() throws Exception {
    Launched run = Launched.in(folder, List.of(Launched.PROGRAM.toString(), "--version"));
    assertThat(run.out()).matches("plumbline \\d+\\.\\d+\\.\\d+\n");
  }

  @Test
  void it_runs_through_absolute_and_relative_links() throws Exception {
    Path absolute = Files.createSymbolicLink(folder.resolve("one"), Launched.PROGRAM);
    Files.createDirectory(folder.resolve("bin"));
    Files.createSymbolicLink(folder.resolve("bin/two"), Path.of("../one"));
    assertThat(Launched.in(folder, List.of(absolute.toString(), "rules")).status()).isZero();
    assertThat(Launched.in(folder, List.of("bin/two", "rules")).status()).isZero();
  }

  @Test
  void it_runs_from_a_moved_folder_with_blanks_in_its_path() throws Exception {
    Path home = folder.resolve("a moved place");
    copy(Launched.PROGRAM.getParent().getParent(), home);
    Launched run = Launched.in(folder, List.of(home.resolve("bin/plumbline").toString(), "demo"));
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("DRIFT");
    assertThat(folder.resolve("plumbline-demo/design.yaml")).exists();
  }

  @Test
  void a_reader_that_takes_one_line_leaves_nothing_on_standard_error() throws Exception {
    Launched.in(folder, List.of(Launched.PROGRAM.toString(), "demo"));
    Launched run =
        shell("\"$0\" audit plumbline-demo/design.yaml plumbline-demo/drifted | head -1");
    assertThat(run.out()).startsWith("DRIFT").hasLineCount(1);
    assertThat(run.err()).isEmpty();
  }

  @Test
  void a_full_disk_has_its_status() throws Exception {
    Launched run = shell("\"$0\" rules > /dev/full");
    assertThat(run.status()).isEqualTo(74);
    assertThat(run.err())
        .isEqualTo("plumbline: standard output cannot be written: No space left on device\n");
  }

  @Test
  void file_names_and_text_survive_a_locale_without_letters() throws Exception {
    Files.writeString(
        folder.resolve("Fähre.cfg"),
        "hostname SW1\ninterface GigabitEthernet1/0/1\n description Fähre\nend\n");
    Launched run = shell("LC_ALL=C LANG=C \"$0\" settings Fähre.cfg");
    assertThat(run.status()).isZero();
    assertThat(run.out()).contains("Fähre.cfg, ", "description Fähre");
  }

  @Test
  void options_for_java_reach_it() throws Exception {
    Launched run = shell("PLUMBLINE_JAVA_OPTS='-Xmx64m -version' \"$0\" rules");
    assertThat(run.err()).contains("Runtime Environment");
  }

  @Test
  void without_java_it_says_what_to_do() throws Exception {
    Path bin = Files.createDirectory(folder.resolve("tools"));
    for (String tool : List.of("dirname", "readlink", "sh")) {
      Path where = Path.of("/usr/bin", tool);
      Files.createSymbolicLink(bin.resolve(tool), where);
    }
    Launched run = shell("env -i PATH=" + bin + " /bin/sh \"$0\" rules");
    assertThat(run.status()).isEqualTo(70);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("plumbline: no Java found").hasLineCount(1);
  }

  private Launched shell(String line) throws IOException, InterruptedException {
    return Launched.in(folder, List.of("/bin/sh", "-c", line, Launched.PROGRAM.toString()));
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Files.copy(
            file,
            to.resolve(from.relativize(file).toString()),
            java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
  }
}
