package plumbline.statement;

import java.util.List;

/**
 * What a statement names, without its {@link Form}: immutable, without place, shared by all equal
 * statements of a fleet. An operand is optional where the {@code no} and {@code default} forms may
 * leave it out; in the {@link Form#SET} form it is present unless its description says otherwise.
 */
public sealed interface Command permits PortCommand, SwitchCommand, Command.Other {
  /** Commands that belong to no block in particular. */
  sealed interface Other extends Command {}

  /**
   * Known to the grammar and without any bearing on what this program computes.
   *
   * @param keyword its first keyword, in full
   */
  record Harmless(String keyword) implements Other {}

  /**
   * Not known to the grammar, or garbled.
   *
   * @param firstWord its first word as written, masked where it looks like a secret
   * @param understood the leading keywords that were recognised, in full, such as {@code
   *     [switchport, trunk]}: what they govern is in doubt. Empty for a statement of an unknown
   *     kind
   */
  record Unknown(String firstWord, List<String> understood) implements Other {
    /** Copies the keywords. */
    public Unknown {
      understood = List.copyOf(understood);
    }
  }

  /** Closes the open block ({@code exit}, {@code quit}). */
  record Exit() implements Other {}

  /** Ends the config ({@code end}). */
  record End() implements Other {}

  /**
   * Lines that are no statement: every line of a file belongs to exactly one of these or to a
   * statement.
   *
   * @param kind what they are
   */
  record Layout(Kind kind) implements Other {
    /** What such lines are. */
    public enum Kind {
      /** An empty line or blanks only. */
      BLANK,
      /** A comment. */
      COMMENT,
      /** A login banner with its delimiters. */
      BANNER,
      /** A certificate, key or other block of encoded data. */
      BLOB,
      /** Output of another command, prompts, pager marks, log lines. */
      NOISE
    }
  }
}
