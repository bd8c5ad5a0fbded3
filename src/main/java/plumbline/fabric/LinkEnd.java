package plumbline.fabric;

import java.util.List;
import java.util.Optional;
import plumbline.design.DesignPort;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.effective.VlanDatabase;
import plumbline.setting.Bundle;
import plumbline.setting.Carried;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/**
 * One end of a link of the design.
 *
 * @param port the port in the design
 * @param device the switch's settings; empty where its config was not read
 * @param settings the port's; for a bundle without a stanza those of its first member, whose lines
 *     count in its place; empty where the text does not open it
 * @param shared whether another link of the design ends on it too, as on a bundle that ends on both
 *     switches of a multi-chassis pair
 */
public record LinkEnd(
    DesignPort port,
    Optional<SwitchSettings> device,
    Optional<PortSettings> settings,
    boolean shared) {
  /** The end that a switch's settings give. */
  static LinkEnd of(DesignPort port, Optional<SwitchSettings> device, boolean shared) {
    return new LinkEnd(
        port,
        device,
        device.flatMap(
            known ->
                known
                    .port(port.port())
                    .or(() -> known.membersOf(port.port()).stream().findFirst())),
        shared);
  }

  /** How the end goes about trunking; empty where the text leaves it open, or it is routed. */
  public Optional<Trunking> trunking() {
    Optional<PortMode> mode = settings.flatMap(open -> open.get(Keys.MODE).value());
    if (mode.isEmpty()) {
      return Optional.empty();
    }
    return switch (mode.get()) {
      case ACCESS -> Optional.of(Trunking.ACCESS);
      case TRUNK -> when(open().get(Keys.NEGOTIATE), Trunking.TRUNK, Trunking.SILENT_TRUNK);
      case NEGOTIATED -> when(open().get(Keys.ASKS_FOR_TRUNK), Trunking.ASKS, Trunking.ANSWERS);
      case ROUTED, OTHER -> Optional.empty();
    };
  }

  private static Optional<Trunking> when(Setting<Boolean> flag, Trunking yes, Trunking no) {
    return flag.value().map(set -> set ? yes : no);
  }

  /** The mode that the end settles on with the far end; empty where that is open. */
  public Optional<PortMode> modeWith(LinkEnd far) {
    Optional<PortMode> own = settings.flatMap(open -> open.get(Keys.MODE).value());
    if (own.filter(PortMode.NEGOTIATED::equals).isEmpty()) {
      return own;
    }
    return far.trunking().flatMap(other -> trunking().map(one -> one.towards(Optional.of(other))));
  }

  /** What passes this end of the link when it settles with the far one. */
  Traffic trafficWith(LinkEnd far) {
    if (device.isEmpty() || (settings.isEmpty() && mayBeThere())) {
      return Traffic.UNKNOWN;
    }
    if (settings.isEmpty()) {
      return Traffic.of(Carried.exactly(VlanSet.NONE), Setting.absent());
    }
    Optional<PortMode> mode = modeWith(far);
    boolean negotiated = open().get(Keys.MODE).is(PortMode.NEGOTIATED);
    Carried carried = carried(open().get(Keys.CARRIED));
    if (!negotiated || mode.isEmpty()) {
      return Traffic.of(carried, open().untagged());
    }
    return Traffic.of(
        settled(carried, mode.get(), device.get().vlans()), open().untaggedIn(mode.get()));
  }

  private boolean mayBeThere() {
    return device.get().isPortAbsent(port.port()) != Truth.YES;
  }

  private PortSettings open() {
    return settings.orElseThrow();
  }

  private static Carried carried(Setting<Carried> setting) {
    return setting
        .value()
        .orElse(
            setting.isDecided()
                ? Carried.exactly(VlanSet.NONE)
                : new Carried(VlanSet.NONE, VlanSet.ALL));
  }

  /** What a negotiated port carries in the mode that it settles on. */
  private Carried settled(Carried either, PortMode mode, VlanDatabase vlans) {
    Optional<VlanSet> wanted =
        mode == PortMode.TRUNK
            ? open().get(Keys.ALLOWED).value()
            : open().get(Keys.ACCESS_VLAN).value().map(vlan -> VlanSet.of(vlan.number()));
    VlanSet possible = wanted.map(either.possible()::and).orElse(either.possible());
    boolean up = isOpen() == Truth.YES && !port.port().kind().isBundle();
    return new Carried(
        up ? wanted.map(vlans.active()::and).orElse(VlanSet.NONE).and(possible) : VlanSet.NONE,
        possible);
  }

  /** Whether frames of spanning tree pass this end, whatever VLANs it carries. */
  Truth isOpen() {
    if (settings.isEmpty()) {
      return device.isPresent() && !mayBeThere() ? Truth.NO : Truth.UNKNOWN;
    }
    Setting<PortMode> mode = open().get(Keys.MODE);
    Truth switched = mode.isDecided() ? Truth.of(!mode.is(PortMode.ROUTED)) : Truth.UNKNOWN;
    return switched.and(isNot(Keys.SHUT)).and(isNot(Keys.SUSPENDED));
  }

  private Truth isNot(Key<Boolean> key) {
    Setting<Boolean> setting = open().get(key);
    return setting.isDecided() ? Truth.of(!setting.is(true)) : Truth.UNKNOWN;
  }

  /** The bundle modes of the members on this switch, where the text tells them. */
  List<Bundle> memberships() {
    return device.stream()
        .flatMap(known -> known.membersOf(port.port()).stream())
        .flatMap(member -> member.get(Keys.BUNDLE).value().stream())
        .toList();
  }
}
