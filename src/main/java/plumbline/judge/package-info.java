/**
 * From outcomes to findings: one cause, one finding. Imports {@code rules}, {@code finding} and
 * what lies below; it is the only place that knows which rule speaks before which.
 */
package plumbline.judge;
