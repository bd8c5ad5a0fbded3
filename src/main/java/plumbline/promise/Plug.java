package plumbline.promise;

import java.util.Optional;
import plumbline.fabric.Failure;
import plumbline.fabric.VlanGraph.Point;
import plumbline.setting.Truth;

/**
 * A place where something that is no switch meets a VLAN.
 *
 * @param point the switch port, or the switch for what lives on the switch itself
 * @param cable whether a cable ends there, which may fail
 * @param works whether the VLAN passes there as the design wants it, with or without a tag
 * @param name what is plugged in there: the port of a host, or nothing where it has no name
 */
public record Plug(Point point, boolean cable, Truth works, Optional<String> name) {
  /** Whether it is cut off by itself when something fails; that its switch fails is not asked. */
  boolean isCut(Failure failure) {
    return cable && failure.equals(new Failure.OfPort(point.switchName(), point.port()));
  }
}
