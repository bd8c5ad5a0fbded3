package plumbline.finding;

import java.util.Optional;
import plumbline.setting.Evidence;

/**
 * Evidence and the file it is from.
 *
 * @param file the config file as typed; empty for a default
 * @param evidence a line of it, or a default
 */
public record Proof(Optional<String> file, Evidence evidence) {
  /** Evidence found in a file; a default keeps no file. */
  public static Proof of(String file, Evidence evidence) {
    return new Proof(
        evidence instanceof Evidence.Line ? Optional.of(file) : Optional.empty(), evidence);
  }
}
