package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.Host;

/**
 * A pair of a host's ports whose switch ports were both read.
 *
 * @param host the host
 * @param pair the pair
 * @param first the switch port of its first port
 * @param second the switch port of its second port
 */
public record PairCase(Host host, Host.Pair pair, PortCase first, PortCase second) {
  /**
   * Every pair of the design of which both switch ports have settings, in the order of the design.
   *
   * @param switches the switches whose configs were read, by name
   */
  public static List<PairCase> of(Design design, Map<String, SwitchCase> switches) {
    List<PairCase> all = new ArrayList<>();
    for (Host host : design.hosts().values()) {
      for (Host.Pair pair : host.pairs()) {
        Optional<PortCase> first = port(host, pair.first(), switches);
        Optional<PortCase> second = port(host, pair.second(), switches);
        if (first.isPresent() && second.isPresent()) {
          all.add(new PairCase(host, pair, first.get(), second.get()));
        }
      }
    }
    return all;
  }

  private static Optional<PortCase> port(Host host, String name, Map<String, SwitchCase> switches) {
    return Optional.ofNullable(host.ports().get(name))
        .map(Host.HostPort::to)
        .flatMap(
            to -> Optional.ofNullable(switches.get(to.switchName())).flatMap(at -> at.caseOf(to)))
        .filter(port -> port.settings().isPresent());
  }

  /** Both ends, named after the host's ports. */
  TwoEnds ends() {
    return new TwoEnds(
        first,
        second,
        Optional.of(host.name() + " " + pair.first() + " and " + pair.second()),
        pair.at());
  }
}
