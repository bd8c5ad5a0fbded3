/**
 * Runs kept in a folder, and what became of findings since the run before. Imports {@code result},
 * {@code finding} and what lies below; it knows no rule, no design and no config.
 */
package plumbline.history;
