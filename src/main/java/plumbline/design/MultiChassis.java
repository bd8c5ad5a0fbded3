package plumbline.design;

import plumbline.port.PortName;
import plumbline.yaml.Position;

/**
 * Two switches that offer bundles together.
 *
 * @param first a switch
 * @param second the other
 * @param peerLink the port on each that joins them
 * @param at where it is declared
 */
public record MultiChassis(String first, String second, PortName peerLink, Position at) {}
