package plumbline.design;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import plumbline.yaml.Problem;

/** Reads designs for tests. */
final class Designs {
  /** Rules that the tests' designs may name. */
  static final List<String> RULES =
      List.of(
          "description-differs", "mode-differs", "pair-differs", "port-absent", "vlan-undeclared");

  /** Dialects that the tests' designs may name. */
  static final List<String> DIALECTS = List.of("campus", "data-centre", "two-word");

  private Designs() {}

  static DesignReading read(String file, String text) {
    return read(List.of(new DesignSource(file, "00", text)));
  }

  static DesignReading read(List<DesignSource> sources) {
    return DesignReader.read(sources, RULES, DIALECTS);
  }

  static List<String> messages(DesignReading reading) {
    return reading.problems().stream().map(Problem::toString).toList();
  }

  static String text(Path path) {
    try {
      return Files.readString(path, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
