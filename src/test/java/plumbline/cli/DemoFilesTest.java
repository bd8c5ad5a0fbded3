package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DemoFilesTest {
  @Test
  void the_list_is_what_the_program_ships() throws IOException {
    Path home = Path.of("src/main/resources/plumbline/demo");
    try (Stream<Path> files = Files.walk(home)) {
      List<String> shipped =
          files
              .filter(Files::isRegularFile)
              .map(file -> home.relativize(file).toString())
              .sorted()
              .toList();
      assertThat(DemoFiles.names()).isEqualTo(shipped);
    }
  }
}
