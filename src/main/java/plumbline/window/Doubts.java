package plumbline.window;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import plumbline.statement.SwitchText.Stamp;
import plumbline.statement.SwitchText.Times;

/** Says why two texts do not look like one switch before and after a change. */
final class Doubts {
  private Doubts() {}

  /** The doubts, each a clause; where there is one, no verdict can be relied on. */
  static List<String> of(SwitchWindow window) {
    return Stream.of(
            reversed(window.before().settings().times(), window.after().settings().times()),
            nameless("before", window.before(), "after", window.after()),
            nameless("after", window.after(), "before", window.before()))
        .flatMap(Optional::stream)
        .toList();
  }

  /** Every whole config names its switch; a script says itself that it is none. */
  private static Optional<String> nameless(String when, Side side, String other, Side named) {
    return side.settings().hostname().value().isEmpty()
            && named.settings().hostname().value().isPresent()
            && !side.isPart()
        ? Optional.of(
            "the text "
                + when
                + " has no hostname line, and the text "
                + other
                + " has one: it looks like a part of a config")
        : Optional.empty();
  }

  /**
   * Why the text before looks like the later one; empty where nothing says so. Clocks of unlike
   * zones tell nothing.
   */
  static Optional<String> reversed(Times before, Times after) {
    return Stream.<Optional<String>>of(
            reversed("changed", before, after, Times::changed),
            reversed("taken", before, after, Times::taken),
            reversed("saved", before, after, Times::saved))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static Optional<String> reversed(
      String what, Times before, Times after, Function<Times, Optional<Stamp>> stamp) {
    Optional<Stamp> was = stamp.apply(before);
    Optional<Stamp> is = stamp.apply(after);
    if (was.isEmpty() || is.isEmpty() || !was.get().zone().equals(is.get().zone())) {
      return Optional.empty();
    }
    Optional<LocalDateTime> first = was.get().time();
    Optional<LocalDateTime> second = is.get().time();
    return first.isPresent() && second.isPresent() && first.get().isAfter(second.get())
        ? Optional.of(
            "the text before was "
                + what
                + " at "
                + first.get()
                + ", after the text after ("
                + second.get()
                + "): the two look swapped")
        : Optional.empty();
  }
}
