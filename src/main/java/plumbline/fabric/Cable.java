package plumbline.fabric;

import java.util.List;
import java.util.Optional;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;

/**
 * One cable of a link: the link itself, or a member of its bundle.
 *
 * @param first port at the first end
 * @param second port at the second end
 * @param up whether frames pass it, as far as both configs say
 */
public record Cable(PortName first, PortName second, Truth up) {
  /** A cable of a bundle: both ends must be open members, in modes that form a bundle. */
  static Cable inBundle(PortName first, PortName second, LinkEnd one, LinkEnd other) {
    Truth up = member(first, one).and(member(second, other)).and(forms(first, second, one, other));
    return new Cable(first, second, up);
  }

  /** The cable of a link without bundle: whether a port is open is part of what it carries. */
  static Cable alone(PortName first, PortName second) {
    return new Cable(first, second, Truth.YES);
  }

  private static Truth member(PortName name, LinkEnd end) {
    if (end.device().isEmpty()) {
      return Truth.UNKNOWN;
    }
    SwitchSettings device = end.device().get();
    Optional<PortSettings> port = device.port(name);
    if (port.isEmpty()) {
      return device.isPortAbsent(name) == Truth.YES ? Truth.NO : Truth.UNKNOWN;
    }
    Setting<Bundle> membership = port.get().get(Keys.BUNDLE);
    int id = end.port().port().lastNumber();
    Truth joins =
        membership.isDecided()
            ? Truth.of(membership.value().filter(bundle -> bundle.id() == id).isPresent())
            : Truth.UNKNOWN;
    return joins.and(isFalse(port.get(), Keys.SHUT)).and(isFalse(port.get(), Keys.SUSPENDED));
  }

  private static Truth isFalse(PortSettings port, Key<Boolean> key) {
    Setting<Boolean> setting = port.get(key);
    return setting.isDecided() ? Truth.of(!setting.is(true)) : Truth.UNKNOWN;
  }

  private static Truth forms(PortName first, PortName second, LinkEnd one, LinkEnd other) {
    List<Bundle> ends =
        List.of(bundle(first, one), bundle(second, other)).stream()
            .flatMap(Optional::stream)
            .toList();
    return ends.size() < 2
        ? Truth.UNKNOWN
        : Truth.of(Bundling.forms(ends.get(0).mode(), ends.get(1).mode()));
  }

  private static Optional<Bundle> bundle(PortName name, LinkEnd end) {
    return end.device()
        .flatMap(device -> device.port(name))
        .flatMap(port -> port.get(Keys.BUNDLE).value());
  }
}
