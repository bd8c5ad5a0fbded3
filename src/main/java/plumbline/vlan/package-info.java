/** VLAN identifiers and exact sets of them; imports nothing of the project. */
package plumbline.vlan;
