package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportFilesTest {
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final Console console =
      new Console(InputStream.nullInputStream(), new ByteArrayOutputStream(), err, false);

  @TempDir private Path folder;

  @Test
  void a_report_replaces_the_old_one_and_leaves_nothing_else() throws Exception {
    Path file = folder.resolve("x.json");
    Files.writeString(file, "old");
    assertThat(write(List.of(file), () -> "new")).isZero();
    assertThat(file).hasContent("new");
    assertThat(names()).containsExactly("x.json");
  }

  @Test
  void a_folder_that_does_not_exist_is_said_and_the_other_reports_are_written() throws Exception {
    Path lost = folder.resolve("nowhere/x.json");
    Path file = folder.resolve("y.json");
    assertThat(write(List.of(lost, file), () -> "new")).isEqualTo(74);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .isEqualTo(lost + ": report cannot be written: its folder does not exist\n");
    assertThat(file).hasContent("new");
  }

  @Test
  void a_folder_in_the_place_of_the_file_stays() throws Exception {
    Path file = Files.createDirectory(folder.resolve("x.json"));
    assertThat(write(List.of(file), () -> "new")).isEqualTo(74);
    assertThat(names()).containsExactly("x.json");
  }

  @Test
  void a_link_leads_to_the_file_that_is_replaced() throws Exception {
    Path file = folder.resolve("real.json");
    Files.writeString(file, "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.json"), file);
    assertThat(write(List.of(link), () -> "new")).isZero();
    assertThat(link).isSymbolicLink();
    assertThat(file).hasContent("new");
  }

  @Test
  void one_form_is_made_once_for_several_files() throws Exception {
    List<String> made = new ArrayList<>();
    Supplier<String> form =
        () -> {
          made.add("once");
          return "new";
        };
    assertThat(write(List.of(folder.resolve("a.json"), folder.resolve("b.json")), form)).isZero();
    assertThat(made).hasSize(1);
    assertThat(names()).containsExactly("a.json", "b.json");
  }

  @Test
  void an_ending_without_a_form_is_refused() {
    assertThatThrownBy(() -> ReportFiles.of(List.of(Path.of("x.pdf")), List.of(".json", ".csv")))
        .isInstanceOf(ReportFiles.UnknownForm.class)
        .hasMessage(
            "--report \"x.pdf\": the ending chooses the form; expected one of \".json\", \".csv\"");
  }

  @Test
  void an_input_is_recognised_however_its_path_is_spelled() throws Exception {
    Path input = folder.resolve("in.json");
    Files.writeString(input, "design");
    ReportFiles files =
        ReportFiles.of(
            List.of(folder.resolve("../" + folder.getFileName() + "/in.json")), List.of(".json"));
    assertThat(files.overwritten(List.of(input))).isPresent();
    assertThat(files.overwritten(List.of(folder.resolve("other.json")))).isEmpty();
  }

  private int write(List<Path> files, Supplier<String> form) throws Exception {
    return ReportFiles.of(files, List.of(".json")).write(console, Map.of(".json", form));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
