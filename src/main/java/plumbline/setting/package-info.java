/**
 * What a setting is: its key, its value or the lack of one, and the evidence for it. Imports {@code
 * vlan} only.
 */
package plumbline.setting;
