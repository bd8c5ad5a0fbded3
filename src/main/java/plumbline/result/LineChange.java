package plumbline.result;

import java.util.List;

/**
 * Lines of one section that changed and that are not judged: the grammar does not know them, or
 * what they say is none of the settings that are compared. Nothing of them is kept but their
 * number.
 *
 * @param switchName name of the switch in the design, or the config's where the design has none
 * @param section the header of their block as it may be quoted
 * @param firstWords the first words of those that are not understood, sorted, each once
 * @param added how many lines are new
 * @param removed how many lines are gone
 * @param reordered whether the same lines stand in another order, where order counts
 * @param harmless whether they are known to have no bearing on what is compared, or the design
 *     vouches for them
 */
public record LineChange(
    String switchName,
    String section,
    List<String> firstWords,
    int added,
    int removed,
    boolean reordered,
    boolean harmless) {
  /** Copies the words. */
  public LineChange {
    firstWords = List.copyOf(firstWords);
  }
}
