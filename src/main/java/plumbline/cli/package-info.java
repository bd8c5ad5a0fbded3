/**
 * The commands, their streams and exit statuses: the only place that knows picocli. Imports what it
 * starts.
 */
package plumbline.cli;
