/**
 * What the {@code settings} command shows: effective settings with their evidence, beside what a
 * design says of them. Imports {@code effective}, {@code design}, {@code text} and what lies below;
 * it judges nothing, that is what rules do.
 */
package plumbline.inspect;
