package plumbline.fabric;

import java.util.List;
import java.util.Set;
import plumbline.port.PortName;
import plumbline.setting.Carried;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * Where frames of one VLAN go between switches, for certain and perhaps, whole or with one thing
 * failed. Blocked ends do not count: in the per-VLAN modes of spanning tree a blocked link stands
 * in for the one that fails.
 */
public final class VlanGraph {
  private final Chassis chassis;
  private final VlanLayer certain;
  private final VlanLayer possible;

  VlanGraph(Chassis chassis, List<FabricLink> links, VlanId vlan) {
    this.chassis = chassis;
    this.certain = new VlanLayer(chassis, links, true);
    this.possible = new VlanLayer(chassis, links, false);
    for (int link = 0; link < links.size(); link++) {
      Carried crossing = links.get(link).crosses();
      if (crossing.certain().contains(vlan)) {
        certain.add(link);
      }
      if (crossing.possible().contains(vlan)) {
        possible.add(link);
      }
    }
    certain.close();
    possible.close();
  }

  /**
   * A port of a switch, as a place where something is attached.
   *
   * @param switchName the switch
   * @param port its port
   */
  public record Point(String switchName, PortName port) {}

  /** Whether frames pass between two places while something fails. */
  public Truth joins(Point one, Point other, Failure failure) {
    int from = chassis.indexOf(one.switchName(), one.port());
    int to = chassis.indexOf(other.switchName(), other.port());
    if (certain.joins(from, to, failure)) {
      return Truth.YES;
    }
    return possible.joins(from, to, failure) ? Truth.UNKNOWN : Truth.NO;
  }

  /** Every failure that may change whether two places are joined. */
  Set<Failure> suspects(Point one, Point other) {
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
}
