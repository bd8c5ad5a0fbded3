package plumbline.rules;

import java.util.Optional;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

/** A trunk that lets more through than designed. */
final class TaggedVlanExtra implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "tagged-vlan-extra",
          Group.PORT,
          Severity.WEAKENS,
          "a trunk carries a VLAN that its role neither wants nor tolerates",
          "V-206668 for VLAN 1; common practice");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<VlanSet>> wish = port.wish(RoleKeys.TAGGED);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    VlanSet wanted = wish.get().value();
    String designed = "tagged " + Words.vlans(port.design(), wanted) + " and no other";
    Setting<VlanSet> allowed = port.get(Keys.ALLOWED);
    if (allowed.value().isEmpty()) {
      outcomes.add(port.undecided(allowed, designed, wish.get().at()).boundTo(PortMode.TRUNK));
      return;
    }
    VlanSet mayCarry = port.port().role().value(RoleKeys.MAY_CARRY).orElse(VlanSet.NONE);
    VlanSet extra = Trunk.of(port, allowed.value().get()).extra(wanted, mayCarry);
    Optional<Setting<?>> open = Trunk.openNative(port);
    if (extra.isEmpty()) {
      outcomes.conforms(port.subject());
    } else if (open.isPresent() && extra.size() == 1) {
      // the one VLAN too many may be the native one
      outcomes.add(port.undecided(open.get(), designed, wish.get().at()).boundTo(PortMode.TRUNK));
    } else {
      outcomes.add(candidate(port, extra, designed, wish.get(), allowed).boundTo(PortMode.TRUNK));
    }
  }

  private static Candidate candidate(
      PortCase port,
      VlanSet extra,
      String designed,
      Wanted<VlanSet> wish,
      Setting<VlanSet> allowed) {
    VlanDatabase database = port.at().settings().vlans();
    VlanSet there = extra.and(reachable(port, database));
    VlanSet nowhere = extra.minus(there);
    String absent = database.known() ? " that do not exist here" : " of which the text shows none";
    if (there.isEmpty()) {
      return Candidate.of(
              port.subject(),
              designed,
              "allowed as well: " + Words.vlans(port.design(), nowhere) + absent,
              "Nothing is carried by it as far as the text shows; a VLAN created later under such a"
                  + " number reaches "
                  + Words.behind(port.port())
                  + " at once.",
              port.proofs(allowed),
              Optional.of(wish.at()))
          .about(nowhere)
          .at(Severity.UNTIDY);
    }
    String more = nowhere.isEmpty() ? "" : ", and " + nowhere.size() + absent;
    return Candidate.of(
            port.subject(),
            designed,
            "allowed as well: " + Words.vlans(port.design(), there) + more,
            consequence(port, there),
            port.proofs(allowed),
            Optional.of(wish.at()))
        .about(there);
  }

  /** VLANs that exist here; where the text does not hold the list, also the declared ones. */
  private static VlanSet reachable(PortCase port, VlanDatabase database) {
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
