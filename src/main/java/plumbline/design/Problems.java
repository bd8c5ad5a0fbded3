package plumbline.design;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import plumbline.text.Wording;
import plumbline.yaml.Position;
import plumbline.yaml.Problem;

/** Collects what is wrong in the files of one design, in a bounded list. */
final class Problems {
  /** More than anyone reads; a file that is no design at all could have millions. */
  static final int MOST = 500;

  private final List<Problem> list = new ArrayList<>();
  private int count;

  void add(Position at, String message) {
    count++;
    if (list.size() < MOST) {
      list.add(new Problem(at, message));
    }
  }

  /**
   * Reports a word that names nothing, with the valid word that is nearest or some valid words.
   *
   * @param what what the word should name, such as {@code role}
   * @param none what to say when there is no valid word
   */
  void addUnknown(Position at, String what, String word, Collection<String> valid, String none) {
    // The search is not cheap, and behind the last problem that is listed nobody sees its result.
    String remedy = list.size() < MOST ? Wording.remedy(word, valid, none) : "";
    add(at, "unknown " + what + " " + Wording.quote(word) + "; " + remedy);
  }

  void addAll(List<Problem> some) {
    some.forEach(problem -> add(problem.at(), problem.message()));
  }

  boolean isEmpty() {
    return count == 0;
  }

  /**
   * The problems, each once, files in the order given and each file in the order of its text.
   *
   * @param files the files in order
   */
  List<Problem> sorted(List<String> files) {
    List<Problem> sorted =
        new ArrayList<>(
            list.stream()
                .distinct()
                .sorted(
                    Comparator.<Problem>comparingInt(p -> files.indexOf(p.at().file()))
                        .thenComparing(Comparator.naturalOrder()))
                .toList());
    if (count > list.size()) {
      Position last = sorted.get(sorted.size() - 1).at();
      sorted.add(new Problem(last, (count - list.size()) + " more problems are not listed"));
    }
    return List.copyOf(sorted);
  }
}
