/**
 * One difference between design and effective settings, ready to be reported. Imports {@code vlan},
 * {@code setting} and {@code yaml} places only.
 */
package plumbline.finding;
