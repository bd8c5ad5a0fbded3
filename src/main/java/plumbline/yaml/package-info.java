/**
 * YAML and JSON text as a tree in which every node knows its place. The only package with Jackson's
 * YAML parser and the engine under it. Imports {@code text} only.
 */
package plumbline.yaml;
