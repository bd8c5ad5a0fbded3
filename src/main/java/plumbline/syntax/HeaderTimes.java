package plumbline.syntax;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.statement.SwitchText.Times;

/** Reads the times in the comments above a config; what is in no known form is left out. */
final class HeaderTimes {
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
  private static final List<String> CHANGED =
      List.of("last configuration change at", "running configuration last done at:");
  private static final List<String> SAVED =
      List.of(
          "nvram config last updated at",
          "startup config saved at:",
          "startup-config last modified at");
  private static final List<String> TAKEN = List.of("time:");

  private Optional<LocalDateTime> changed = Optional.empty();
  private Optional<LocalDateTime> saved = Optional.empty();
  private Optional<LocalDateTime> taken = Optional.empty();

  /** Takes one comment; of several that say the same the first counts. */
  void comment(String content) {
    String text = content.substring(1).strip().toLowerCase(Locale.ROOT);
    changed = changed.or(() -> after(text, CHANGED));
    saved = saved.or(() -> after(text, SAVED));
    taken = taken.or(() -> after(text, TAKEN));
  }

  /** What the comments said. */
  Times times() {
    return new Times(changed, saved, taken);
  }

  private static Optional<LocalDateTime> after(String text, List<String> beginnings) {
    return beginnings.stream()
        .filter(text::startsWith)
        .findFirst()
        .flatMap(beginning -> time(text.substring(beginning.length())));
  }

  /**
   * Reads {@code 10:11:12 UTC Tue Nov 3 2026} or {@code Tue Nov 3 10:11:12 2026}: a clock, a month
   * with its day behind it, a year.
   */
  private static Optional<LocalDateTime> time(String text) {
    List<String> words = Arrays.stream(text.strip().split("[ \t]+", 12)).limit(8).toList();
    int month = -1;
    int clock = -1;
    for (int at = 0; at < words.size(); at++) {
      if (month < 0 && MONTHS.contains(words.get(at))) {
        month = at;
      } else if (clock < 0 && words.get(at).indexOf(':') > 0) {
        clock = at;
      }
    }
    int year = clock == month + 2 ? month + 3 : month + 2;
    if (month < 0 || clock < 0 || year >= words.size()) {
      return Optional.empty();
    }
    try {
      String[] parts = words.get(clock).replaceAll("^[*.]|[.][0-9]+$", "").split(":", 4);
      return Optional.of(
          LocalDateTime.of(
              Integer.parseInt(words.get(year)),
              MONTHS.indexOf(words.get(month)) + 1,
              Integer.parseInt(words.get(month + 1)),
              Integer.parseInt(parts[0]),
              Integer.parseInt(parts[1]),
              parts.length > 2 ? Integer.parseInt(parts[2]) : 0));
    } catch (DateTimeException | NumberFormatException unreadable) {
      return Optional.empty();
    }
  }
}
