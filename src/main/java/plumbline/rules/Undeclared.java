package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.effective.PortSettings;
import plumbline.finding.Place;
import plumbline.port.PortName;
import plumbline.setting.Keys;

/**
 * A port of the switch that has no place in the design.
 *
 * @param settings what the config says of it
 * @param others the members that go without saying, since this port stands for all of its bundle
 */
record Undeclared(PortSettings settings, List<PortSettings> others) {
  /** Copies the list. */
  Undeclared {
    others = List.copyOf(others);
  }

  /** Whether it is shut for certain, as every member of a shut bundle is. */
  private boolean isShut() {
    boolean membersShut =
        settings.name().kind().isBundle()
            && !others.isEmpty()
            && others.stream().allMatch(member -> member.get(Keys.SHUT).is(true));
    return membersShut || settings.get(Keys.SHUT).is(true);
  }

  /** The port, with nothing known behind it. */
  Subject subject(SwitchCase device) {
    return Subject.ofPort(device.designed().name(), settings.fullName(), settings.name(), "");
  }

  /** The places of the members that it stands for. */
  List<Place> places(SwitchCase device) {
    return others.stream()
        .map(member -> Place.ofPort(device.designed().name(), member.fullName()))
        .toList();
  }

  /**
   * The ports of the switch that are not shut for certain and have no place in the design, in the
   * order of their names. A bundle is one of them together with its members; a bundle with a member
   * that has a place is the business of that member.
   */
  static List<Undeclared> on(SwitchCase device) {
    Set<PortName> placed =
        Stream.concat(
                device.design().portsOf(device.designed().name()).stream().map(DesignPort::port),
                device.design().multiChassis().stream()
                    .filter(
                        pair ->
                            pair.first().equals(device.designed().name())
                                || pair.second().equals(device.designed().name()))
                    .map(pair -> pair.peerLink()))
            .collect(Collectors.toUnmodifiableSet());
    List<Undeclared> found = new ArrayList<>();
    for (PortSettings port : device.settings().ports().values()) {
      PortName name = port.name();
      boolean cabled = name.kind().isPhysical() || name.kind().isBundle();
      if (cabled && name.sub().isEmpty() && !placed.contains(name)) {
        Stream.of(port)
            .map(one -> withBundle(device, one))
            .filter(one -> !isPlaced(one, placed))
            .filter(one -> one.settings().equals(port) && !one.isShut())
            .forEach(found::add);
      }
    }
    return found;
  }

  /** The port, or the one that stands for the bundle which it joins. */
  private static Undeclared withBundle(SwitchCase device, PortSettings port) {
    if (port.name().kind().isBundle()) {
      return new Undeclared(port, device.settings().membersOf(port.name()));
    }
    return port.get(Keys.BUNDLE)
        .value()
        .map(
            bundle -> {
              List<PortSettings> all =
                  device.settings().ports().values().stream()
                      .filter(one -> !one.name().kind().isBundle())
                      .filter(
                          one ->
                              one.get(Keys.BUNDLE)
                                  .value()
                                  .filter(its -> its.id() == bundle.id())
                                  .isPresent())
                      .toList();
              PortSettings first =
                  device.settings().ports().values().stream()
                      .filter(one -> one.name().kind().isBundle())
                      .filter(one -> one.name().lastNumber() == bundle.id())
                      .findFirst()
                      .or(
                          () ->
                              all.stream().filter(one -> !one.get(Keys.SHUT).is(true)).findFirst())
                      .orElse(port);
              return new Undeclared(first, all.stream().filter(one -> !one.equals(first)).toList());
            })
        .orElseGet(() -> new Undeclared(port, List.of()));
  }

  private static boolean isPlaced(Undeclared port, Set<PortName> placed) {
    boolean bundlePlaced =
        placed.stream()
            .filter(name -> name.kind().isBundle())
            .anyMatch(name -> port.settings().isMemberOf(name));
    return bundlePlaced
        || placed.contains(port.settings().name())
        || port.others().stream().anyMatch(member -> placed.contains(member.name()));
  }
}
