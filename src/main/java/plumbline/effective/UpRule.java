package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import plumbline.port.PortName;
import plumbline.setting.Carried;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/**
 * Decides what each port carries once it is known which ports are up: not shut, not suspended, and
 * a bundle only while enough of its members are. Nothing else that a port's own settings do is
 * certain to disable it.
 */
final class UpRule {
  /** More members than any bundle has: of a text with more, those suffice as evidence. */
  private static final int MAX_SHOWN = 32;

  private final SortedMap<PortName, PortDraft> ports;
  private final Map<PortName, List<PortDraft>> members;

  /** Ports that may be members of any bundle, for all that the text says. */
  private final List<PortDraft> perhapsMembers;

  private final long openOthers;

  private final CarriedRule carried;
  private final Optional<String> incomplete;

  /**
   * Prepares the rule.
   *
   * @param incomplete why the text may lack members of a bundle; empty where it cannot
   */
  UpRule(SortedMap<PortName, PortDraft> ports, CarriedRule carried, Optional<String> incomplete) {
    this.ports = ports;
    this.members = BundleRule.members(ports);
    this.perhapsMembers =
        ports.values().stream().filter(port -> !port.get(Keys.BUNDLE).isDecided()).toList();
    this.openOthers = perhapsMembers.stream().filter(port -> up(port).truth() != Truth.NO).count();
    this.carried = carried;
    this.incomplete = incomplete;
  }

  /** Puts the VLANs that every port carries; needs all other settings. */
  void apply() {
    for (PortDraft port : ports.values()) {
      if (BundleRule.bundleOf(port, ports).isEmpty()) {
        port.put(Keys.CARRIED, byItself(port));
      }
    }
    for (PortDraft port : ports.values()) {
      BundleRule.bundleOf(port, ports)
          .ifPresent(bundle -> port.put(Keys.CARRIED, asMember(port, bundle)));
    }
  }

  private Setting<Carried> byItself(PortDraft port) {
    Up own = up(port);
    return port.name().kind().isBundle() && port.name().sub().isEmpty()
        ? result(port, own.and(members(port)))
        : result(port, own);
  }

  private Setting<Carried> result(PortDraft port, Up up) {
    Setting<Carried> setting = carried.carried(port, up.truth(), up.evidence());
    return up.truth() == Truth.UNKNOWN ? setting.because(up.evidence()) : setting;
  }

  /** A member carries what its bundle carries. */
  private Setting<Carried> asMember(PortDraft member, PortDraft bundle) {
    Up up = up(member);
    Setting<Carried> whole = bundle.get(Keys.CARRIED);
    return switch (up.truth()) {
      case NO -> new Setting.Known<>(Carried.exactly(VlanSet.NONE), up.evidence());
      case YES -> whole.because(member.get(Keys.BUNDLE).evidence());
      case UNKNOWN ->
          whole.map(all -> new Carried(VlanSet.NONE, all.possible())).because(up.evidence());
    };
  }

  private Up members(PortDraft bundle) {
    int certain = 0;
    int possible = 0;
    int shown = 0;
    List<Evidence> evidence = new ArrayList<>();
    for (PortDraft port : members.getOrDefault(bundle.name(), List.of())) {
      Up up = up(port);
      certain += up.truth() == Truth.YES ? 1 : 0;
      possible += up.truth() == Truth.NO ? 0 : 1;
      if (shown++ < MAX_SHOWN) {
        evidence.addAll(up.evidence());
      }
    }
    possible += (int) openOthers;
    // One line that leaves the membership open is reason enough.
    perhapsMembers.stream()
        .map(port -> port.get(Keys.BUNDLE).evidence())
        .filter(lines -> !lines.isEmpty())
        .findFirst()
        .ifPresent(evidence::addAll);
    Setting<Integer> least = bundle.get(Keys.MIN_LINKS);
    evidence.addAll(least.evidence());
    int needed = Math.max(1, least.value().orElse(1));
    if (certain >= needed && least.isDecided()) {
      return new Up(Truth.YES, List.of());
    }
    if (possible < needed && incomplete.isEmpty()) {
      evidence.add(
          new Evidence.Default(
              possible == 0 ? "no member of the bundle is up" : "too few members are up"));
      return new Up(Truth.NO, evidence);
    }
    return new Up(Truth.UNKNOWN, evidence);
  }

  private static Up up(PortDraft port) {
    return open(port.get(Keys.SHUT)).and(open(port.get(Keys.SUSPENDED)));
  }

  /** Whether a shut or suspended setting leaves the port open. */
  private static Up open(Setting<Boolean> closed) {
    Truth truth = closed.value().map(yes -> Truth.of(!yes)).orElse(Truth.UNKNOWN);
    return new Up(truth, truth == Truth.YES ? List.of() : closed.evidence());
  }

  /**
   * Whether a port is up.
   *
   * @param truth whether
   * @param evidence what speaks against it
   */
  private record Up(Truth truth, List<Evidence> evidence) {
    Up {
      evidence = List.copyOf(evidence);
    }

    Up and(Up other) {
      if (truth == Truth.NO) {
        return this;
      }
      if (other.truth == Truth.NO) {
        return other;
      }
      return new Up(truth.and(other.truth), Evidence.joined(evidence, other.evidence));
    }
  }
}
