package plumbline.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.promise.Effect;
import plumbline.promise.Effects;
import plumbline.promise.Sides;
import plumbline.rules.FabricCase;
import plumbline.rules.FabricRule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.SwitchCase;

/**
 * Prints what the network as one takes, parsing left aside, at four sizes, and how it grows with
 * the number of switches. Only the growth says something. No test; run by the profile {@code bench}
 * alone.
 */
class FabricBench {
  private static final int LARGEST = Integer.getInteger("bench.fabric", 2000);
  private static final int VLANS = 200;

  /** What one size took. */
  private record Taken(int switches, double seconds, long mebibytes, int effects) {}

  @Test
  void print() {
    StringBuilder table = new StringBuilder();
    measure(LARGEST / 8); // the first run warms up
    List<Taken> rows =
        List.of(LARGEST / 8, LARGEST / 4, LARGEST / 2, LARGEST).stream()
            .map(FabricBench::measure)
            .toList();
    table.append(
        String.format(
            Locale.ROOT,
            "%nnetwork of N access switches, 2N hosts, %d VLANs, Java %s, %d processors%n%9s%9s%9s%9s%n",
            VLANS,
            Runtime.version().feature(),
            Runtime.getRuntime().availableProcessors(),
            "N",
            "s",
            "MiB",
            "effects"));
    rows.forEach(
        row ->
            table.append(
                String.format(
                    Locale.ROOT,
                    "%9d%9.2f%9d%9d%n",
                    row.switches(),
                    row.seconds(),
                    row.mebibytes(),
                    row.effects())));
    table.append(String.format(Locale.ROOT, "time grows with N to the %.2f%n", exponent(rows)));
    System.out.print(table);
  }

  /** The slope of a straight line through the logarithms, by least squares. */
  private static double exponent(List<Taken> rows) {
    double x = rows.stream().mapToDouble(row -> Math.log(row.switches())).average().orElseThrow();
    double y = rows.stream().mapToDouble(row -> Math.log(row.seconds())).average().orElseThrow();
    double above = 0;
    double below = 0;
    for (Taken row : rows) {
      double dx = Math.log(row.switches()) - x;
      above += dx * (Math.log(row.seconds()) - y);
      below += dx * dx;
    }
    return above / below;
  }

  private static Taken measure(int switches) {
    FabricSite site = new FabricSite(switches, VLANS);
    Design design = site.design();
    Map<String, SwitchSettings> settings = site.settings();
    Map<String, SwitchCase> cases = new LinkedHashMap<>();
    for (DesignSwitch one : design.switches().values()) {
      cases.put(one.name(), new SwitchCase(design, one, settings.get(one.name())));
    }
    System.gc(); // NOPMD the peak below is to be that of this stage
    List<MemoryPoolMXBean> heap =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .toList();
    heap.forEach(MemoryPoolMXBean::resetPeakUsage);
    long start = System.nanoTime();
    Sides sides = Sides.of(design, settings, any -> true);
    FabricCase network = FabricCase.of(sides, cases, any -> true);
    int[] said = new int[1];
    RuleCatalogue.ALL.stream()
        .filter(FabricRule.class::isInstance)
        .map(FabricRule.class::cast)
        .forEach(rule -> rule.check(network, outcome -> said[0]++));
    List<Effect> effects = Effects.of(sides);
    double seconds = (System.nanoTime() - start) / 1e9;
    long peak = heap.stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum();
    // a network in which nothing was asked would be fast
    assertThat(said[0]).isPositive();
    return new Taken(switches, seconds, peak >> 20, effects.size());
  }
}
