package plumbline.run;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plumbline.design.Design;

/**
 * A design that can be used.
 *
 * @param design the design
 * @param paths the files that it was read from: no config, wherever they lie
 * @param reports reports of this program in the folder of the design, which are no part of it
 */
public record ReadDesign(Design design, List<Path> paths, List<Path> reports) {
  /** Copies the paths. */
  public ReadDesign {
    paths = List.copyOf(paths);
    reports = List.copyOf(reports);
  }

  /** Files that are no configs, wherever they lie. */
  List<Path> exclusions() {
    return Stream.concat(paths.stream(), reports.stream()).toList();
  }

  /** One line for each report in the folder of the design. */
  List<String> skipped() {
    return reports.stream()
        .map(path -> path + ": left out, for it is a report of plumbline and no design")
        .toList();
  }
}
