package plumbline.statement;

import java.util.Arrays;

/**
 * A number for each line of a text that tells equal lines from others and nothing else, so that
 * lines which may hold secrets can be compared and are never kept. Lines that say the same in other
 * blanks or abbreviated keywords have one mark.
 */
public final class LineMarks {
  private final int first;
  private final long[] marks;

  /**
   * Marks of lines in a row.
   *
   * @param first 1-based number of the first line
   * @param marks its mark and those of the lines below it; 0 for a line that goes on with the
   *     statement of the line above it
   */
  public LineMarks(int first, long... marks) {
    this.first = first;
    this.marks = marks.clone();
  }

  /** The mark of a line; 0 outside the text. */
  public long of(int line) {
    int at = line - first;
    return at < 0 || at >= marks.length ? 0 : marks[at];
  }

  @Override
  public String toString() {
    return marks.length + " lines from line " + first + ", " + Arrays.hashCode(marks);
  }
}
