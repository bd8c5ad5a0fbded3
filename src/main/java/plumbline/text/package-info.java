/** Words, widths and lines of text as people read them; imports nothing of the project. */
package plumbline.text;
