package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Whatever a difference takes from somebody, some finding tells it. */
class ToldEffectsTest {
  private static final Path DEMO = Path.of("src/main/resources/plumbline/demo");

  @TestFactory
  Stream<DynamicTest> a_kit_has_a_finding_for_each_loss() throws IOException {
    return folders("testdata/rules", 3).stream()
        .map(
            folder ->
                DynamicTest.dynamicTest(
                    folder.toString(), () -> assertThat(Told.untold(folder)).isEmpty()));
  }

  @Test
  void a_site_as_designed_loses_nothing() throws IOException {
    for (Path folder : folders("testdata/sites", 2)) {
      assertThat(Told.taken(RuleCaseRun.input(folder, UnaryOperator.identity()))).isEmpty();
    }
  }

  @Test
  void the_demo_has_a_finding_for_each_loss(@TempDir Path scratch) throws IOException {
    Files.copy(DEMO.resolve("design.yaml"), scratch.resolve("design.yaml"));
    try (Stream<Path> drifted = Files.list(DEMO.resolve("drifted"))) {
      for (Path file : drifted.toList()) {
        Files.copy(file, scratch.resolve(file.getFileName().toString()));
      }
    }
    assertThat(Told.untold(scratch)).isEmpty();
    assertThat(Told.taken(RuleCaseRun.input(scratch, UnaryOperator.identity()))).isNotEmpty();
  }

  private static List<Path> folders(String root, int depth) throws IOException {
    try (Stream<Path> all = Files.walk(Path.of(root), depth)) {
      return all.filter(file -> file.endsWith("design.yaml"))
          .map(Path::getParent)
          .sorted()
          .toList();
    }
  }
}
