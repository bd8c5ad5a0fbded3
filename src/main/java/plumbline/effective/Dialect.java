package plumbline.effective;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.SwitchCommand.TreeMode;

/**
 * A table of the defaults that hold where a text says nothing (common practice, no source: each
 * vendor of IOS-style gear documents its own). Where the families of one dialect differ, the table
 * says so and the setting stays undecided.
 */
public enum Dialect {
  /** Access and distribution switches of the classic campus kind. */
  CAMPUS(
      "campus",
      new Defaults(
          PortMode.NEGOTIATED,
          true,
          new Shut(Truth.NO, Truth.NO, Truth.NO),
          false,
          false,
          Truth.NO,
          Optional.of(TreeMode.Mode.PVST),
          Optional.of(false),
          Optional.of(1500),
          true)),
  /** Data-centre switches: switched access ports, VLAN list always in the text. */
  DATA_CENTRE(
      "data-centre",
      new Defaults(
          PortMode.ACCESS,
          false,
          new Shut(Truth.NO, Truth.YES, Truth.YES),
          true,
          false,
          Truth.YES,
          Optional.of(TreeMode.Mode.RAPID_PVST),
          Optional.of(false),
          Optional.of(1500),
          false)),
  /** Data-centre switches whose ports carry one number, such as {@code Ethernet1}. */
  LEAF_SPINE(
      "leaf-spine",
      new Defaults(
          PortMode.ACCESS,
          false,
          new Shut(Truth.NO, Truth.NO, Truth.NO),
          true,
          true,
          Truth.NO,
          Optional.of(TreeMode.Mode.MST),
          Optional.of(true),
          Optional.empty(),
          false)),
  /** IOS-like switches that print port names as two words, or as numbers alone. */
  TWO_WORD(
      "two-word",
      new Defaults(
          PortMode.ACCESS,
          false,
          new Shut(Truth.UNKNOWN, Truth.UNKNOWN, Truth.NO),
          false,
          true,
          Truth.UNKNOWN,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          false));

  private final String word;

  @SuppressWarnings("ImmutableEnumChecker") // a record of constants, which the check cannot see
  private final Defaults defaults;

  Dialect(String word, Defaults defaults) {
    this.word = word;
    this.defaults = defaults;
  }

  /**
   * One row of the table.
   *
   * @param mode mode of a switched port without a mode line
   * @param negotiates whether a trunk sends negotiation frames unless told not to
   * @param shut whether ports are shut without a line
   * @param vlansInText whether the text always holds the whole VLAN list
   * @param edgeReachesTrunks whether fast-start without a trunk keyword works on trunks
   * @param routing whether the switch routes without an {@code ip routing} line
   * @param tree spanning-tree protocol without a line; empty where families differ
   * @param longCosts path-cost method without a line; empty where families differ
   * @param mtu frame payload without a line; empty where families differ
   * @param systemMtuSets whether a system MTU line sets the size of ports, or only their limit
   */
  record Defaults(
      PortMode mode,
      boolean negotiates,
      Shut shut,
      boolean vlansInText,
      boolean edgeReachesTrunks,
      Truth routing,
      Optional<TreeMode.Mode> tree,
      Optional<Boolean> longCosts,
      Optional<Integer> mtu,
      boolean systemMtuSets) {}

  /**
   * Whether ports are shut without a line.
   *
   * @param switched cabled ports and bundles that bridge
   * @param routed cabled ports and bundles that do not
   * @param vlan VLAN interfaces
   */
  record Shut(Truth switched, Truth routed, Truth vlan) {}

  /** The row of defaults. */
  Defaults defaults() {
    return defaults;
  }

  /**
   * Whether a dump prints all lines that hold for every port above its first port. Where families
   * differ it is taken not to.
   */
  boolean printsGlobalsFirst() {
    return this != TWO_WORD;
  }

  /** Whether lines outside ports can say that ports are switched or shut without a line. */
  boolean hasSystemDefaults() {
    return this != CAMPUS;
  }

  /** The word by which designs and reports name it. */
  public String word() {
    return word;
  }

  /** The mode of a switched port without a mode line. */
  public PortMode defaultMode() {
    return defaults.mode();
  }

  /** A value that this dialect's default decides, such as {@code campus: native VLAN 1}. */
  <T> Setting<T> fact(T value, String fact) {
    return Setting.known(value, because(fact));
  }

  /** Nothing set, by this dialect's default. */
  <T> Setting<T> nothing(String fact) {
    return Setting.absent(because(fact));
  }

  /** A default that differs between the families of this dialect, and so stays open. */
  <T> Setting<T> differs(String what) {
    return Setting.unknown("the default of " + what + " differs in the " + word + " dialect");
  }

  /** The name of one default as evidence. */
  Evidence because(String fact) {
    return new Evidence.Default(word + ": " + fact);
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
      case CAMPUS, LEAF_SPINE -> port.toString();
      case DATA_CENTRE ->
          port.kind() == PortKind.PORT_CHANNEL
              ? "port-channel" + port.numberText()
              : port.toString();
      case TWO_WORD ->
          (port.kind().fullName().toLowerCase(Locale.ROOT) + " " + port.numberText()).strip();
    };
  }

  @Override
  public String toString() {
    return word;
  }
}
