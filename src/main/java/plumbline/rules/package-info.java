/**
 * The rule contract, one class per rule, and the catalogue. Imports {@code design}, {@code
 * effective}, {@code finding} and what lies below; a rule decides and knows neither files nor
 * reports nor other rules.
 */
package plumbline.rules;
