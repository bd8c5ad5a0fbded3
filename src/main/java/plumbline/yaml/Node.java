package plumbline.yaml;

import java.util.List;
import java.util.Optional;

/** One value of a YAML or JSON text, with its place. */
public sealed interface Node {
  /** Where the value begins. */
  Position at();

  /**
   * What a scalar is, by the core schema of YAML 1.2, so that {@code no} and {@code on} are text.
   */
  enum Kind {
    /** Text, quoted or plain. */
    TEXT,
    /** A whole number in its one plain spelling. */
    INTEGER,
    /** A number with a fraction. */
    DECIMAL,
    /**
     * A plain number in a spelling that programs read differently, such as {@code 010}, {@code
     * 0x1F}, {@code 1_000} or {@code +5}.
     */
    ODD_NUMBER,
    /** {@code true} or {@code false}. */
    TRUTH,
    /** No value. */
    NOTHING
  }

  /**
   * A single value.
   *
   * @param kind what it is
   * @param text as written, without quotes and escapes
   * @param quoted whether its first character stands one column behind its place
   * @param at where it begins
   */
  record Scalar(Kind kind, String text, boolean quoted, Position at) implements Node {
    /**
     * The place of the character at an index of the text; exact as long as the text stands on one
     * line without escapes, which names and port names do.
     */
    public Position at(int index) {
      int before = text.codePointCount(0, index) + (quoted ? 1 : 0);
      return new Position(at.file(), at.line(), at.column() + before);
    }
  }

  /**
   * A list.
   *
   * @param items its values in order
   * @param at where it begins
   */
  record Items(List<Node> items, Position at) implements Node {
    /** Copies the list. */
    public Items {
      items = List.copyOf(items);
    }
  }

  /**
   * A map; a key given twice is kept once, the first time.
   *
   * @param entries its entries in order
   * @param at where it begins
   */
  record Entries(List<Entry> entries, Position at) implements Node {
    /** Copies the list. */
    public Entries {
      entries = List.copyOf(entries);
    }

    /** The entry under a key, if there is one. */
    public Optional<Entry> get(String key) {
      return entries.stream().filter(entry -> entry.key().equals(key)).findFirst();
    }
  }

  /**
   * A key and its value.
   *
   * @param key as written, without quotes
   * @param at where the key begins
   * @param value its value
   */
  record Entry(String key, Position at, Node value) {}
}
