package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.Wanted;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

/** A trunk that does not let a designed VLAN through. */
final class TaggedVlanMissing extends TaggedVlans {
  private static final RuleInfo INFO =
      new RuleInfo(
          "tagged-vlan-missing",
          Group.PORT,
          Severity.WEAKENS,
          "a trunk does not carry a VLAN that its role wants tagged",
          RuleInfo.COMMON_PRACTICE,
          Set.of("tagged"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  Outcome judge(PortCase port, Wanted<VlanSet> wish, Setting<VlanSet> allowed, Trunk trunk) {
    VlanSet wanted = wish.value();
    VlanSet notAllowed = trunk.notAllowed(wanted);
    VlanSet untagged = trunk.untaggedInstead(wanted);
    VlanSet missing = notAllowed.plus(untagged);
    if (!missing.isEmpty()) {
      return Candidate.of(
              port.subject(),
              designed(port, wanted),
              found(port, notAllowed, untagged),
              consequence(port, missing),
              proofs(port, allowed, untagged),
              Optional.of(wish.at()))
          .about(missing)
          .boundTo(PortMode.TRUNK);
    }
    return trunk.perhapsUntaggedInstead(wanted).isEmpty()
        ? new Outcome.Conforms(port.subject())
        : open(port, Trunk.openNative(port), wish);
  }

  @Override
  String designed(PortCase port, VlanSet wanted) {
    return "tagged " + Words.vlans(port.design(), wanted);
  }

  private static List<Proof> proofs(PortCase port, Setting<VlanSet> allowed, VlanSet untagged) {
    return untagged.isEmpty()
        ? port.proofs(allowed)
        : port.proofs(allowed, port.get(Keys.NATIVE_VLAN));
  }

  private static String found(PortCase port, VlanSet notAllowed, VlanSet untagged) {
    List<String> parts = new ArrayList<>();
    if (!notAllowed.isEmpty()) {
      parts.add(Words.vlans(port.design(), notAllowed) + " not allowed");
    }
    if (!untagged.isEmpty()) {
      parts.add(Words.vlans(port.design(), untagged) + " untagged");
    }
    return String.join("; ", parts);
  }

  private static String consequence(PortCase port, VlanSet missing) {
    String vlans = Words.vlans(port.design(), missing);
    return switch (port.port().place()) {
      case HOST ->
          "Machines in "
              + vlans
              + " on "
              + Words.host(port.port())
              + " lose the network when they use "
              + Words.hostPort(port.port())
              + ".";
      case LINK, MEMBER ->
          "Frames of " + vlans + " do not cross " + Words.behind(port.port()) + ".";
      case SHEET, GATEWAY ->
          "Frames of " + vlans + " do not reach " + Words.behind(port.port()) + " tagged.";
    };
  }
}
