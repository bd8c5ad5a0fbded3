package plumbline.effective;

import plumbline.statement.SwitchText;

/** The clauses that say why a text leaves something open, worded once. */
final class SwitchTexts {
  /** A pasted script. */
  static final String SCRIPT = "the text is a script, in which an absent line is no default";

  private SwitchTexts() {}

  /** A text that is cut short. */
  static String breaksOff(SwitchText.Truncation cut) {
    return "the text breaks off at line " + cut.line() + " (" + cut.why() + ")";
  }
}
