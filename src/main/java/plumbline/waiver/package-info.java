/**
 * Accepted differences: the file that lists them, what they cover of the findings of a run, and a
 * file of them to fill in. Imports {@code rules}, {@code result}, {@code finding}, {@code yaml} and
 * what lies below; it reads no file itself.
 */
package plumbline.waiver;
