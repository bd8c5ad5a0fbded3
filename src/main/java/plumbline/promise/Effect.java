package plumbline.promise;

import java.util.Optional;
import java.util.Set;
import plumbline.fabric.Failure;
import plumbline.finding.Affected.Loss;
import plumbline.vlan.VlanId;

/**
 * Something that the design promises and that faults take away.
 *
 * @param loss what is taken
 * @param who from whom: the name of a member, with its port where it is about one, or of a service
 * @param vlan the VLAN; empty for a service
 * @param when the single failure that takes it; empty where it is gone now
 * @param faults the faults to blame
 */
public record Effect(
    Loss loss, String who, Optional<VlanId> vlan, Optional<Failure> when, Set<Fault> faults) {
  /** Copies the set. */
  public Effect {
    faults = Set.copyOf(faults);
  }
}
