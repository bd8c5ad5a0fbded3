package plumbline.rules;

import java.util.Optional;
import plumbline.finding.Place;
import plumbline.port.PortName;

/**
 * What an outcome is about.
 *
 * @param place where; empty where there is no place
 * @param port canonical name of the place's port
 * @param words what is behind the place, stable over runs; may be empty
 */
public record Subject(Optional<Place> place, Optional<PortName> port, String words) {
  /** A switch as a whole. */
  public static Subject ofSwitch(String name) {
    return new Subject(Optional.of(Place.ofSwitch(name)), Optional.empty(), "");
  }

  /**
   * Something of the network that is at no place, such as a VLAN or a service.
   *
   * @param words its name, stable over runs
   */
  public static Subject ofNetwork(String words) {
    return new Subject(Optional.empty(), Optional.empty(), words);
  }

  /** A port. */
  public static Subject ofPort(String switchName, String fullName, PortName port, String words) {
    return new Subject(Optional.of(Place.ofPort(switchName, fullName)), Optional.of(port), words);
  }

  /** Name of the switch, empty where there is none. */
  public String switchName() {
    return place.map(Place::switchName).orElse("");
  }
}
