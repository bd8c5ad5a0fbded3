/** YAML and JSON text as a tree in which every node knows its place. Imports {@code text} only. */
package plumbline.yaml;
