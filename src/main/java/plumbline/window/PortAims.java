package plumbline.window;

import java.util.Map;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.Role;
import plumbline.design.RoleKeys;
import plumbline.effective.PortSettings;
import plumbline.port.PortName;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;
import plumbline.wish.Wish;

/** What a design says of the ports of one switch. */
final class PortAims {
  private final Design design;
  private final SwitchWindow window;

  PortAims(Design design, SwitchWindow window) {
    this.design = design;
    this.window = window;
  }

  /** The place that the design gives a port, if it gives one. */
  Optional<DesignPort> designed(PortName port) {
    return Optional.ofNullable(design.ports().getOrDefault(window.name(), Map.of()).get(port));
  }

  /** What it says of a point of a port. */
  Optional<Aim> of(Point point) {
    return designed(point.port().orElseThrow()).flatMap(port -> of(point, port));
  }

  private Optional<Aim> of(Point point, DesignPort port) {
    if (point.setting().equals(Point.PORT)) {
      return Optional.of(
          new Aim(
              "present",
              true,
              presence(point.before()),
              presence(point.after()),
              Optional.of(port.at())));
    }
    if (point.key().isEmpty()) {
      return Optional.empty();
    }
    Key<?> key = point.key().get();
    if (key.equals(Keys.SUSPENDED)) {
      return Optional.of(
          new Aim(
              "no", false, isNot(point.before()), isNot(point.after()), Optional.of(port.at())));
    }
    Optional<Wish> was = wish(key, port, window.before());
    Optional<Wish> is = wish(key, port, window.after());
    return is.or(() -> was)
        .map(
            wish ->
                new Aim(
                    wish.words(),
                    wish.value(),
                    was.map(Wish::same).orElse(Truth.NO),
                    is.map(Wish::same).orElse(Truth.NO),
                    Optional.of(wish.at())));
  }

  private static Optional<Wish> wish(Key<?> key, DesignPort port, Side side) {
    Optional<PortSettings> settings = side.settings().port(port.port());
    return settings.flatMap(there -> Wish.of(key, port, there));
  }

  private static Truth presence(Setting<?> setting) {
    return setting.isDecided() ? Truth.of(setting.value().isPresent()) : Truth.UNKNOWN;
  }

  private static Truth isNot(Setting<?> flag) {
    return flag.isDecided() ? Truth.of(!flag.value().equals(Optional.of(true))) : Truth.UNKNOWN;
  }

  /** The VLANs that a trunk must allow, if the design says. */
  Optional<VlanSet> tagged(PortName port) {
    return designed(port).flatMap(one -> one.role().value(RoleKeys.TAGGED));
  }

  /**
   * VLANs on a trunk of which the design does not mind whether they are allowed: its native VLAN is
   * one of them, the designed one where there is one.
   */
  VlanSet aside(PortName port) {
    Optional<Role> role = designed(port).map(DesignPort::role);
    VlanSet untagged =
        role.flatMap(one -> one.value(RoleKeys.NATIVE))
            .map(vlan -> VlanSet.of(vlan.id().number()))
            .orElseGet(() -> nativeOf(port, window.before()).plus(nativeOf(port, window.after())));
    return role.flatMap(one -> one.value(RoleKeys.MAY_CARRY))
        .orElse(VlanSet.NONE)
        .plus(VlanSet.RESERVED)
        .plus(untagged);
  }

  private static VlanSet nativeOf(PortName port, Side side) {
    return side.settings()
        .port(port)
        .flatMap(one -> one.get(Keys.NATIVE_VLAN).value())
        .map(vlan -> VlanSet.of(vlan.number()))
        .orElse(VlanSet.NONE);
  }
}
