package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.DesignVlan;
import plumbline.effective.Gateway.Group;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.PortCommand.Redundancy;

/**
 * Two gateways of one VLAN held against each other. Who hears whom: a VRRP router drops what is of
 * another version or group (RFC 5798, section 7.1); of the proprietary protocols that is common
 * practice, no source.
 */
final class GatewayPair {
  private final GatewaySide first;
  private final GatewaySide second;
  private final List<PairGap> gaps = new ArrayList<>();

  private GatewayPair(GatewaySide first, GatewaySide second) {
    this.first = first;
    this.second = second;
  }

  /**
   * In what their groups differ, as far as their texts decide it.
   *
   * @param first the first in design order
   */
  static List<PairGap> gaps(GatewaySide first, GatewaySide second) {
    GatewayPair pair = new GatewayPair(first, second);
    pair.groups();
    return List.copyOf(pair.gaps);
  }

  private void groups() {
    List<Group> here = first.gateway().groups();
    List<Group> there = second.gateway().groups();
    List<Group> onlyHere = here.stream().filter(one -> second.twin(one).isEmpty()).toList();
    List<Group> onlyThere = there.stream().filter(one -> first.twin(one).isEmpty()).toList();
    if (!onlyHere.isEmpty() && !onlyThere.isEmpty()) {
      strangers(onlyHere, onlyThere);
    } else if (!onlyHere.isEmpty()) {
      alone(PairGap.End.SECOND, first, second, onlyHere);
    } else if (!onlyThere.isEmpty()) {
      alone(PairGap.End.FIRST, second, first, onlyThere);
    } else if (here.isEmpty()) {
      none();
    }
    for (Group one : here) {
      second.twin(one).ifPresent(other -> twins(one, other));
    }
  }

  /** Groups that do not hear each other. */
  private void strangers(List<Group> here, List<Group> there) {
    gaps.add(
        new PairGap(
            PairGap.End.NEITHER,
            GatewaySide.words(here),
            GatewaySide.words(there),
            unheard(here, there),
            evidence(here),
            evidence(there)));
  }

  private String unheard(List<Group> here, List<Group> there) {
    Set<String> both = virtual(here);
    both.retainAll(virtual(there));
    return both.isEmpty()
        ? apart(virtual(here), virtual(there), "")
        : "Neither hears the other: both are active and answer for "
            + Words.list(List.copyOf(both))
            + " at the same time, and hosts are torn between the two.";
  }

  /** Two addresses of which each has one switch only. */
  private String apart(Set<String> here, Set<String> there, String when) {
    return "Neither backs the other up: hosts that use "
        + either(here)
        + " lose their gateway"
        + when
        + " when "
        + first.name()
        + " fails, and hosts that use "
        + either(there)
        + " when "
        + second.name()
        + " does.";
  }

  private static String either(Set<String> addresses) {
    return addresses.isEmpty()
        ? "its address"
        : Words.list(List.copyOf(addresses)).replaceFirst(" and (?=[^,]*$)", " or ");
  }

