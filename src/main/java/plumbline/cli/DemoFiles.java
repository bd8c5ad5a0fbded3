package plumbline.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The demo scenario, as it comes with the program: a design and two states of its switches. */
final class DemoFiles {
  /** The state in which everything is as designed. */
  static final String CLEAN = "clean";

  /** The state that the demo audits. */
  static final String DRIFTED = "drifted";

  /** The design. */
  static final String DESIGN = "design.yaml";

  private static final List<String> SWITCHES =
      List.of("core-north", "core-south", "north-sw1", "north-sw2", "south-sw1", "south-sw2");

  private DemoFiles() {}

  /** The files, as paths below the demo's folder, sorted. */
  static List<String> names() {
    List<String> names = new ArrayList<>();
    for (String state : List.of(CLEAN, DRIFTED)) {
      SWITCHES.forEach(name -> names.add(state + "/" + name + ".cfg"));
    }
    names.add(DESIGN);
    return names.stream().sorted().toList();
  }

  /** The first file in the folder that has a demo file's name and another content. */
  static Optional<Path> foreign(Path folder) throws IOException {
    for (String name : names()) {
      Path file = folder.resolve(name);
      if (Files.exists(file)
          && !(Files.isRegularFile(file)
              && Arrays.equals(Files.readAllBytes(file), content(name)))) {
        return Optional.of(file);
      }
    }
    return Optional.empty();
  }

  /** Writes all files; their folders are made. */
  static void write(Path folder) throws IOException {
    for (String name : names()) {
      Path file = folder.resolve(name);
      if (!Files.exists(file)) {
        Files.createDirectories(file.getParent());
        Files.write(file, content(name));
      }
    }
  }

  /** The bytes of one file. */
  static byte[] content(String name) {
    try (InputStream stream = DemoFiles.class.getResourceAsStream("/plumbline/demo/" + name)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks its demo file " + name);
      }
      return stream.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("a resource of the program cannot be read", e);
    }
  }
}
