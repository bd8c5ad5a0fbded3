package plumbline.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import plumbline.design.DesignReader;
import plumbline.design.DesignReading;
import plumbline.design.DesignSource;
import plumbline.effective.Dialect;
import plumbline.intake.Intake;
import plumbline.intake.Read;
import plumbline.intake.Source;
import plumbline.rules.RuleCatalogue;
import plumbline.yaml.Problem;

/** Reads a design from a file, or from the design files of a folder. */
public final class DesignFiles {
  /** Lines that every config has and no design can hold. */
  private static final Pattern CONFIG =
      Pattern.compile("(?mi)^[ \\t]*(?:hostname|interface|switchport|version) +[a-z0-9]");

  private static final List<String> ENDINGS = List.of(".yaml", ".yml", ".json");

  private DesignFiles() {}

  /** What came of it. */
  public sealed interface Answer {
    /**
     * A design that can be used.
     *
     * @param design the design and its files
     */
    record Usable(ReadDesign design) implements Answer {}

    /**
     * A design that cannot.
     *
     * @param lines what is wrong, each as {@code file:line:column: message} or {@code file:
     *     message}
     */
    record Unusable(List<String> lines) implements Answer {
      /** Copies the lines. */
      public Unusable {
        lines = List.copyOf(lines);
      }
    }
  }

  /**
   * Reads a design.
   *
   * @param typed a file, or a folder whose files in YAML or JSON are merged, sorted by name
   */
  public static Answer read(String typed) {
    if (typed.equals(Source.STANDARD_INPUT)) {
      return new Answer.Unusable(
          List.of("-: standard input stands for a config; the design must be a file or a folder"));
    }
    List<Path> paths;
    try {
      paths = paths(Path.of(typed));
    } catch (IOException | InvalidPathException e) {
      return new Answer.Unusable(List.of(typed + ": the design cannot be read"));
    }
    if (paths.isEmpty()) {
      return new Answer.Unusable(
          List.of(
              typed
                  + ": the folder holds no design (.yaml, .yml or .json); the design comes first, then the"
                  + " configs"));
    }
    boolean folder = Files.isDirectory(Path.of(typed));
    List<DesignSource> sources = new ArrayList<>();
    List<String> failures = new ArrayList<>();
    List<Path> reports = new ArrayList<>();
    for (Path path : paths) {
      Read read = Intake.read(path, path.toString());
      if (read instanceof Read.Text text && folder && OwnFiles.isNoDesign(text.text())) {
        reports.add(path);
      } else if (read instanceof Read.Text text) {
        sources.add(new DesignSource(text.file(), text.sha256(), text.text()));
      } else if (read instanceof Read.Failed failed) {
        failures.add(failed.file() + ": the design " + failed.reason());
      }
    }
    if (!failures.isEmpty()) {
      return new Answer.Unusable(failures);
    }
    if (sources.isEmpty()) {
      return new Answer.Unusable(List.of(typed + ": the folder holds reports, and no design"));
    }
    DesignReading reading = DesignReader.read(sources, RuleCatalogue.names(), Dialect.words());
    Optional<Answer> usable =
        reading
            .design()
            .map(
                design ->
                    new Answer.Usable(
                        new ReadDesign(
                            design,
                            paths.stream().filter(path -> !reports.contains(path)).toList(),
                            reports)));
    return usable.orElseGet(() -> new Answer.Unusable(complaints(sources, reading)));
  }

  /** What is wrong; of a config in the place of a design no more than that. */
  private static List<String> complaints(List<DesignSource> sources, DesignReading reading) {
    List<String> misplaced =
        sources.stream()
            .filter(source -> CONFIG.matcher(source.text()).find())
            .filter(source -> OwnFiles.kind(source.text()).isEmpty())
            .map(
                source ->
                    source.file()
                        + ": this looks like a config; the design comes first, then the configs")
            .toList();
    return misplaced.isEmpty()
        ? reading.problems().stream().map(Problem::toString).toList()
        : misplaced;
  }

  private static List<Path> paths(Path typed) throws IOException {
    if (!Files.isDirectory(typed)) {
      return List.of(typed);
    }
    try (Stream<Path> files = Files.list(typed)) {
      return files.filter(DesignFiles::isDesign).sorted().toList();
    }
  }

  private static boolean isDesign(Path file) {
    String name = file.getFileName().toString();
    return !name.startsWith(".")
        && ENDINGS.stream().anyMatch(name::endsWith)
        && !Files.isDirectory(file);
  }
}
