package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A trunk that lets more through than designed. */
final class TaggedVlanExtra extends TaggedVlans {
  private static final RuleInfo INFO =
      new RuleInfo(
          "tagged-vlan-extra",
          Group.PORT,
          Severity.WEAKENS,
          "a trunk carries a VLAN that its role neither wants nor tolerates",
          "V-206668 for VLAN 1; V-206666 for unused VLANs; common practice",
          Set.of("tagged", "may-carry"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  Outcome judge(PortCase port, Wanted<VlanSet> wish, Setting<VlanSet> allowed, Trunk trunk) {
    VlanSet mayCarry = port.port().role().value(RoleKeys.MAY_CARRY).orElse(VlanSet.NONE);
    VlanSet extra = trunk.extra(wish.value(), mayCarry);
    if (!extra.isEmpty()) {
      return found(port, extra, wish, allowed);
    }
    return trunk.perhapsExtra(wish.value(), mayCarry).isEmpty()
        ? new Outcome.Conforms(port.subject())
        : open(port, Trunk.openNative(port), wish);
  }

  @Override
  String designed(PortCase port, VlanSet wanted) {
    return "tagged " + Words.vlans(port.design(), wanted) + " and no other";
  }

  private Outcome found(
      PortCase port, VlanSet extra, Wanted<VlanSet> wish, Setting<VlanSet> allowed) {
    VlanDatabase database = port.at().settings().vlans();
    VlanSet there = extra.and(reachable(port));
    VlanSet perhaps =
        VlanSet.of(
            extra
                .ids()
                .mapToObj(VlanId::new)
                .filter(vlan -> database.exists(vlan) == Truth.UNKNOWN)
                .toList());
    return (there.isEmpty() && !perhaps.isEmpty()
        ? perhapsThere(port, perhaps, wish, allowed)
        : candidate(port, extra, there, wish, allowed).boundTo(PortMode.TRUNK));
  }

  /** Allowed, undeclared, and the text does not tell whether the switch has it. */
  private Outcome perhapsThere(
      PortCase port, VlanSet perhaps, Wanted<VlanSet> wish, Setting<VlanSet> allowed) {
    String why =
        Words.vlans(port.design(), perhaps)
            + " allowed as well, which may exist here: "
            + port.at().settings().vlans().why();
    return Undecided.of(
            port.subject(),
            port.at().listCause(),
            why,
            designed(port, wish.value()),
            port.proofs(allowed),
            Optional.of(wish.at()))
        .boundTo(PortMode.TRUNK);
  }

  private Candidate candidate(
      PortCase port, VlanSet extra, VlanSet there, Wanted<VlanSet> wish, Setting<VlanSet> allowed) {
    VlanDatabase database = port.at().settings().vlans();
    VlanSet nowhere = extra.minus(there);
    String absent = database.known() ? " that do not exist here" : " of which the text shows none";
    String alone = database.known() && nowhere.size() == 1 ? " that does not exist here" : absent;
    String more =
        nowhere.isEmpty()
            ? ""
            : ", and " + Words.count(nowhere.size(), "number") + " of VLANs" + absent;
    Candidate found =
        Candidate.of(
            port.subject(),
            designed(port, wish.value()),
            "allowed as well: "
                + (there.isEmpty()
                    ? Words.vlans(port.design(), nowhere) + alone
                    : Words.vlans(port.design(), there) + more),
            there.isEmpty() ? later(port) : consequence(port, there),
            port.proofs(allowed),
            Optional.of(wish.at()));
    return there.isEmpty() ? found.at(Severity.UNTIDY) : found.about(there);
  }

  private static String later(PortCase port) {
    return "Nothing is carried by it as far as the text shows; a VLAN created later under such a"
        + " number reaches "
        + Words.behind(port.port())
        + " at once.";
  }

  /** VLANs that exist here; where the text does not hold the list, also the declared ones. */
  static VlanSet reachable(PortCase port) {
    VlanDatabase database = port.at().settings().vlans();
    VlanSet declared =
        VlanSet.of(port.design().vlans().values().stream().map(DesignVlan::id).toList());
    return database.known() ? database.existing() : database.existing().plus(declared);
  }

  private static String consequence(PortCase port, VlanSet there) {
    String vlans = Words.vlans(port.design(), there);
    return switch (port.port().place()) {
      case LINK, MEMBER ->
          Words.capital(vlans)
              + " can cross "
              + Words.behind(port.port())
              + ", where the design keeps "
              + Words.them(there.size())
              + " out.";
      default ->
          Words.capital(Words.behind(port.port()))
              + " can send and receive in "
              + vlans
              + ", where the design keeps it out.";
    };
  }
}
