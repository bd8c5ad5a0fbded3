/** Helpers for text that every package may use; imports nothing of the project. */
package plumbline.text;
