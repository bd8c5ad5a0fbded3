package plumbline.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.finding.Finding;
import plumbline.history.Comparison;
import plumbline.history.Decider;
import plumbline.history.Earlier;
import plumbline.history.PastFinding;
import plumbline.history.PastRun;
import plumbline.history.RunFolder;
import plumbline.history.Runs;
import plumbline.result.ClearedBy;

/**
 * Prints what a year of weekly runs takes to open and to compare with, beside the mere reading of
 * its bytes: 500 switches, 5,000 findings in each run. Only the ratios of one run say something;
 * the best of each row counts. No test; run by the profile {@code bench} alone.
 */
class HistoryBench {
  private static final int WEEKS = 52;
  private static final int FINDINGS = 5_000;
  private static final int ROUNDS = Integer.getInteger("bench.rounds", 3);
  private static final Instant START = Instant.parse("2026-01-02T05:30:00Z");

  @TempDir private Path folder;

  @Test
  void print() throws IOException {
    RunFolder runs = new RunFolder(folder);
    List<Finding> findings = Runs.findings(FINDINGS);
    for (int week = 0; week < WEEKS; week++) {
      Instant at = START.plus(7L * week, ChronoUnit.DAYS);
      // each week another tenth of them is not there
      int gap = week % 10;
      runs.keep(
          at,
          Runs.json(
              at,
              Stream.iterate(0, i -> i < FINDINGS, i -> i + 1)
                  .filter(i -> i % 10 != gap)
                  .map(findings::get)
                  .toList()));
    }
    Instant now = START.plus(7L * WEEKS, ChronoUnit.DAYS);
    long read = Long.MAX_VALUE;
    long first = 0;
    long opened = Long.MAX_VALUE;
    long compared = Long.MAX_VALUE;
    long bytes = 0;
    for (int round = 0; round < ROUNDS; round++) {
      long start = System.nanoTime();
      Earlier earlier = runs.before(now, Optional.empty());
      long middle = System.nanoTime();
      Comparison comparison =
          Comparison.of(
              earlier.newest().orElseThrow(),
              findings,
              LocalDate.ofInstant(now, ZoneOffset.UTC),
              new Cleared());
      long end = System.nanoTime();
      assertThat(earlier.trend()).hasSize(WEEKS);
      assertThat(comparison.standings()).hasSize(FINDINGS);
      first = round == 0 ? end - start : first;
      opened = Math.min(opened, middle - start);
      compared = Math.min(compared, end - middle);
      long before = System.nanoTime();
      bytes = 0;
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.toList()) {
          bytes += Files.readAllBytes(file).length;
        }
      }
      read = Math.min(read, System.nanoTime() - before);
    }
    System.out.printf(
        Locale.ROOT,
        "%n%d runs of %d findings on %d switches, %d MiB, best of %d, Java %s, %d processors%n"
            + "read all bytes     %8.3f s%n"
            + "open the history   %8.3f s, ratio %.2f%n"
            + "compare            %8.3f s%n"
            + "both, the very first time in the process %.3f s%n",
        WEEKS,
        FINDINGS,
        FINDINGS / 10,
        bytes >> 20,
        ROUNDS,
        Runtime.version().feature(),
        Runtime.getRuntime().availableProcessors(),
        seconds(read),
        seconds(opened),
        (double) opened / read,
        seconds(compared),
        seconds(first));
  }

  private static double seconds(long nanos) {
    return nanos / 1e9;
  }

  /** Takes everything for cleared. */
  private static final class Cleared implements Decider {
    @Override
    public Fate of(PastFinding past, PastRun before) {
      return new Fate.Cleared(ClearedBy.CONFIG);
    }

    @Override
    public boolean sawAll() {
      return true;
    }
  }
}
