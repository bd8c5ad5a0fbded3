package plumbline.syntax;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.setting.Evidence;
import plumbline.statement.SwitchText.Stamp;
import plumbline.statement.SwitchText.Times;

/** Reads the times in the comments above a config; what is in no known form is left out. */
final class HeaderTimes {
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
  private static final List<String> DAYS = List.of("MON", "TUE", "WED", "THU", "FRI", "SAT", "SUN");
  private static final List<String> CHANGED =
      List.of("last configuration change at", "running configuration last done at:");
  private static final List<String> SAVED =
      List.of(
          "nvram config last updated at",
          "startup config saved at:",
          "startup-config last modified at");
  private static final List<String> TAKEN = List.of("time:");

  private Optional<Stamp> changed = Optional.empty();
  private Optional<Stamp> saved = Optional.empty();
  private Optional<Stamp> taken = Optional.empty();

  /** Takes the comment in a line; of several that say the same the first counts. */
  void comment(int line, String content) {
    String text = content.substring(1).strip();
    changed = changed.or(() -> after(line, text, CHANGED));
    saved = saved.or(() -> after(line, text, SAVED));
    taken = taken.or(() -> after(line, text, TAKEN));
  }

  /** What the comments said. */
  Times times() {
    return new Times(changed, saved, taken);
  }

  private static Optional<Stamp> after(int line, String text, List<String> beginnings) {
    return beginnings.stream()
        .filter(beginning -> text.regionMatches(true, 0, beginning, 0, beginning.length()))
        .findFirst()
        .map(beginning -> stamp(line, text, beginning.length()));
  }

  /**
   * Reads {@code 10:11:12 UTC Tue Nov 3 2026} or {@code Tue Nov 3 10:11:12 2026}: a clock, perhaps
   * a zone behind it, a month with its day behind it, a year. A clock that was never set has a star
   * before it, and tells no time.
   */
  private static Stamp stamp(int line, String text, int from) {
    List<String> words =
        Arrays.stream(text.substring(from).strip().split("[ \t]+", 12)).limit(8).toList();
    String head = "! " + text.substring(0, from);
    int month = -1;
    int clock = -1;
    for (int at = 0; at < words.size(); at++) {
      if (month < 0 && MONTHS.contains(words.get(at).toLowerCase(Locale.ROOT))) {
        month = at;
      } else if (clock < 0 && words.get(at).indexOf(':') > 0) {
        clock = at;
      }
    }
    int year = clock == month + 2 ? month + 3 : month + 2;
    if (month < 0 || clock < 0 || year >= words.size()) {
      return new Stamp(new Evidence.Line(line, head), Optional.empty(), "");
    }
    Optional<LocalDateTime> time =
        time(
            words.get(clock),
            MONTHS.indexOf(words.get(month).toLowerCase(Locale.ROOT)) + 1,
            words.get(month + 1),
            words.get(year));
    return time.isEmpty()
        ? new Stamp(new Evidence.Line(line, head), time, "")
        : new Stamp(
            new Evidence.Line(line, head + " " + String.join(" ", words.subList(0, year + 1))),
            time,
            zone(words, clock));
  }

  /** The word behind the clock, unless it is a day's name, a year or what follows the date. */
  private static String zone(List<String> words, int clock) {
    return words.stream()
        .skip(clock + 1L)
        .findFirst()
        .filter(word -> word.matches("[A-Za-z]{1,8}"))
        .map(word -> word.toUpperCase(Locale.ROOT))
        .filter(word -> !DAYS.contains(word) && !MONTHS.contains(word.toLowerCase(Locale.ROOT)))
        .orElse("");
  }

  private static Optional<LocalDateTime> time(String clock, int month, String day, String year) {
    try {
      String[] parts = clock.replaceAll("^[.]|[.][0-9]+$", "").split(":", 4);
      return Optional.of(
          LocalDateTime.of(
              Integer.parseInt(year),
              month,
              Integer.parseInt(day),
              Integer.parseInt(parts[0]),
              Integer.parseInt(parts[1]),
              parts.length > 2 ? Integer.parseInt(parts[2]) : 0));
    } catch (DateTimeException | NumberFormatException unreadable) {
      return Optional.empty();
    }
  }
}
