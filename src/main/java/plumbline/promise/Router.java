package plumbline.promise;

import java.util.List;

/**
 * A gateway in one VLAN.
 *
 * @param name name of the switch, or of the outside router
 * @param plugs where it meets the VLAN; for a stack, each of its members
 */
public record Router(String name, List<Plug> plugs) {
  /** Copies the list. */
  public Router {
    plugs = List.copyOf(plugs);
  }
}
