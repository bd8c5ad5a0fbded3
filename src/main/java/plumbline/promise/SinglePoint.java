package plumbline.promise;

import java.util.List;
import java.util.Map;
import plumbline.fabric.Failure;
import plumbline.vlan.VlanId;

/**
 * A thing whose failure takes a VLAN from hosts that are plugged in twice, while others still have
 * it.
 *
 * @param failure what fails
 * @param hosts the hosts that lose it, by VLAN
 * @param takeover whether links that carry the VLAN would still join them, but spanning tree leads
 *     over one that does not
 */
public record SinglePoint(Failure failure, Map<VlanId, List<String>> hosts, boolean takeover) {}
