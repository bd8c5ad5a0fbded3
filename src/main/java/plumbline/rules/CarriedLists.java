package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import plumbline.design.Design;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * Holds the allowed lists of two trunks against each other: a VLAN that one switch has and lets
 * through differs where the other list bars it. A VLAN that a switch does not have is no difference
 * of lists: that is the switch's own matter. Where the VLANs of a switch are not in its text, those
 * count that the design declares.
 *
 * @param ends the trunks
 * @param comparison takes what differs
 * @param so the consequence of these VLANs passing at the first port only, or at the second
 */
record CarriedLists(TwoEnds ends, Comparison comparison, Function<OneSided, String> so) {
  /**
   * VLANs that one of two trunks bars.
   *
   * @param passing the trunk that carries them
   * @param barring the other
   * @param vlans the VLANs
   */
  record OneSided(PortCase passing, PortCase barring, VlanSet vlans) {}

  /** Compares. */
  void compare() {
    Setting<VlanSet> one = ends.first().get(Keys.ALLOWED);
    Setting<VlanSet> other = ends.second().get(Keys.ALLOWED);
    if (one.value().isEmpty() || other.value().isEmpty()) {
      PortCase open = one.value().isEmpty() ? ends.first() : ends.second();
      wish()
          .ifPresent(
              wanted ->
                  comparison.leaveOpen(open, open.get(Keys.ALLOWED), designed(), wanted.at()));
      return;
    }
    // whether VLANs that nobody declares exist may be open: then nothing is said of them
    if (perhapsBarred(ends.first(), ends.second()).isEmpty()
        && perhapsBarred(ends.second(), ends.first()).isEmpty()) {
      comparison.alike();
    }
    VlanSet fromFirst = barred(ends.first(), ends.second());
    VlanSet fromSecond = barred(ends.second(), ends.first());
    VlanSet all = fromFirst.plus(fromSecond);
    VlanSet settled =
        VlanSet.of(
            all.ids().mapToObj(VlanId::new).filter(vlan -> isSettled(vlan, fromFirst)).toList());
    VlanSet named =
        VlanSet.of(
            all.ids()
                .mapToObj(VlanId::new)
                .filter(vlan -> wants(ends.first(), vlan) || wants(ends.second(), vlan))
                .toList());
    tell(fromFirst.and(settled), fromSecond.and(settled), true, true);
    VlanSet rest = all.minus(settled);
    tell(fromFirst.and(rest).and(named), fromSecond.and(rest).and(named), true, false);
    tell(fromFirst.and(rest).minus(named), fromSecond.and(rest).minus(named), false, false);
  }

  /** What a trunk carries, or would if it were open, and the other one's list bars. */
  private static VlanSet barred(PortCase passing, PortCase barring) {
    return barred(passing, barring, there(passing));
  }

  private static VlanSet perhapsBarred(PortCase passing, PortCase barring) {
    VlanSet perhaps = passing.at().settings().vlans().perhapsActive();
    return barred(passing, barring, perhaps.minus(there(passing)));
  }

  private static VlanSet there(PortCase passing) {
    VlanDatabase vlans = passing.at().settings().vlans();
    VlanSet declared =
        VlanSet.of(passing.design().vlans().values().stream().map(DesignVlan::id).toList());
    return vlans.active().plus(vlans.perhapsActive().and(declared));
  }

  private static VlanSet barred(PortCase passing, PortCase barring, VlanSet those) {
    return passing
        .get(Keys.ALLOWED)
        .value()
        .orElse(VlanSet.NONE)
        .and(those)
        .minus(barring.get(Keys.ALLOWED).value().orElse(VlanSet.ALL))
        .minus(VlanSet.RESERVED)
        .minus(untaggedOf(passing))
        .minus(untaggedOf(barring));
  }

  /** Whether a native VLAN is let through is asked where it is one that must be carried. */
  private static VlanSet untaggedOf(PortCase port) {
    VlanSet untagged =
        port.get(Keys.NATIVE_VLAN)
            .value()
            .map(vlan -> VlanSet.of(vlan.number()))
            .orElse(VlanSet.NONE);
    return untagged.minus(port.port().role().neededVlans());
  }

