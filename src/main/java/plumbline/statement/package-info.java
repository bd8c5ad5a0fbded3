/**
 * What statements of a config mean, free of how they were spelled or parsed. Imports {@code port},
 * {@code setting} and {@code vlan}; knows no parser, so that effective settings know none either.
 */
package plumbline.statement;
