package plumbline.window;

import java.util.List;
import java.util.Optional;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.statement.LineMarks;

/** Tells whether something is the same on both sides of a window. */
final class Sameness {
  private final Side before;
  private final Side after;

  Sameness(Side before, Side after) {
    this.before = before;
    this.after = after;
  }

  /**
   * Whether the value is the same. What neither text decides is the same where both leave it open
   * for the same reason and by the same lines.
   */
  boolean isSame(Point point) {
    if (point.isDecided()) {
      return meaning(point, point.before()).equals(meaning(point, point.after()));
    }
    // What a port carries is open where what it is made of is, which is compared by itself.
    return !point.before().isDecided()
        && !point.after().isDecided()
        && (point.key().filter(Keys.CARRIED::equals).isPresent() || isOpenAlike(point));
  }

  private boolean isOpenAlike(Point point) {
    return reason(point.before()).equals(reason(point.after()))
        && marks(point.before(), before.marks()).equals(marks(point.after(), after.marks()));
  }

  private static Optional<?> meaning(Point point, Setting<?> setting) {
    return Values.meaning(point, setting);
  }

  /** Lines may move. */
  private static String reason(Setting<?> setting) {
    return setting.reason().orElse("").replaceAll("line [0-9]+", "line");
  }

  private static List<Long> marks(Setting<?> setting, LineMarks marks) {
    return lines(setting).stream().map(marks::of).distinct().sorted().toList();
  }

  /** The numbers of the lines that a setting rests on. */
  static List<Integer> lines(Setting<?> setting) {
    return setting.evidence().stream()
        .filter(Evidence.Line.class::isInstance)
        .map(line -> ((Evidence.Line) line).line())
        .toList();
  }
}
