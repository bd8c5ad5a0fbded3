/**
 * What a design says of the single settings of a port, and whether the port has them. Imports
 * {@code design}, {@code effective} and what lies below.
 */
package plumbline.wish;
