package plumbline.rules;

import java.util.Map;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.promise.Sides;

/**
 * The switches of a design as one network.
 *
 * @param sides the network as found, and with the findings of narrower rules repaired
 * @param switches the switches whose configs were read, by name, in the order of the design
 */
public record FabricCase(Sides sides, Map<String, SwitchCase> switches) {
  /** The design. */
  public Design design() {
    return sides.found().design();
  }

  /** A switch whose config was read. */
  Optional<SwitchCase> at(String name) {
    return Optional.ofNullable(switches.get(name));
  }
}
