package plumbline.syntax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The lines of a capture with what each is, and the marks found among them. */
final class ScannedLines {
  private final CleanLines lines;
  private final LineKind[] kinds;
  private final Map<Integer, Prompt> prompts = new HashMap<>();
  private final Map<Integer, Integer> skips = new HashMap<>();
  private final Map<Integer, String> names = new HashMap<>();
  private final List<Mark> marks = new ArrayList<>();

  ScannedLines(CleanLines lines) {
    this.lines = lines;
    this.kinds = new LineKind[lines.count()];
  }

  /** Lets a line that is no statement name the switch. */
  void name(int line, String name) {
    kinds[line] = LineKind.NAME;
    names.put(line, name);
  }

  /** The name of the switch on a line that is no statement. */
  String name(int line) {
    return names.getOrDefault(line, "");
  }

  /** Says what a line is. */
  void kind(int line, LineKind kind) {
    kinds[line] = kind;
  }

  /** Says what lines are, the last left out. */
  void kinds(int first, int end, LineKind kind) {
    Arrays.fill(kinds, first, end, kind);
  }

  /** Keeps the prompt of a line. */
  void prompt(int line, Prompt prompt) {
    prompts.put(line, prompt);
  }

  /** Keeps how many characters stand before a line's statement. */
  void skip(int line, int characters) {
    skips.put(line, characters);
  }

  /** Adds a mark. */
  void mark(int line, Mark.Kind kind, String text) {
    int at = marks.size();
    while (at > 0 && marks.get(at - 1).line() > line) {
      at--;
    }
    marks.add(at, new Mark(line, kind, text));
  }

  /** What a line is. */
  LineKind kind(int line) {
    return kinds[line];
  }

  /** The lines. */
  CleanLines lines() {
    return lines;
  }

  /** The marks, in order of lines. */
  List<Mark> marks() {
    return marks;
  }

  /** The marks of the lines from the first to before the end, in order. */
  List<Mark> marks(int first, int end) {
    return marks.subList(firstMark(first), firstMark(end));
  }

  /** The place of the first mark of a line or of one below it. */
  private int firstMark(int line) {
    int low = 0;
    int high = marks.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (marks.get(middle).line() < line) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The prompt of a line. */
  Optional<Prompt> prompt(int line) {
    return Optional.ofNullable(prompts.get(line));
  }

  /** A line's statement, its prompt cut off. */
  String statement(int line) {
    String content = lines.content(line);
    return skips.isEmpty() ? content : content.substring(skips.getOrDefault(line, 0));
  }

  /** The 1-based column of a line's statement. */
  int column(int line) {
    return lines.column(line, skips.isEmpty() ? 0 : skips.getOrDefault(line, 0));
  }
}
