package plumbline.yaml;

import java.util.List;
import java.util.Optional;

/**
 * A YAML or JSON text as a tree that knows every value's place, and all that is wrong with it as
 * such a text.
 *
 * @param root the value; empty when the text is empty or broken
 * @param problems what is wrong, in the order of the text
 */
public record PositionedTree(Optional<Node> root, List<Problem> problems) {
  /** Copies the problems. */
  public PositionedTree {
    problems = List.copyOf(problems);
  }

  /**
   * Reads a text: as JSON when the file's name ends in {@code .json}, else as YAML. Never throws
   * for what the text holds.
   *
   * @param file as typed, for places
   * @param text the decoded text, with or without byte-order mark
   */
  public static PositionedTree read(String file, String text) {
    return TreeReader.read(file, text);
  }
}
