package plumbline.fabric;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plumbline.setting.Truth;

/**
 * Whether two things with several attachments each reach each other in a VLAN, and which single
 * failures take that away. Nothing is forwarded between the attachments of one thing: a host is no
 * bridge.
 */
public final class Reach {
  private final VlanGraph graph;
  private final List<Attachment> one;
  private final List<Attachment> other;

  /**
   * Two things in a VLAN.
   *
   * @param graph the VLAN
   * @param one where the first is attached
   * @param other where the second is attached
   */
  public Reach(VlanGraph graph, List<Attachment> one, List<Attachment> other) {
    this.graph = graph;
    this.one = List.copyOf(one);
    this.other = List.copyOf(other);
  }

  /** Whether some attachment of the one and some of the other are joined while something fails. */
  public Truth holds(Failure failure) {
    Truth best = Truth.NO;
    for (Attachment from : one) {
      for (Attachment to : other) {
        Truth joined =
            from.carries().and(to.carries()).and(graph.joins(from.point(), to.point(), failure));
        if (joined == Truth.YES) {
          return Truth.YES;
        }
        best = joined == Truth.UNKNOWN ? joined : best;
      }
    }
    return best;
  }

  /**
   * The single failures of switches, stack members, links and cables that leave less than
   * certainty: with NO what they break for certain, with UNKNOWN what they may break. Where nothing
   * is joined to begin with there is nothing to take away.
   */
  public Map<Failure, Truth> cuts() {
    Truth now = holds(new Failure.None());
    Map<Failure, Truth> cuts = new LinkedHashMap<>();
    if (now == Truth.NO) {
      return cuts;
    }
    for (Failure failure : suspects(now)) {
      Truth then = holds(failure);
      if (then != now) {
        cuts.put(failure, then);
      }
    }
    return cuts;
  }

  /** What cuts all walks is on each of them, so one walk that holds now is enough. */
  private Set<Failure> suspects(Truth now) {
    for (Attachment from : one) {
      for (Attachment to : other) {
        Truth joined =
            from.carries()
                .and(to.carries())
                .and(graph.joins(from.point(), to.point(), new Failure.None()));
        if (joined == now) {
          return graph.suspects(from.point(), to.point());
        }
      }
    }
    return new LinkedHashSet<>();
  }
}
