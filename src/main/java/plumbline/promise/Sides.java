package plumbline.promise;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.fabric.Fabric;

/**
 * One network three times over.
 *
 * @param found as the configs that were read make it; nothing is known of other switches
 * @param repaired the same with what rules find on single switches, ports, pairs and links repaired
 * @param supposed as found, but switches that were not read are taken to be as designed
 * @param designed as repaired, with the same supposition
 */
public record Sides(Fabric found, Fabric repaired, Fabric supposed, Fabric designed) {
  /**
   * Builds them.
   *
   * @param settings what was read, by the switch's name in the design
   * @param rules the rules, by id, whose findings count as repaired
   */
  public static Sides of(
      Design design, Map<String, SwitchSettings> settings, Predicate<String> rules) {
    AsDesigned as = new AsDesigned(design, rules);
    Map<String, SwitchSettings> repaired = new LinkedHashMap<>();
    Map<String, SwitchSettings> supposed = new LinkedHashMap<>(settings);
    Map<String, SwitchSettings> designed = new LinkedHashMap<>();
    for (DesignSwitch one : design.switches().values()) {
      SwitchSettings found = settings.get(one.name());
      SwitchSettings mended =
          found == null ? new AsDesigned(design, any -> true).unread(one) : as.of(one, found);
      designed.put(one.name(), mended);
      if (found == null) {
        supposed.put(one.name(), mended);
      } else {
        repaired.put(one.name(), mended);
      }
    }
    Fabric found = Fabric.of(design, settings);
    Fabric mended = Fabric.of(design, repaired);
    boolean whole = settings.keySet().containsAll(design.switches().keySet());
    return new Sides(
        found,
        mended,
        whole ? found : Fabric.of(design, supposed),
        whole ? mended : Fabric.of(design, designed));
  }

  /** Whether every switch of the design was read. */
  public boolean isWhole() {
    return found.design().switches().keySet().stream()
        .allMatch(name -> found.settings(name).isPresent());
  }
}
