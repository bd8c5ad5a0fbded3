package plumbline.fabric;

import java.util.Set;
import plumbline.setting.Truth;

/** Where frames of one VLAN go between switches, whole or with one thing failed. */
public interface Carriage {
  /** Whether frames pass between two places while something fails. */
  Truth joins(VlanGraph.Point one, VlanGraph.Point other, Failure failure);

  /** Every failure that may change whether two places are joined. */
  Set<Failure> suspects(VlanGraph.Point one, VlanGraph.Point other);

  /**
   * Whether frames that reach one end of a link could go on over it while something fails: spanning
   * tree, where it does not go by what the link carries, lets them.
   */
  Truth forwards(int link, Failure failure);
}
