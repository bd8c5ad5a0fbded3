package plumbline.effective;

import java.util.List;
import java.util.Optional;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.PortMode;

/**
 * A table of the defaults that hold where a text says nothing (common practice, no source: each
 * vendor of IOS-style gear documents its own).
 */
public enum Dialect {
  /** Access and distribution switches of the classic campus kind. */
  CAMPUS("campus", PortMode.NEGOTIATED),
  /** Data-centre switches: switched access ports, VLAN list always in the text. */
  DATA_CENTRE("data-centre", PortMode.ACCESS),
  /** IOS-like switches that print port names as two words, or as numbers alone. */
  TWO_WORD("two-word", PortMode.ACCESS);

  private final String word;
  private final PortMode defaultMode;

  Dialect(String word, PortMode defaultMode) {
    this.word = word;
    this.defaultMode = defaultMode;
  }

  /** The word by which designs and reports name it. */
  public String word() {
    return word;
  }

  /** The mode of a switched port without a mode line. */
  public PortMode defaultMode() {
    return defaultMode;
  }

  /** The dialect of that name, if there is one. */
  public static Optional<Dialect> named(String word) {
    return List.of(values()).stream().filter(dialect -> dialect.word.equals(word)).findFirst();
  }

  /** The names of all dialects, sorted. */
  public static List<String> words() {
    return List.of(values()).stream().map(Dialect::word).sorted().toList();
  }

  /** A port's name as this dialect prints it in full. */
  public String print(PortName port) {
    return switch (this) {
      case CAMPUS -> port.toString();
      case DATA_CENTRE ->
          port.kind() == PortKind.PORT_CHANNEL
              ? "port-channel" + port.numberText()
              : port.toString();
      case TWO_WORD ->
          (port.kind().fullName().toLowerCase(java.util.Locale.ROOT) + " " + port.numberText())
              .strip();
    };
  }

  @Override
  public String toString() {
    return word;
  }
}
