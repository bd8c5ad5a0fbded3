package plumbline.design;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import plumbline.yaml.Position;

/**
 * A hypervisor host.
 *
 * @param name its name
 * @param place where it is mounted
 * @param ports its ports in design order
 * @param pairs pairs of port names that back each other up
 * @param at where it is declared
 */
public record Host(
    String name,
    Optional<DesignSwitch.RackPlace> place,
    Map<String, HostPort> ports,
    List<Pair> pairs,
    Position at) {
  /** Copies the collections. */
  public Host {
    ports = Collections.unmodifiableMap(new LinkedHashMap<>(ports));
    pairs = List.copyOf(pairs);
  }

  /**
   * One port of a host.
   *
   * @param name its name, such as {@code nic0}
   * @param to the switch port that it is cabled to
   * @param cable label of the cable
   * @param medium such as {@code cat6a}
   * @param lengthMetres length of the cable
   */
  public record HostPort(
      String name,
      DesignPort to,
      Optional<String> cable,
      Optional<String> medium,
      OptionalDouble lengthMetres) {}

  /**
   * Two ports that back each other up.
   *
   * @param first a port's name
   * @param second another port's name
   * @param at where the pair stands
   */
  public record Pair(String first, String second, Position at) {}
}
