package plumbline.statement;

import java.util.Objects;

/**
 * What one statement says: immutable, without place, shared by all equal statements of a fleet.
 *
 * @param form sets, removes or restores the default
 * @param command what it names
 * @param quote the statement as reports may quote it: keywords as written, blanks single, secrets
 *     masked; of an unknown statement the first word only
 */
public record Meaning(Form form, Command command, String quote) {
  /** Refuses missing parts. */
  public Meaning {
    Objects.requireNonNull(form);
    Objects.requireNonNull(command);
    Objects.requireNonNull(quote);
  }
}
