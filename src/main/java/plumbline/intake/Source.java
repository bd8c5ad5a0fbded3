package plumbline.intake;

import java.nio.file.Path;

/**
 * A file to be read.
 *
 * @param path where it is
 * @param asTyped how it is named in reports: the argument, with the way below it where the argument
 *     is a folder; {@code -} for standard input
 */
public record Source(Path path, String asTyped) {
  /** The argument that means standard input. */
  public static final String STANDARD_INPUT = "-";

  /** Says whether this is standard input. */
  public boolean isStandardInput() {
    return asTyped.equals(STANDARD_INPUT);
  }
}
