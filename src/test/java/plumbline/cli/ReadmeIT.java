package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What README.md shows is what runs. */
class ReadmeIT {
  private static final Pattern TRANSCRIPT =
      Pattern.compile(
          "<!-- transcript -->\n```console\n\\$ plumbline (?<arguments>.*)\n(?<shown>(?s:.*?))```\n");

  @TempDir private Path folder;

  @Test
  void its_transcript_is_what_the_program_prints() throws IOException, InterruptedException {
    Launched demo = Launched.in(folder, List.of(Launched.PROGRAM.toString(), "demo", "."));
    assertThat(demo.status()).isZero();
    Matcher transcript = TRANSCRIPT.matcher(Files.readString(Path.of("README.md")));
    assertThat(transcript.find()).isTrue();
    Launched run =
        Launched.in(
            folder, List.of("sh", "-c", Launched.PROGRAM + " " + transcript.group("arguments")));
    assertThat(run.out()).isEqualTo(transcript.group("shown"));
  }

  @Test
  void its_package_map_names_every_package() throws IOException {
    String map = Files.readString(Path.of("DEVELOPERS.md"));
    try (var folders = Files.list(Path.of("src/main/java/plumbline"))) {
      assertThat(folders.filter(Files::isDirectory).map(Path::getFileName).map(Path::toString))
          .allSatisfy(name -> assertThat(map).contains("`" + name + "`"));
    }
  }
}
