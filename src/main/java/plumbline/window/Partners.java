package plumbline.window;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.Host;
import plumbline.design.Link;
import plumbline.finding.Finding;
import plumbline.port.PortName;

/** The ports of a design that back each other up, or are the two ends of one link. */
final class Partners {
  private final Map<At, Set<At>> partners = new HashMap<>();

  /** A port of a switch. */
  private record At(String switchName, PortName port) {}

  Partners(Design design) {
    for (Host host : design.hosts().values()) {
      for (Host.Pair pair : host.pairs()) {
        join(host.ports().get(pair.first()).to(), host.ports().get(pair.second()).to());
      }
    }
    for (Link link : design.links()) {
      link.second().ifPresent(second -> join(link.first(), second));
      for (Link.Member member : link.members()) {
        member.second().ifPresent(second -> join(member.first(), second));
      }
    }
  }

  private void join(DesignPort one, DesignPort other) {
    At first = new At(one.switchName(), one.port());
    At second = new At(other.switchName(), other.port());
    partners.computeIfAbsent(first, any -> new HashSet<>()).add(second);
    partners.computeIfAbsent(second, any -> new HashSet<>()).add(first);
  }

  /** Whether two findings are about ports that belong together. */
  boolean are(Finding one, Finding other) {
    if (one.portOrder().isEmpty() || other.portOrder().isEmpty()) {
      return false;
    }
    At first = new At(one.switchName(), one.portOrder().get());
    At second = new At(other.switchName(), other.portOrder().get());
    return partners.getOrDefault(first, Set.of()).contains(second);
  }
}
