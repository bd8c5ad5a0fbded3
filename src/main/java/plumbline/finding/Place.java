package plumbline.finding;

import java.util.Optional;

/**
 * A port of a switch, or a switch as a whole, as reports name it.
 *
 * @param switchName name of the switch in the design, or the config's where the design has none
 * @param port full name of the port in the switch's dialect
 */
public record Place(String switchName, Optional<String> port) {
  /** A whole switch. */
  public static Place ofSwitch(String name) {
    return new Place(name, Optional.empty());
  }

  /** A port. */
  public static Place ofPort(String switchName, String port) {
    return new Place(switchName, Optional.of(port));
  }

  @Override
  public String toString() {
    return port.map(name -> switchName + " " + name).orElse(switchName);
  }
}
