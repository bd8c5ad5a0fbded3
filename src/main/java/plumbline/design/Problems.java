package plumbline.design;

import java.util.ArrayList;
import java.util.List;
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

  void addAll(List<Problem> some) {
    some.forEach(problem -> add(problem.at(), problem.message()));
  }

  boolean isEmpty() {
    return count == 0;
  }

  int count() {
    return count;
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
                    java.util.Comparator.<Problem>comparingInt(p -> files.indexOf(p.at().file()))
                        .thenComparing(java.util.Comparator.naturalOrder()))
                .toList());
    if (count > list.size()) {
      Position last = sorted.get(sorted.size() - 1).at();
      sorted.add(new Problem(last, (count - list.size()) + " more problems are not listed"));
    }
    return List.copyOf(sorted);
  }
}
