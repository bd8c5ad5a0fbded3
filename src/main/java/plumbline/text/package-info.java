/** Words for messages; imports nothing of the project. */
package plumbline.text;
