package plumbline.setting;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One effective setting: a value that is known, the knowledge that nothing is set, or the statement
 * that the text cannot tell; always with its evidence.
 *
 * @param <T> type of the value
 */
public sealed interface Setting<T> {
  /** What the setting rests on, in the order of the text. */
  List<Evidence> evidence();

  /** The value, if it is known and set. */
  default Optional<T> value() {
    return this instanceof Known<T> known ? Optional.of(known.known()) : Optional.empty();
  }

  /** Says whether the text decides this setting (a known absence is decided). */
  default boolean isDecided() {
    return !(this instanceof Unknown<T>);
  }

  /** Says whether the value is known and equals the given one. */
  default boolean is(T wanted) {
    return this instanceof Known<T> known && known.known().equals(wanted);
  }

  /** Why it cannot be told; empty when it is decided. */
  default Optional<String> reason() {
    return this instanceof Unknown<T> unknown ? Optional.of(unknown.why()) : Optional.empty();
  }

  /** The same setting with its value converted. */
  default <R> Setting<R> map(Function<? super T, ? extends R> conversion) {
    if (this instanceof Known<T> known) {
      return new Known<>(conversion.apply(known.known()), known.evidence());
    }
    if (this instanceof Unknown<T> unknown) {
      return new Unknown<>(unknown.why(), unknown.evidence());
    }
    return new Absent<>(evidence());
  }

  /** The same setting with further evidence behind its own. */
  default Setting<T> because(List<Evidence> further) {
    List<Evidence> all = Evidence.joined(evidence(), further);
    if (this instanceof Known<T> known) {
      return new Known<>(known.known(), all);
    }
    if (this instanceof Unknown<T> unknown) {
      return new Unknown<>(unknown.why(), all);
    }
    return new Absent<>(all);
  }

  /** A known value. */
  static <T> Setting<T> known(T value, Evidence... evidence) {
    return new Known<>(value, List.of(evidence));
  }

  /** Known not to be set. */
  static <T> Setting<T> absent(Evidence... evidence) {
    return new Absent<>(List.of(evidence));
  }

  /**
   * Not decided by the text.
   *
   * @param why a clause for the reader, such as {@code the text is a script}
   */
  static <T> Setting<T> unknown(String why, Evidence... evidence) {
    return new Unknown<>(why, List.of(evidence));
  }

  /**
   * A known value.
   *
   * @param known the value
   * @param evidence what it rests on
   */
  record Known<T>(T known, List<Evidence> evidence) implements Setting<T> {
    /** Copies the evidence. */
    public Known {
      evidence = List.copyOf(evidence);
    }
  }

  /**
   * Known not to be set.
   *
   * @param evidence what that rests on
   */
  record Absent<T>(List<Evidence> evidence) implements Setting<T> {
    /** Copies the evidence. */
    public Absent {
      evidence = List.copyOf(evidence);
    }
  }

  /**
   * Not decided by the text.
   *
   * @param why a clause for the reader
   * @param evidence the lines that leave it open
   */
  record Unknown<T>(String why, List<Evidence> evidence) implements Setting<T> {
    /** Copies the evidence. */
    public Unknown {
      evidence = List.copyOf(evidence);
    }
  }
}
