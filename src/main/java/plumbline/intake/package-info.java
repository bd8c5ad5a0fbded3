/**
 * Files as they come: finding them, caps, encodings, hashes. Imports nothing of the project but
 * {@code text}.
 */
package plumbline.intake;
