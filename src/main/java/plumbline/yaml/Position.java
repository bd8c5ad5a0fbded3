package plumbline.yaml;

/**
 * A place in an input file.
 *
 * @param file as typed
 * @param line 1-based
 * @param column 1-based, in characters
 */
public record Position(String file, int line, int column) implements Comparable<Position> {
  /** Refuses a place before the first. */
  public Position {
    if (line < 1 || column < 1) {
      throw new IllegalArgumentException("no such place: " + line + ":" + column);
    }
  }

  @Override
  public int compareTo(Position other) {
    int byFile = file.compareTo(other.file);
    if (byFile != 0) {
      return byFile;
    }
    return line != other.line
        ? Integer.compare(line, other.line)
        : Integer.compare(column, other.column);
  }

  /** GNU form: {@code file:line:column}. */
  @Override
  public String toString() {
    return file + ":" + line + ":" + column;
  }
}
