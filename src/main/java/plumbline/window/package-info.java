/**
 * Two texts of each switch, before and after a change window: which effective settings changed, how
 * that stands to the plan, and what became of the findings. Imports {@code wish}, {@code design},
 * {@code effective}, {@code result} and what lies below.
 */
package plumbline.window;