  private static Set<String> virtual(List<Group> groups) {
    return groups.stream()
        .flatMap(group -> GatewaySide.virtual(group).stream())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** One has groups that the other has not; where the other may have some, nothing is told. */
  private void alone(PairGap.End end, GatewaySide with, GatewaySide without, List<Group> groups) {
    if (!without.gateway().redundant().isDecided()) {
      return;
    }
    Set<String> addresses = virtual(groups);
    Set<String> taken =
        addresses.stream().filter(without::owns).collect(Collectors.toCollection(TreeSet::new));
    boolean lead = end == PairGap.End.SECOND;
    String some = GatewaySide.words(groups);
    String none =
        without.gateway().groups().isEmpty()
            ? GatewaySide.words(List.of())
            : "no " + GatewaySide.words(groups);
    List<Evidence> lack = List.copyOf(without.gateway().redundant().evidence());
    gaps.add(
        new PairGap(
            end,
            lead ? some : none,
            lead ? none : some,
            taken.isEmpty() ? only(with, addresses) : torn(without, taken),
            lead ? evidence(groups) : lack,
            lead ? lack : evidence(groups)));
  }

  private String only(GatewaySide with, Set<String> addresses) {
    return addresses.isEmpty()
        ? "Neither backs the other up: when one fails, hosts that use its address lose their"
            + " gateway."
        : "Only "
            + with.name()
            + " answers for "
            + Words.list(List.copyOf(addresses))
            + ": when it fails, hosts that use it lose their gateway.";
  }

  private static String torn(GatewaySide owner, Set<String> addresses) {
    return "Both answer for "
        + Words.list(List.copyOf(addresses))
        + ", "
        + owner.name()
        + " with an address of its own: hosts are torn between the two.";
  }

  /**
   * Neither has a group: each address is on one switch only. Where no host is promised a gateway,
   * such as between two routers, that is no pair.
   */
  private void none() {
    boolean pair = first.served().vlan().gateway() == DesignVlan.GatewayNeed.REQUIRED;
    boolean open =
        Stream.of(first, second).anyMatch(side -> !side.gateway().redundant().isDecided());
    Set<String> here = GatewayAddresses.hosts(first);
    Set<String> there = GatewayAddresses.hosts(second);
    if (!pair
        || open
        || here.isEmpty()
        || there.isEmpty()
        || here.stream().anyMatch(second::owns)) {
      return;
    }
    gaps.add(
        new PairGap(
            PairGap.End.NEITHER,
            GatewaySide.words(List.of()),
            GatewaySide.words(List.of()),
            apart(here, there, ""),
            first.gateway().redundant().evidence(),
            second.gateway().redundant().evidence()));
  }

  /** Two groups of one protocol and number. */
  private void twins(Group one, Group other) {
    if (differ(one.version(), other.version())) {
      gaps.add(
          new PairGap(
              PairGap.End.NEITHER,
              one.kind() + " version " + one.version().value().orElseThrow(),
              one.kind() + " version " + other.version().value().orElseThrow(),
              unheard(List.of(one), List.of(other)),
              one.version().evidence(),
              other.version().evidence()));
    }
    boolean lacking = GatewaySide.lacksAddress(one);
    boolean otherLacking = GatewaySide.lacksAddress(other);
    Optional<String> here = GatewaySide.virtual(one);
    Optional<String> there = GatewaySide.virtual(other);
    boolean nowhere =
        one.address().isDecided()
            && other.address().isDecided()
            && here.isEmpty()
            && there.isEmpty();
    if (nowhere) {
      addresses(
          PairGap.End.NEITHER,
          one,
          other,
          "The group has no address to answer for: nothing moves to the other switch when one"
              + " fails.");
    } else if (lacking || otherLacking) {
      GatewaySide with = lacking ? second : first;
      addresses(
          lacking ? PairGap.End.FIRST : PairGap.End.SECOND,
          one,
          other,
          only(with, virtual(List.of(lacking ? other : one))));
    } else if (here.isPresent() && there.isPresent() && !here.equals(there)) {
      addresses(
          PairGap.End.NEITHER,
          one,
          other,
          apart(
              virtual(List.of(one)),
              virtual(List.of(other)),
              one.kind() == Redundancy.Kind.ANYCAST ? "" : " at the latest"));
    }
  }

  private void addresses(PairGap.End end, Group one, Group other, String so) {
    gaps.add(
        new PairGap(
            end,
            address(one),
            address(other),
            so,
            one.address().evidence(),
            other.address().evidence()));
  }

  private static String address(Group group) {
    return GatewaySide.virtual(group).isPresent()
        ? GatewaySide.words(group)
        : GatewaySide.words(group) + " without a virtual address";
  }

  private static <T> boolean differ(Setting<T> one, Setting<T> other) {
    return one.value().isPresent()
        && other.value().isPresent()
        && !one.value().equals(other.value());
  }

  private static List<Evidence> evidence(List<Group> groups) {
    return groups.stream()
        .flatMap(
            group ->
                group.address().value().isPresent()
                    ? group.address().evidence().stream()
                    : Stream.concat(
                        group.address().evidence().stream(), group.priority().evidence().stream()))
        .distinct()
        .toList();
  }
}
