package plumbline.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every wrong design of {@code testdata/design/bad} gives exactly the messages beside it. */
class WrongDesignsTest {
  private static final Path FOLDER = Path.of("testdata/design/bad");

  static Stream<String> files() throws IOException {
    try (Stream<Path> all = Files.list(FOLDER)) {
      return all
          .map(path -> path.getFileName().toString())
          .filter(name -> !name.endsWith(".expected"))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("files")
  void a_wrong_design_gives_exactly_the_messages_beside_it(String name) throws IOException {
    DesignReading reading = Designs.read(name, Designs.text(FOLDER.resolve(name)));
    String actual = String.join("\n", Designs.messages(reading)) + "\n";
    Path expected = FOLDER.resolve(name.replaceFirst("\\.[a-z]+$", ".expected"));
    if (Boolean.getBoolean("golden.renew")) {
      Files.writeString(expected, actual);
    }
    assertThat(actual).isEqualTo(Designs.text(expected));
    assertThat(reading.design()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("files")
  void messages_are_one_line_and_name_the_file_they_are_about(String name) {
    DesignReading reading = Designs.read(name, Designs.text(FOLDER.resolve(name)));
    for (String message : Designs.messages(reading)) {
      assertThat(message).matches("[a-z-]+\\.(yaml|json):[1-9][0-9]*:[1-9][0-9]*: [^\\p{C}]+[^.]");
      assertThat(message.length()).isLessThan(250);
    }
  }

  @Test
  void no_expected_file_stands_alone() throws IOException {
    List<String> names = files().map(name -> name.replaceFirst("\\.[a-z]+$", "")).toList();
    try (Stream<Path> all = Files.list(FOLDER)) {
      assertThat(
              all.map(path -> path.getFileName().toString())
                  .filter(name -> name.endsWith(".expected"))
                  .map(name -> name.replace(".expected", "")))
          .containsExactlyInAnyOrderElementsOf(names);
    }
  }
}
