package plumbline.promise;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.RoleKeys.BundleWish;
import plumbline.effective.PortSettings;
import plumbline.effective.VlanDatabase;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Carried;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.TreeNumbers;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** One designed port with what rules find on it repaired. */
final class RepairedPort {
  private final DesignPort port;
  private final PortSettings found;
  private final VlanDatabase vlans;
  private final Predicate<String> repaired;
  private final boolean facesRoot;
  private final Map<Key<?>, Setting<?>> settings;

  /**
   * A port to repair.
   *
   * @param facesRoot whether a planned root is at the far end
   */
  RepairedPort(
      DesignPort port,
      PortSettings found,
      VlanDatabase vlans,
      Predicate<String> repaired,
      boolean facesRoot) {
    this.port = port;
    this.found = found;
    this.vlans = vlans;
    this.repaired = repaired;
    this.facesRoot = facesRoot;
    this.settings = new HashMap<>(found.settings());
  }

  /** A port of which no line says anything. */
  static PortSettings blank(PortName name, String fullName) {
    Map<Key<?>, Setting<?>> settings = new HashMap<>();
    Keys.ALL.forEach(key -> settings.put(key, Setting.absent()));
    settings.put(Keys.MODE, Setting.known(PortMode.ACCESS));
    settings.put(Keys.ACCESS_VLAN, Setting.known(new VlanId(1)));
    settings.put(Keys.NATIVE_VLAN, Setting.known(new VlanId(1)));
    settings.put(Keys.ALLOWED, Setting.known(VlanSet.ALL));
    settings.put(Keys.SHUT, Setting.known(false));
    settings.put(Keys.SUSPENDED, Setting.known(false));
    settings.put(Keys.NATIVE_TAGGING, Setting.known(false));
    settings.put(Keys.NEGOTIATE, Setting.known(false));
    settings.put(Keys.BPDU_FILTER, Setting.known(Effect.OFF));
    settings.put(Keys.FAST_START, Setting.known(Effect.OFF));
    settings.put(Keys.ASKS_FOR_TRUNK, Setting.absent());
    for (Key<TreeNumbers> key : List.of(Keys.COST_BY_TREE, Keys.PORT_PRIORITY_BY_TREE)) {
      settings.put(key, Setting.known(new TreeNumbers(List.of(), Setting.absent())));
    }
    return new PortSettings(
        name, fullName, new Evidence.Line(1, "interface " + fullName), settings, false, List.of());
  }

  /**
   * Its settings.
   *
   * @param bundle the number of the bundle that it is a member of by design
   */
  PortSettings settings(OptionalInt bundle) {
    if (repaired.test("port-shut")) {
      set(Keys.SHUT, false);
    }
    wishedMode().filter(any -> repaired.test("mode-differs")).ifPresent(this::mode);
    named(RoleKeys.ACCESS, Keys.ACCESS_VLAN, "access-vlan-differs");
    named(RoleKeys.NATIVE, Keys.NATIVE_VLAN, "native-vlan-differs");
    wish(RoleKeys.VOICE)
        .filter(any -> repaired.test("voice-vlan-differs"))
        .ifPresent(vlan -> set(Keys.VOICE_VLAN, VoiceVlan.tagged(vlan.id())));
    wish(RoleKeys.TAGGED).ifPresent(this::list);
    if (repaired.test("bpdu-filter-set")) {
      set(Keys.BPDU_FILTER, Effect.OFF);
    }
    if (facesRoot && repaired.test("guard-on-switch-link")) {
      set(Keys.ROOT_GUARD, Effect.OFF);
    }
    bundle(bundle);
    carried();
    return new PortSettings(
        port.port(),
        found.fullName(),
        found.header(),
        settings,
        found.hasSwitchingLine(),
        found.unknown());
  }

  private <T> Optional<T> wish(RoleKey<T> key) {
    return port.role().value(key);
  }

  private <T> void set(Key<T> key, T value) {
    settings.put(key, Setting.known(value));
  }

  @SuppressWarnings("unchecked") // each value is stored under its own key's type
  private <T> Setting<T> get(Key<T> key) {
    return (Setting<T>) settings.get(key);
  }

  private void named(RoleKey<DesignVlan> wish, Key<VlanId> key, String rule) {
    wish(wish).filter(any -> repaired.test(rule)).ifPresent(vlan -> set(key, vlan.id()));
  }

  /** The mode that the role names, or that a VLAN which it names gives. */
  private Optional<PortMode> wishedMode() {
    boolean access = wish(RoleKeys.ACCESS).isPresent() || wish(RoleKeys.VOICE).isPresent();
    boolean trunk = wish(RoleKeys.NATIVE).isPresent() || wish(RoleKeys.TAGGED).isPresent();
    return wish(RoleKeys.MODE)
        .or(
            () ->
                access == trunk
                    ? Optional.empty()
                    : Optional.of(access ? PortMode.ACCESS : PortMode.TRUNK));
  }

