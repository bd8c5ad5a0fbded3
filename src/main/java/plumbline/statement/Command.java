package plumbline.statement;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import plumbline.text.HiddenText;

/**
 * What a statement names, without its {@link Form}: immutable, without place, shared by all equal
 * statements of a fleet. An operand is optional where the {@code no} and {@code default} forms may
 * leave it out; in the {@link Form#SET} form it is present unless its description says otherwise.
 */
public sealed interface Command permits PortCommand, SwitchCommand, Command.Other {
  /** Commands that belong to no block in particular. */
  sealed interface Other extends Command {}

  /**
   * Without any bearing on what this program computes, as the grammar knows or the design says.
   *
   * @param keyword its first keyword, in full; its first word as written where the design says so
   */
  record Harmless(String keyword) implements Other {}

  /**
   * Not known to the grammar, or garbled.
   *
   * @param firstWord its first word as written, masked where it looks like a secret
   * @param understood the leading keywords that were recognised, in full, such as {@code
   *     [switchport, trunk]}: what they govern is in doubt. Empty for a statement of an unknown
   *     kind
   * @param candidates the keywords, in full and sorted, of which the word behind those is an
   *     abbreviation: at least two, or none where the word abbreviates nothing
   * @param text the whole statement, which may hold a secret
   */
  record Unknown(
      String firstWord, List<String> understood, List<String> candidates, HiddenText text)
      implements Other {
    /** Copies the keywords. */
    public Unknown {
      understood = List.copyOf(understood);
      candidates = List.copyOf(candidates);
      Objects.requireNonNull(text);
    }

    /** A statement of which nothing more is known. */
    public Unknown(String firstWord, List<String> understood) {
      this(firstWord, understood, List.of(), HiddenText.NONE);
    }

    /**
     * The beginnings that the statement may have been meant to have: what was understood, then the
     * same with each candidate behind it. What any of them governs is in doubt.
     */
    public List<List<String>> variants() {
      List<List<String>> variants = new ArrayList<>();
      variants.add(understood);
      for (String candidate : candidates) {
        List<String> variant = new ArrayList<>(understood);
        variant.add(candidate);
        variants.add(List.copyOf(variant));
      }
      return List.copyOf(variants);
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
