package plumbline.inspect;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.design.DesignPort;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.port.PortName;
import plumbline.setting.Key;
import plumbline.wish.Wish;

/**
 * One switch as it is shown.
 *
 * @param name name of the switch in the design, or the config's where the design has none
 * @param settings what its config says
 * @param ports the ports that are shown, in order
 * @param designed what the design says of ports, by port; empty without a design
 * @param full whether every setting of a port is shown, or only what says something
 */
public record SwitchView(
    String name,
    SwitchSettings settings,
    List<PortSettings> ports,
    Map<PortName, DesignPort> designed,
    boolean full) {
  /** Copies the collections. */
  public SwitchView {
    ports = List.copyOf(ports);
    designed = Map.copyOf(designed);
  }

  /** A switch with all its ports. */
  public static SwitchView of(
      String name, SwitchSettings settings, Map<PortName, DesignPort> designed) {
    return new SwitchView(name, settings, List.copyOf(settings.ports().values()), designed, false);
  }

  /** The same switch with one port, in full; empty if the config does not open it. */
  public Optional<SwitchView> at(PortName port) {
    return settings
        .port(port)
        .map(only -> new SwitchView(name, settings, List.of(only), designed, true));
  }

  /** What the design says of a setting of a port. */
  Optional<Wish> wish(PortSettings port, Key<?> key) {
    return Optional.ofNullable(designed.get(port.name())).flatMap(at -> Wish.of(key, at, port));
  }

  /** Ports that the design covers and the config does not open, in order. */
  List<PortName> unopened() {
    return designed.keySet().stream()
        .filter(port -> settings.port(port).isEmpty())
        .sorted()
        .toList();
  }
}
