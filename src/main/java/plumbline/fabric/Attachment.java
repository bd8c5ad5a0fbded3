package plumbline.fabric;

import plumbline.setting.Truth;

/**
 * A place where a host or a gateway meets a VLAN.
 *
 * @param point the switch port
 * @param carries whether the port carries the VLAN
 */
public record Attachment(VlanGraph.Point point, Truth carries) {}