  private void mode(PortMode mode) {
    set(Keys.MODE, mode);
    if (!get(Keys.NEGOTIATE).isDecided() || get(Keys.NEGOTIATE).is(true)) {
      set(Keys.NEGOTIATE, wish(RoleKeys.NEGOTIATE).orElse(mode == PortMode.TRUNK));
    }
  }

  /** What the role wants stands in the list; what it may carry stays in it. */
  private void list(VlanSet tagged) {
    VlanSet found = get(Keys.ALLOWED).value().orElse(VlanSet.NONE);
    VlanSet bare =
        wish(RoleKeys.NATIVE)
            .filter(vlan -> !vlan.unused())
            .map(vlan -> VlanSet.of(vlan.id().number()))
            .orElse(VlanSet.NONE);
    VlanSet listed = repaired.test("tagged-vlan-missing") ? tagged.plus(bare) : VlanSet.NONE;
    VlanSet kept =
        repaired.test("tagged-vlan-extra")
            ? found.and(
                wish(RoleKeys.MAY_CARRY)
                    .orElse(VlanSet.NONE)
                    .plus(tagged)
                    .plus(VlanSet.RESERVED)
                    .plus(
                        get(Keys.NATIVE_VLAN)
                            .value()
                            .map(vlan -> VlanSet.of(vlan.number()))
                            .orElse(VlanSet.NONE)))
            : found;
    if (get(Keys.ALLOWED).isDecided() || repaired.test("tagged-vlan-missing")) {
      set(Keys.ALLOWED, listed.plus(kept));
    }
    // a VLAN that is to be tagged is no native VLAN any more
    boolean bareInstead = get(Keys.NATIVE_VLAN).value().filter(tagged::contains).isPresent();
    if (bareInstead && repaired.test("tagged-vlan-missing")) {
      settings.put(Keys.NATIVE_VLAN, Setting.absent());
    }
  }

  private void bundle(OptionalInt designed) {
    Optional<BundleWish> wish = wish(RoleKeys.BUNDLE);
    boolean heard =
        repaired.test("bundle-differs")
            || repaired.test("bundle-member-differs")
            || repaired.test("link-bundle-clash");
    if (heard) {
      set(Keys.SUSPENDED, false);
    }
    if (designed.isPresent() && heard) {
      Bundle.Mode mode =
          wish.filter(BundleWish.STATIC::equals).isPresent()
              ? Bundle.Mode.STATIC
              : Bundle.Mode.ACTIVE;
      set(Keys.BUNDLE, new Bundle(designed.getAsInt(), mode));
    } else if (wish.equals(Optional.of(BundleWish.NONE)) && repaired.test("bundle-differs")) {
      settings.put(Keys.BUNDLE, Setting.absent());
    }
    wish(RoleKeys.MIN_LINKS)
        .filter(any -> repaired.test("port-setting-differs"))
        .ifPresent(least -> set(Keys.MIN_LINKS, least));
  }

  /** Which VLANs cross it, by the settings that were repaired. */
  private void carried() {
    boolean open = get(Keys.SHUT).is(false) && !get(Keys.SUSPENDED).is(true);
    Setting<PortMode> mode = get(Keys.MODE);
    if (!open || mode.value().isEmpty()) {
      return;
    }
    switch (mode.value().get()) {
      case ROUTED -> set(Keys.CARRIED, Carried.exactly(VlanSet.NONE));
      case TRUNK -> set(Keys.CARRIED, trunk());
      case ACCESS -> set(Keys.CARRIED, access());
      case NEGOTIATED, OTHER -> {
        // the design does not say what it settles on: as found
      }
    }
  }

  private Carried trunk() {
    Optional<VlanSet> list = get(Keys.ALLOWED).value();
    VlanSet possible = list.orElse(VlanSet.ALL).and(vlans.perhapsActive());
    return new Carried(list.orElse(VlanSet.NONE).and(vlans.active()).and(possible), possible);
  }

  private Carried access() {
    VlanSet named =
        get(Keys.ACCESS_VLAN)
            .value()
            .map(vlan -> VlanSet.of(vlan.number()))
            .orElse(VlanSet.NONE)
            .plus(
                get(Keys.VOICE_VLAN)
                    .value()
                    .flatMap(VoiceVlan::vlan)
                    .map(vlan -> VlanSet.of(vlan.number()))
                    .orElse(VlanSet.NONE));
    boolean known = get(Keys.ACCESS_VLAN).isDecided() && get(Keys.VOICE_VLAN).isDecided();
    VlanSet possible = (known ? named : VlanSet.ALL).and(vlans.perhapsActive());
    return new Carried(named.and(vlans.active()).and(possible), possible);
  }
}
