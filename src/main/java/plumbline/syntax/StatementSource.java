package plumbline.syntax;

import plumbline.statement.Context;
import plumbline.statement.Meaning;

/** What the cutter asks of the grammar: the meaning of one statement, and a quick filter. */
interface StatementSource {
  /**
   * Reads one statement, free of prompts and line ends; never throws. What the grammar does not
   * know is {@link plumbline.statement.Command.Unknown}.
   */
  Meaning read(Context context, String text);

  /** Says whether a keyword of a statement is not written in full. */
  boolean isAbbreviated(Context context, String text);

  /** The statement with its keywords in full where the grammar takes it, else as it is. */
  String inFull(Context context, String text);

  /** Says whether any statement of the context can begin with a word, abbreviations included. */
  boolean mayStart(Context context, String firstWord);
}