  /** Whether both let the VLAN through, or both bar it, once each is as its role says. */
  private boolean isSettled(VlanId vlan, VlanSet fromFirst) {
    boolean first = fromFirst.contains(vlan);
    return repaired(ends.first(), vlan, first) == repaired(ends.second(), vlan, !first);
  }

  private static boolean repaired(PortCase port, VlanId vlan, boolean passes) {
    if (isTagged(port, vlan)) {
      return true;
    }
    return passes && !forbids(port, vlan);
  }

  private static boolean wants(PortCase port, VlanId vlan) {
    return port.port().role().neededVlans().contains(vlan) || forbids(port, vlan);
  }

  private static boolean isTagged(PortCase port, VlanId vlan) {
    return port.port().role().value(RoleKeys.TAGGED).filter(all -> all.contains(vlan)).isPresent();
  }

  /** A role that lists its VLANs bars the others, but for those that it tolerates. */
  private static boolean forbids(PortCase port, VlanId vlan) {
    boolean tolerated =
        port.port().role().value(RoleKeys.MAY_CARRY).filter(all -> all.contains(vlan)).isPresent()
            || port.port()
                .role()
                .value(RoleKeys.NATIVE)
                .filter(own -> own.id().equals(vlan))
                .isPresent();
    return port.wish(RoleKeys.TAGGED).isPresent() && !isTagged(port, vlan) && !tolerated;
  }

  private void tell(VlanSet fromFirst, VlanSet fromSecond, boolean named, boolean goes) {
    if (fromFirst.isEmpty() && fromSecond.isEmpty()) {
      return;
    }
    boolean firstLacks =
        fromSecond.ids().mapToObj(VlanId::new).anyMatch(vlan -> isTagged(ends.first(), vlan));
    boolean firstExceeds =
        fromFirst.ids().mapToObj(VlanId::new).anyMatch(vlan -> forbids(ends.first(), vlan));
    boolean secondDeparts =
        fromFirst.ids().mapToObj(VlanId::new).anyMatch(vlan -> isTagged(ends.second(), vlan))
            || fromSecond
                .ids()
                .mapToObj(VlanId::new)
                .anyMatch(vlan -> forbids(ends.second(), vlan));
    PortCase end = !firstLacks && !firstExceeds && secondDeparts ? ends.second() : ends.first();
    PortCase far = ends.other(end);
    Candidate candidate =
        Candidate.of(
                ends.subject(end),
                designed(),
                found(ends.first(), fromFirst)
                    + between(fromFirst, fromSecond)
                    + found(ends.second(), fromSecond),
                said(ends.first(), ends.second(), fromFirst)
                    + (fromFirst.isEmpty() || fromSecond.isEmpty() ? "" : " ")
                    + said(ends.second(), ends.first(), fromSecond),
                Comparison.proofs(end, end.get(Keys.ALLOWED), far, far.get(Keys.ALLOWED)),
                Optional.of(at()))
            .about(fromFirst.plus(fromSecond))
            .beside(ends.beside(end));
    if (!named) {
      candidate = candidate.at(Severity.UNTIDY);
    }
    comparison.tell(
        goes ? candidate.across(comparison.across(Set.of(Keys.ALLOWED), true)) : candidate);
  }

  private static String between(VlanSet one, VlanSet other) {
    return one.isEmpty() || other.isEmpty() ? "" : "; ";
  }

  private String found(PortCase end, VlanSet vlans) {
    Design design = end.design();
    return vlans.isEmpty() ? "" : Words.vlans(design, vlans) + " only at " + TwoEnds.name(end);
  }

  private String said(PortCase passing, PortCase barring, VlanSet vlans) {
    return vlans.isEmpty() ? "" : so.apply(new OneSided(passing, barring, vlans));
  }

  private String designed() {
    return "the same VLANs carried " + ends.both();
  }

  private Optional<Wanted<VlanSet>> wish() {
    return ends.first().wish(RoleKeys.TAGGED).or(() -> ends.second().wish(RoleKeys.TAGGED));
  }

  private Position at() {
    return wish().map(Wanted::at).orElse(ends.at());
  }
}
