package plumbline.report;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plumbline.result.Past;
import plumbline.text.Page;

/** The part of a text report that tells of the runs that a history holds. */
final class TextTrend {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** How many runs are shown. */
  private static final int MOST_RUNS = 10;

  private TextTrend() {}

  /** Writes what was open after each run, and what was left out of the history. */
  static void write(Page page, Past past) {
    List<Past.TrendPoint> trend = past.trend();
    if (trend.size() > 1) {
      page.gap().heading("Open findings, run by run");
      trend.stream()
          .skip(Math.max(0, trend.size() - MOST_RUNS))
          .forEach(point -> page.item(point(point)));
    }
    page.gap().heading("History");
    page.item(
        past.before()
            .map(
                run ->
                    "Compared with the run of "
                        + MINUTE.format(run.at())
                        + ", the newest of "
                        + Words.count(trend.size() - 1, "earlier run")
                        + ".")
            .orElse("No earlier run: this is the first."));
    past.setAside().forEach(page::item);
  }

  private static String point(Past.TrendPoint point) {
    List<String> counts = new ArrayList<>();
    number(counts, "breaks", point.breaks());
    number(counts, "weakens", point.weakens());
    number(counts, "unverified", point.unverified());
    number(counts, "untidy", point.untidy());
    if (point.waived() > 0) {
      counts.add(point.waived() + " waived");
    }
    return MINUTE.format(point.at())
        + ": "
        + (counts.isEmpty() ? "nothing" : String.join(", ", counts))
        + point.oldest().map(since -> "; the oldest since " + since).orElse("");
  }

  private static void number(List<String> counts, String word, int number) {
    if (number > 0) {
      counts.add(word + " " + number);
    }
  }
}
