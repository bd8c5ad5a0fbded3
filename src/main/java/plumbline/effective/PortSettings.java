package plumbline.effective;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import plumbline.port.PortName;
import plumbline.setting.Carried;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.TreeNumbers;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * The effective settings of one port.
 *
 * @param name canonical name
 * @param fullName the name as the switch's dialect prints it, such as {@code GigabitEthernet1/0/1}
 * @param header the line that first opens the port
 * @param settings a setting for each key of {@link plumbline.setting.Keys#ALL}
 * @param hasSwitchingLine whether any line says something about switching (mode, VLANs, bundle)
 * @param unknown statements inside the port that the grammar does not know, in order
 */
public record PortSettings(
    PortName name,
    String fullName,
    Evidence.Line header,
    Map<Key<?>, Setting<?>> settings,
    boolean hasSwitchingLine,
    List<UnknownLine> unknown) {
  /** Stands behind the fast-start setting of a network port. */
  static final Evidence NETWORK =
      new Evidence.Default("a port of type network blocks while it hears no BPDUs");

  /** Stands behind the trust of a port whose trust line has no effect. */
  public static final Evidence QOS_OFF =
      new Evidence.Default("QoS is off on this switch: a trust line has no effect");

  /** Copies the collections. */
  public PortSettings {
    settings = Map.copyOf(settings);
    unknown = List.copyOf(unknown);
  }

  /**
   * The setting under a key.
   *
   * @throws IllegalArgumentException if the key was not computed for this port
   */
  @SuppressWarnings("unchecked") // the computation stores each value under its own key's type
  public <T> Setting<T> get(Key<T> key) {
    Setting<?> setting = settings.get(key);
    if (setting == null) {
      throw new IllegalArgumentException("no setting " + key + " on " + fullName);
    }
    return (Setting<T>) setting;
  }

  /** The allowed list as it is if its base, which the text lacks, is the default. */
  public Optional<VlanSet> allowedFromDefault() {
    return settings.containsKey(Keys.ALLOWED_FROM_DEFAULT)
        ? get(Keys.ALLOWED_FROM_DEFAULT).value()
        : Optional.empty();
  }

  /** A number of the port in one tree, which the function picks. */
  public Setting<Long> inTree(Key<TreeNumbers> key, Function<TreeNumbers, Setting<Long>> tree) {
    return get(key).value().map(tree).orElseThrow();
  }

  /** Whether a line makes it a port of type network, which blocks while it hears no BPDUs. */
  public boolean isNetworkPort() {
    return get(Keys.FAST_START).evidence().contains(NETWORK);
  }

  /** Whether the port is a member of this bundle. */
  public boolean isMemberOf(PortName bundle) {
    return bundle.kind().isBundle()
        && !name.equals(bundle)
        && get(Keys.BUNDLE).value().filter(one -> one.id() == bundle.lastNumber()).isPresent();
  }

  /** Whether frames of the VLAN cross this port. */
  public Truth carries(VlanId vlan) {
    Setting<Carried> carried = get(Keys.CARRIED);
    if (carried.value().isEmpty()) {
      return carried.isDecided() ? Truth.NO : Truth.UNKNOWN;
    }
    if (carried.value().get().certain().contains(vlan)) {
      return Truth.YES;
    }
    return carried.value().get().possible().contains(vlan) ? Truth.UNKNOWN : Truth.NO;
  }

  /**
   * The VLAN of untagged frames; absent on a port that takes none: a routed port, a trunk that tags
   * its native VLAN, a trunk whose native VLAN is outside its allowed list. Whether that VLAN
   * exists and the port is open is {@link #carries(VlanId)}'s to say.
   */
  public Setting<VlanId> untagged() {
    Setting<PortMode> mode = get(Keys.MODE);
    return mode.value()
        .map(this::untaggedIn)
        .orElseGet(() -> new Setting.Unknown<>("the port's mode leaves it open", mode.evidence()));
  }

  /** The same in a mode that a negotiated port settles on. */
  public Setting<VlanId> untaggedIn(PortMode mode) {
    List<Evidence> evidence = get(Keys.MODE).evidence();
    return switch (mode) {
      case ACCESS -> get(Keys.ACCESS_VLAN);
      case TRUNK -> untaggedOnTrunk();
      case ROUTED -> new Setting.Absent<>(evidence);
      case NEGOTIATED, OTHER -> new Setting.Unknown<>("the port's mode leaves it open", evidence);
    };
  }

  private Setting<VlanId> untaggedOnTrunk() {
    Setting<VlanId> vlan = get(Keys.NATIVE_VLAN);
    Setting<Boolean> tagging = get(Keys.NATIVE_TAGGING);
    Setting<VlanSet> allowed = get(Keys.ALLOWED);
    if (tagging.is(true)) {
      return new Setting.Absent<>(tagging.evidence());
    }
    if (vlan.value().isEmpty()) {
      return vlan;
    }
    if (allowed.value().filter(list -> !list.contains(vlan.value().get())).isPresent()) {
      return new Setting.Absent<VlanId>(vlan.evidence()).because(allowed.evidence());
    }
    if (!tagging.isDecided()) {
      return tagging.map(tagged -> vlan.value().get());
    }
    return allowed.isDecided() ? vlan : allowed.map(list -> vlan.value().get());
  }
}
