package plumbline.run;

import java.nio.file.Path;
import java.util.List;
import plumbline.design.Design;

/**
 * A design that can be used.
 *
 * @param design the design
 * @param paths the files that it was read from: no config, wherever they lie
 */
public record ReadDesign(Design design, List<Path> paths) {
  /** Copies the paths. */
  public ReadDesign {
    paths = List.copyOf(paths);
  }
}
