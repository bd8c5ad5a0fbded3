package plumbline.statement;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import plumbline.setting.Evidence;

/**
 * The config text of one switch, cut into statements.
 *
 * @param file path as typed; {@code -} for standard input
 * @param stem the file's name without folder and extension: names the switch where no hostname does
 * @param firstLine first line of the file that belongs to this switch, 1-based
 * @param lastLine last such line
 * @param statements all of it, in order; every line from first to last is in exactly one
 * @param script true for a pasted script: an absent line is then not a default
 * @param truncation where the text breaks off, if it does
 * @param times what the header comments say of changes and saves
 */
public record SwitchText(
    String file,
    String stem,
    int firstLine,
    int lastLine,
    List<Statement> statements,
    boolean script,
    Optional<Truncation> truncation,
    Times times) {
  /** Copies the statements. */
  public SwitchText {
    Objects.requireNonNull(file);
    Objects.requireNonNull(stem);
    statements = List.copyOf(statements);
  }

  /**
   * The same text where statements that the grammar does not know, and that fit one of these
   * patterns, are taken to be without bearing on what this program computes.
   *
   * @param patterns as {@link plumbline.text.HiddenText#matches} has them
   */
  public SwitchText vouching(List<String> patterns) {
    return patterns.isEmpty()
        ? this
        : new SwitchText(
            file,
            stem,
            firstLine,
            lastLine,
            statements.stream().map(statement -> statement.vouching(patterns)).toList(),
            script,
            truncation,
            times);
  }

  /** The number of lines. */
  public int lines() {
    return lastLine - firstLine + 1;
  }

  /**
   * Where and why a text is taken to be cut short: everything from {@code line} on, and everything
   * absent, is undecided.
   *
   * @param line 1-based first line in doubt
   * @param why a clause, such as {@code no end line}
   */
  public record Truncation(int line, String why) {}

  /**
   * What the header comments say.
   *
   * @param changed last change of the running config
   * @param saved last save
   * @param taken when the text was taken
   */
  public record Times(Optional<Stamp> changed, Optional<Stamp> saved, Optional<Stamp> taken) {
    /** Nothing said. */
    public static final Times NONE =
        new Times(Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * A time that a header comment gives.
   *
   * @param line the comment up to its time; who changed or saved is left out
   * @param time as the switch's clock shows it; empty where it is in no known form
   * @param zone the zone's abbreviation in upper case; empty where the comment has none
   */
  public record Stamp(Evidence.Line line, Optional<LocalDateTime> time, String zone) {}
}
