/**
 * The declared intent: what the design file says, resolved and with places. Imports {@code yaml},
 * {@code port}, {@code setting}, {@code vlan} and {@code text}; knows no config.
 */
package plumbline.design;
