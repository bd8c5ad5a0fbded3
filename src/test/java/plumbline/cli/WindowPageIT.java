package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/window.md shows is what runs. */
class WindowPageIT {
  private static final Path SITE = Path.of("testdata/window/site");
  private static final Pattern TRANSCRIPT =
      Pattern.compile("```console\n\\$ (?<command>.*)\n(?<shown>(?s:.*?))```\n");

  @TempDir private Path folder;

  @Test
  void its_transcripts_are_what_the_program_prints() throws IOException, InterruptedException {
    copySite();
    Matcher transcripts = TRANSCRIPT.matcher(Files.readString(Path.of("docs/window.md")));
    int found = 0;
    while (transcripts.find()) {
      String command = transcripts.group("command");
      Launched run =
          Launched.in(
              folder,
              List.of("sh", "-c", "PATH=" + Launched.PROGRAM.getParent() + ":$PATH; " + command));
      assertThat(run.out()).as(command).isEqualTo(transcripts.group("shown"));
      found++;
    }
    assertThat(found).isGreaterThanOrEqualTo(8);
  }

  private void copySite() throws IOException {
    try (Stream<Path> files = Files.walk(SITE)) {
      files.filter(Files::isRegularFile).forEach(this::copy);
    }
  }

  private void copy(Path file) {
    try {
      Path target = folder.resolve(SITE.relativize(file).toString());
      Files.createDirectories(target.getParent());
      Files.copy(file, target);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
