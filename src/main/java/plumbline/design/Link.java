package plumbline.design;

import java.util.List;
import java.util.Optional;
import plumbline.yaml.Position;

/**
 * A link between two switches, or from one out of the design.
 *
 * @param first one end
 * @param second the other end; empty where the link leaves the design
 * @param members member ports of both ends in pairs; empty for a link without bundle
 * @param at where it is declared
 */
public record Link(
    DesignPort first, Optional<DesignPort> second, List<Member> members, Position at) {
  /** Copies the list. */
  public Link {
    members = List.copyOf(members);
  }

  /** The cables' ends on the side where this port is the bundle or a member; none elsewhere. */
  public List<DesignPort> membersBeside(DesignPort port) {
    List<DesignPort> here = members.stream().map(Member::first).toList();
    if (first.equals(port) || here.contains(port)) {
      return here;
    }
    List<DesignPort> there = members.stream().flatMap(one -> one.second().stream()).toList();
    return second.filter(port::equals).isPresent() || there.contains(port) ? there : List.of();
  }

  /**
   * One cable of a bundle.
   *
   * @param first port at the first end
   * @param second port at the second end; empty where the link leaves the design
   */
  public record Member(DesignPort first, Optional<DesignPort> second) {}
}
