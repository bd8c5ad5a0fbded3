/**
 * Config text into statements: lines, blocks and the grammar that reads each statement. The only
 * place that knows ANTLR; imports {@code statement} and what lies below it.
 */
package plumbline.syntax;
