package plumbline.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Cuts a capture into the texts of its switches: a new name in a {@code hostname} line or in a
 * prompt, or a new dump of the same switch, begins another one.
 */
final class SwitchSplitter {
  private static final int NONE = -1;

  /** Prompts of some releases show no more of a long name than this. */
  private static final int CUT_NAME = 10;

  private final ScannedLines scan;
  private final List<Part> parts = new ArrayList<>();
  private int first;
  private Optional<String> named = Optional.empty();
  private Optional<String> before = Optional.empty();
  private Optional<String> prompted = Optional.empty();
  private int top = NONE;
  private boolean ended;

  private SwitchSplitter(ScannedLines scan) {
    this.scan = scan;
  }

  /**
   * Lines of one switch, counted from 0.
   *
   * @param first the first
   * @param end the line behind the last
   * @param named whether a line names it
   * @param host its name in prompts
   */
  record Part(int first, int end, boolean named, Optional<String> host) {}

  /** The parts of a capture, at least one, that together are all its lines. */
  static List<Part> split(ScannedLines scan) {
    SwitchSplitter splitter = new SwitchSplitter(scan);
    for (Mark mark : scan.marks()) {
      splitter.take(mark);
    }
    splitter.hushRepeatedName();
    splitter.close(scan.lines().count());
    return splitter.joinEmpty();
  }

  private void take(Mark mark) {
    switch (mark.kind()) {
      case PROMPT, CONFIG_PROMPT -> prompt(mark);
      case WHOLE_ECHO -> top = mark.line();
      case PART_ECHO -> top = NONE;
      case START, START_OF_ENDING -> top = top == NONE ? mark.line() : top;
      case CONFIGURE -> ended = false;
      case END -> ended = true;
      case HOSTNAME -> hostname(mark);
      case SIZE, OPEN_BANNER, OPEN_BLOB -> {}
    }
  }

  private void prompt(Mark mark) {
    String host = mark.text();
    boolean same =
        prompted.map(host::equalsIgnoreCase).orElse(named.isEmpty())
            || named.map(name -> isPromptOf(host, name)).orElse(false);
    if (!same) {
      close(mark.line());
    }
    prompted = Optional.of(host);
    if (mark.kind() == Mark.Kind.CONFIG_PROMPT) {
      ended = false;
    }
  }

  private static boolean isPromptOf(String host, String name) {
    return host.equalsIgnoreCase(name)
        || (host.length() >= CUT_NAME && name.regionMatches(true, 0, host, 0, host.length()));
  }

  private void hostname(Mark mark) {
    boolean renamed = scan.prompt(mark.line()).isPresent();
    boolean other = named.map(name -> !name.equalsIgnoreCase(mark.text())).orElse(false);
    if (named.isPresent() && top != NONE) {
      Optional<String> host = prompted;
      close(upOverComments(top));
      prompted = host;
    } else if (named.isPresent() && (ended || (other && !renamed))) {
      close(upOverComments(mark.line()));
    }
    named = Optional.of(mark.text());
    top = NONE;
  }

  /** A name that is said again behind the end of the config, and nothing else, is no config. */
  private void hushRepeatedName() {
    int only = NONE;
    for (int line = first; line < scan.lines().count(); line++) {
      if (scan.kind(line).isStatement()) {
        if (only != NONE) {
          return;
        }
        only = line;
      }
    }
    if (only != NONE && !parts.isEmpty() && named.isPresent() && named.equals(before)) {
      scan.kind(only, LineKind.NOISE);
    }
  }

  private int upOverComments(int line) {
    int at = line;
    while (at > first && isBetween(scan.kind(at - 1))) {
      at--;
    }
    return at;
  }

  private static boolean isBetween(LineKind kind) {
    return kind == LineKind.COMMENT || kind == LineKind.BLANK;
  }

  private void close(int end) {
    if (end > first) {
      parts.add(new Part(first, end, named.isPresent(), prompted));
      first = end;
    }
    before = named;
    named = Optional.empty();
    prompted = Optional.empty();
    top = NONE;
    ended = false;
  }

  /** Gives lines without any statement to the part before them, or else behind them. */
  private List<Part> joinEmpty() {
    List<Part> joined = new ArrayList<>();
    int begin = 0;
    for (Part part : parts) {
      if (hasStatement(part)) {
        joined.add(new Part(begin, part.end(), part.named(), part.host()));
      } else if (!joined.isEmpty()) {
        Part last = joined.remove(joined.size() - 1);
        joined.add(new Part(last.first(), part.end(), last.named(), last.host()));
      } else {
        continue;
      }
      begin = part.end();
    }
    return joined.isEmpty()
        ? List.of(new Part(0, scan.lines().count(), false, Optional.empty()))
        : joined;
  }

  private boolean hasStatement(Part part) {
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line).isStatement()) {
        return true;
      }
    }
    return false;
  }
}
