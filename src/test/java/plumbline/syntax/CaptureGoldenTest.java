package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import plumbline.statement.SwitchText;

class CaptureGoldenTest {
  private static final Path FOLDER = Path.of("testdata", "capture");
  private static final String GOLDEN = ".statements";

  static List<Path> captures() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(file -> file.toString().endsWith(".txt")).sorted().toList();
    }
  }

  private static Path golden(Path capture) {
    String name = capture.getFileName().toString();
    return FOLDER.resolve(name.substring(0, name.length() - 4) + GOLDEN);
  }

  private static String read(String text) {
    return new ConfigReader(new StatementParser())
        .read("capture", "capture", text).stream()
            .map(CaptureGoldenTest::show)
            .collect(Collectors.joining());
  }

  private static String show(SwitchText text) {
    return "lines %d-%d, script %s, %s, %s\n%s\n"
        .formatted(
            text.firstLine(),
            text.lastLine(),
            text.script(),
            text.truncation(),
            text.times(),
            Shown.all(text));
  }

  @ParameterizedTest
  @MethodSource("captures")
  void aCaptureHasTheStatementsOfItsGoldenFile(Path capture) throws IOException {
    String shown = read(Files.readString(capture));
    if (Boolean.getBoolean("golden.renew")) {
      Files.writeString(golden(capture), shown);
    }

    assertThat(shown).isEqualTo(Files.readString(golden(capture)));
  }

  @ParameterizedTest
  @MethodSource("captures")
  void aCaptureReadsTheSameWithCrlf(Path capture) throws IOException {
    String text = Files.readString(capture);

    assertThat(read(text.replace("\n", "\r\n"))).isEqualTo(read(text));
  }

  @Test
  void everyGoldenFileHasItsCapture() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      assertThat(files.filter(file -> file.toString().endsWith(GOLDEN)))
          .containsExactlyInAnyOrderElementsOf(
              captures().stream().map(CaptureGoldenTest::golden).toList());
    }
  }
}
