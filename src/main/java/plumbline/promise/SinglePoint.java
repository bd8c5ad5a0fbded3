package plumbline.promise;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.fabric.Failure;
import plumbline.vlan.VlanId;

/**
 * A thing whose failure takes a VLAN from somebody, while others still have it.
 *
 * @param failure what fails
 * @param takeover index of a link that lacks the VLAN and that still leads on, so that other VLANs
 *     have a path there; empty where nothing leads on
 * @param who loses it, by VLAN; with the port where it is about one of several
 */
public record SinglePoint(
    Failure failure, Optional<Integer> takeover, Map<VlanId, List<String>> who) {}
