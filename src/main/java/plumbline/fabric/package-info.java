/**
 * The switched network as a whole: spanning trees, what stays connected, what one failure takes.
 * Answers neutral questions and knows no rule and no text; it may import {@code design}, {@code
 * effective} and what lies below them.
 */
package plumbline.fabric;
