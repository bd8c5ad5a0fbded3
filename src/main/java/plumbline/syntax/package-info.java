/**
 * Config text to statements: the only place with ANTLR; hides the generated code. Imports {@code
 * statement} and the shared vocabulary below it.
 */
package plumbline.syntax;
