/**
 * What a switch really does: port lines, bundle lines, global lines and the dialect's defaults
 * combined, each value with its evidence. Imports {@code statement}, {@code setting}, {@code port}
 * and {@code vlan}; knows no parser and no design.
 */
package plumbline.effective;
