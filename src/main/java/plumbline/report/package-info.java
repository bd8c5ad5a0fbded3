/**
 * What a run comes to, as people and programs read it: one class for each format. Imports {@code
 * result}, {@code finding} and {@code text}, so that every format says the same and none computes.
 */
package plumbline.report;
