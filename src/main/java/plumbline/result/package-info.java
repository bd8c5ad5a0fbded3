/**
 * What a run comes to: its inputs, its verdict and its findings. Imports {@code finding} and what
 * lies below it.
 */
package plumbline.result;
