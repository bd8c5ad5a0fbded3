/**
 * The audit as a pure function: a design and effective settings in, findings out. Imports {@code
 * judge}, {@code rules}, {@code design}, {@code effective} and what lies below.
 */
package plumbline.audit;
