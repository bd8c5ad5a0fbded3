package plumbline.setting;

import java.util.Objects;

/** What a value rests on: a line of the config, or the named default that applies. */
public sealed interface Evidence {
  /**
   * A line of the switch's config text.
   *
   * @param line 1-based line number
   * @param text the statement as it may be quoted, secrets masked
   */
  record Line(int line, String text) implements Evidence {
    /** Refuses a line before the first. */
    public Line {
      if (line < 1) {
        throw new IllegalArgumentException("line " + line + " is before the first");
      }
      Objects.requireNonNull(text);
    }
  }

  /**
   * A default that applies because no line says otherwise.
   *
   * @param name which one and why, such as {@code campus: native VLAN 1}
   */
  record Default(String name) implements Evidence {
    /** Refuses a nameless default. */
    public Default {
      Objects.requireNonNull(name);
    }
  }
}
