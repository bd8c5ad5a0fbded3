package plumbline.setting;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** What a value rests on: a line of the config, or the named default that applies. */
public sealed interface Evidence {
  /** The evidence, and behind it what is not yet in it of the further evidence, each once. */
  static List<Evidence> joined(List<Evidence> evidence, List<Evidence> further) {
    if (further.isEmpty()) {
      return evidence;
    }
    List<Evidence> all = new ArrayList<>(evidence);
    Set<Evidence> seen = new HashSet<>(evidence);
    further.stream().filter(seen::add).forEach(all::add);
    return all;
  }

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
