/** Canonical names of switch ports, however they are spelled; imports nothing of the project. */
package plumbline.port;
