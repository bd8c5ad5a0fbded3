package plumbline.text;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.DamerauLevenshteinDistance;

/** Finds the valid word that a wrong one was most likely meant to be. */
public final class Nearest {
  private static final int LONGEST = 64;

  private Nearest() {}

  /**
   * The candidate with the fewest edits to the word (a character more, less, another or two
   * exchanged), case and underscores aside; empty when even that one is too far off to be a slip of
   * the fingers (more than a third of the word). Of equally near ones the first is taken.
   */
  public static Optional<String> to(String word, Collection<String> candidates) {
    String wrong = fold(word);
    if (wrong.isEmpty() || wrong.length() > LONGEST) {
      return Optional.empty();
    }
    int allowed = wrong.length() <= 2 ? 1 : Math.max(1, (wrong.length() + 1) / 3);
    DamerauLevenshteinDistance distance = new DamerauLevenshteinDistance(allowed);
    int fewest = allowed + 1;
    String nearest = null;
    for (String candidate : candidates) {
      String right = fold(candidate);
      if (Math.abs(right.length() - wrong.length()) >= fewest) {
        continue;
      }
      int edits = distance.apply(wrong, right);
      // A distance as long as the valid word replaces all of it: that is no slip.
      if (edits >= 0 && edits < fewest && edits < right.length()) {
        nearest = candidate;
        fewest = edits;
      }
    }
    return Optional.ofNullable(nearest);
  }

  private static String fold(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
