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
 * @param reports reports and waivers of this program in the folder of the design, which are no part
 *     of it
 * @param others other files that are no configs: of waivers, of a history
 */
public record ReadDesign(Design design, List<Path> paths, List<Path> reports, List<Path> others) {
  /** Copies the paths. */
  public ReadDesign {
    paths = List.copyOf(paths);
    reports = List.copyOf(reports);
    others = List.copyOf(others);
  }

  /** A design beside which no other file is known to be no config. */
  public ReadDesign(Design design, List<Path> paths, List<Path> reports) {
    this(design, paths, reports, List.of());
  }

  /** The same; these files are no configs either. */
  public ReadDesign beside(List<Path> files) {
    return new ReadDesign(design, paths, reports, files);
  }

  /** Files that a report must not replace: those of the design, of waivers and of a history. */
  public List<Path> inputs() {
    return Stream.of(paths, others).flatMap(List::stream).toList();
  }

  /** Files that are no configs, wherever they lie. */
  List<Path> exclusions() {
    return Stream.of(paths, reports, others).flatMap(List::stream).toList();
  }

  /** One line for each report in the folder of the design. */
  List<String> skipped() {
    return reports.stream()
        .filter(path -> !others.contains(path))
        .map(path -> path + ": left out, for it is a report of plumbline and no design")
        .toList();
  }
}
