/**
 * What a design promises across switches: who reaches what, and what must survive which failure;
 * whether that holds now, and what takes it away. Imports {@code fabric} and what lies below.
 */
package plumbline.promise;
