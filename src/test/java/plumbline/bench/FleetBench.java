package plumbline.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Prints what audits of fleets take, beside the mere reading of their bytes. Only the ratios of one
 * run say something: the rows are taken in turn, and the best of each counts. No test; run by the
 * profile {@code bench} alone.
 */
class FleetBench {
  private static final int SWITCHES = Integer.getInteger("bench.switches", 200);
  private static final int ROUNDS = Integer.getInteger("bench.rounds", 3);
  private static final String BASE = "read the bytes of 2N";

  /** What one run took: milliseconds, milliseconds, kilobytes. */
  private record Taken(long wall, long processor, long peak) {
    Taken best(Taken other) {
      return new Taken(
          Math.min(wall, other.wall),
          Math.min(processor, other.processor),
          Math.min(peak, other.peak));
    }
  }

  @TempDir private Path folder;

  @Test
  void print() throws IOException, InterruptedException {
    Map<String, List<String>> rows = new LinkedHashMap<>();
    Path one = fleet("one", 1, false);
    Path same = fleet("same", SWITCHES, false);
    Path twice = fleet("twice", 2 * SWITCHES, false);
    Path distinct = fleet("distinct", 2 * SWITCHES, true);
    rows.put(BASE, List.of(Measured.READ, twice.toString()));
    rows.put("audit one switch", audit(one));
    rows.put("audit N, repeated statements", audit(same));
    rows.put("audit 2N, repeated statements", audit(twice));
    rows.put("audit 2N, distinct statements", audit(distinct));
    Map<String, Taken> best = new LinkedHashMap<>();
    for (int round = 0; round < ROUNDS; round++) {
      for (Map.Entry<String, List<String>> row : rows.entrySet()) {
        best.merge(row.getKey(), run(row.getValue()), Taken::best);
      }
    }
    report(best);
  }

  private Path fleet(String name, int switches, boolean distinct) throws IOException {
    Path home = folder.resolve(name);
    new FleetWriter(home, switches, distinct).write();
    return home;
  }

  private static List<String> audit(Path home) {
    return List.of("audit", home + "/design.yaml", home + "/configs", "--as-of", "2026-11-25");
  }

  private static Taken run(List<String> arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // the options of the launcher
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx800m", "-cp"));
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(Measured.class.getName());
    command.addAll(arguments);
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    String[] said =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
            .strip()
            .split(" ", -1);
    assertThat(process.waitFor()).isZero();
    long wall = (System.nanoTime() - start) / 1_000_000;
    // an audit that could not be done would be fast
    assertThat(Integer.parseInt(said[0])).isBetween(0, 1);
    return new Taken(wall, Long.parseLong(said[1]), Long.parseLong(said[2]));
  }

  private static void report(Map<String, Taken> best) {
    Taken base = best.get(BASE);
    StringBuilder table = new StringBuilder();
    table.append(
        String.format(
            Locale.ROOT,
            "%nN = %d switches, best of %d, Java %s, %d processors%n",
            SWITCHES,
            ROUNDS,
            Runtime.version().feature(),
            Runtime.getRuntime().availableProcessors()));
    table.append(
        String.format(Locale.ROOT, "%-32s%9s%9s%9s%8s%n", "", "wall s", "CPU s", "MiB", "ratio"));
    best.forEach(
        (row, taken) ->
            table.append(
                String.format(
                    Locale.ROOT,
                    "%-32s%9.2f%9.2f%9d%8.1f%n",
                    row,
                    taken.wall() / 1000.0,
                    taken.processor() / 1000.0,
                    taken.peak() / 1024,
                    (double) taken.wall() / base.wall())));
    ratio(
        table,
        best,
        "2N against N",
        "audit 2N, repeated statements",
        "audit N, repeated statements");
    ratio(
        table,
        best,
        "distinct against repeated",
        "audit 2N, distinct statements",
        "audit 2N, repeated statements");
    System.out.print(table);
  }

  private static void ratio(
      StringBuilder table, Map<String, Taken> best, String name, String above, String below) {
    Taken one = best.get(above);
    Taken other = best.get(below);
    table.append(
        String.format(
            Locale.ROOT,
            "%s: wall %.2f, CPU %.2f, memory %.2f%n",
            name,
            (double) one.wall() / other.wall(),
            (double) one.processor() / other.processor(),
            (double) one.peak() / other.peak()));
  }
}
