package plumbline.rules;

import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import plumbline.design.Design;
import plumbline.promise.Promises;
import plumbline.promise.Sides;

/**
 * The switches of a design as one network.
 *
 * @param sides the network as found, and with the findings of narrower rules repaired
 * @param repaired what is promised in the repaired network; nothing is known of unread switches
 * @param designed the same, with unread switches as designed
 * @param switches the switches whose configs were read, by name, in the order of the design
 * @param told whether findings of a rule, by id, are given, so that they count as repaired
 */
public record FabricCase(
    Sides sides,
    Promises repaired,
    Promises designed,
    Map<String, SwitchCase> switches,
    Predicate<String> told) {
  /** Looks at a network. */
  public static FabricCase of(
      Sides sides, Map<String, SwitchCase> switches, Predicate<String> told) {
    Promises repaired = Promises.in(sides.repaired());
    Promises designed = sides.isWhole() ? repaired : Promises.in(sides.designed());
    return new FabricCase(sides, repaired, designed, switches, told);
  }

  /** The design. */
  public Design design() {
    return sides.found().design();
  }

  /** A switch whose config was read. */
  Optional<SwitchCase> at(String name) {
    return Optional.ofNullable(switches.get(name));
  }
}
