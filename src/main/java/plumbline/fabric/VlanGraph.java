package plumbline.fabric;

import java.util.BitSet;
import java.util.List;
import java.util.Set;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Truth;

/**
 * Where frames of one VLAN go between switches, for certain and perhaps, whole or with one thing
 * failed. Blocked ends do not count: in the per-VLAN modes of spanning tree a blocked link stands
 * in for the one that fails.
 */
public final class VlanGraph implements Carriage {
  private final Chassis chassis;
  private final VlanLayer certain;
  private final VlanLayer possible;

  /**
   * A graph.
   *
   * @param sure the links that carry the VLAN for certain, by index
   * @param perhaps those and the links that may carry it
   */
  VlanGraph(Chassis chassis, List<FabricLink> links, BitSet sure, BitSet perhaps) {
    this.chassis = chassis;
    this.certain = new VlanLayer(chassis, links, true);
    this.possible = new VlanLayer(chassis, links, false);
    sure.stream().forEach(certain::add);
    perhaps.stream().forEach(possible::add);
    certain.close();
    possible.close();
  }

  /**
   * A port of a switch, as a place where something is attached.
   *
   * @param switchName the switch
   * @param port its port
   */
  public record Point(String switchName, PortName port) {
    /** Some place on one member of a stack, or on a switch that is none. */
    public static Point ofMember(String switchName, int member) {
      return new Point(switchName, PortName.of(PortKind.GIGABIT_ETHERNET, member, 0, 1));
    }
  }

  @Override
  public Truth joins(Point one, Point other, Failure failure) {
    int from = chassis.indexOf(one.switchName(), one.port());
    int to = chassis.indexOf(other.switchName(), other.port());
    if (certain.joins(from, to, failure)) {
      return Truth.YES;
    }
    return possible.joins(from, to, failure) ? Truth.UNKNOWN : Truth.NO;
  }

  @Override
  public Set<Failure> suspects(Point one, Point other) {
    int from = chassis.indexOf(one.switchName(), one.port());
    int to = chassis.indexOf(other.switchName(), other.port());
    return certain.joins(from, to, new Failure.None())
        ? certain.suspects(from, to)
        : possible.suspects(from, to);
  }

  /** The links that carry the VLAN for certain or perhaps, by index, ascending. */
  public List<Integer> carrying() {
    return possible.links();
  }

  /** A tree per VLAN spans what carries it, so a link that lacks the VLAN is never in its way. */
  @Override
  public Truth forwards(int link, Failure failure) {
    return Truth.YES;
  }
}
