package plumbline.window;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import plumbline.result.LineChange;

/** Counts the lines that changed and that no setting speaks of, section by section. */
final class LineComparison {
  private LineComparison() {}

  /**
   * The sections that changed, by title.
   *
   * @param told ports and settings that are reported as changed, as {@code port setting}: lines
   *     that say more of these are not counted besides
   */
  static List<LineChange> of(SwitchWindow window, Set<String> told) {
    Map<String, OtherLines.Section> before = window.before().lines().sections();
    Map<String, OtherLines.Section> after = window.after().lines().sections();
    Set<String> keys = new TreeSet<>(before.keySet());
    keys.addAll(after.keySet());
    SortedMap<String, LineChange> byTitle = new TreeMap<>();
    for (String key : keys) {
      for (boolean harmless : new boolean[] {false, true}) {
        change(window, before.get(key), after.get(key), told, harmless)
            .forEach(
                one -> byTitle.merge(one.section() + " " + harmless, one, LineComparison::sum));
      }
    }
    return List.copyOf(byTitle.values());
  }

  private static List<LineChange> change(
      SwitchWindow window,
      OtherLines.Section before,
      OtherLines.Section after,
      Set<String> told,
      boolean harmless) {
    List<OtherLines.Line> was = lines(before, told, harmless);
    List<OtherLines.Line> is = lines(after, told, harmless);
    // What a part of a text does not hold may be there all the same.
    List<OtherLines.Line> removed = window.after().isPart() ? List.of() : without(was, is);
    List<OtherLines.Line> added = window.before().isPart() ? List.of() : without(is, was);
    OtherLines.Section section = before == null ? after : before;
    boolean reordered =
        section.ordered()
            && removed.isEmpty()
            && added.isEmpty()
            && was.size() == is.size()
            && !marks(was).equals(marks(is));
    if (removed.isEmpty() && added.isEmpty() && !reordered) {
      return List.of();
    }
    List<OtherLines.Line> changed = new ArrayList<>(removed);
    changed.addAll(added);
    return List.of(
        new LineChange(
            window.name(),
            section.title(),
            changed.stream()
                .map(OtherLines.Line::firstWord)
                .filter(word -> !word.isEmpty())
                .distinct()
                .sorted()
                .toList(),
            added.size(),
            removed.size(),
            reordered,
            harmless));
  }

  private static List<OtherLines.Line> lines(
      OtherLines.Section section, Set<String> told, boolean harmless) {
    return section == null
        ? List.of()
        : section.lines().stream()
            .filter(line -> line.harmless() == harmless)
            .filter(line -> !told.contains(line.port() + " " + line.speaksFor()))
            .toList();
  }

  private static List<Long> marks(List<OtherLines.Line> lines) {
    return lines.stream().map(OtherLines.Line::mark).toList();
  }

  /** The lines of one list that the other has not, or not so often. */
  private static List<OtherLines.Line> without(
      List<OtherLines.Line> lines, List<OtherLines.Line> others) {
    Map<Long, Long> left =
        new HashMap<>(
            others.stream()
                .collect(Collectors.groupingBy(OtherLines.Line::mark, Collectors.counting())));
    List<OtherLines.Line> without = new ArrayList<>();
    for (OtherLines.Line line : lines) {
      if (left.merge(line.mark(), -1L, Long::sum) < 0) {
        without.add(line);
      }
    }
    return without;
  }

  private static LineChange sum(LineChange one, LineChange other) {
    Set<String> words = new TreeSet<>(one.firstWords());
    words.addAll(other.firstWords());
    return new LineChange(
        one.switchName(),
        one.section(),
        List.copyOf(words),
        one.added() + other.added(),
        one.removed() + other.removed(),
        one.reordered() || other.reordered(),
        one.harmless());
  }
}
