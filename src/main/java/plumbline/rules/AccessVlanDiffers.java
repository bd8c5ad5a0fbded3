package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** An access port in another VLAN than designed. */
final class AccessVlanDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "access-vlan-differs",
          Group.PORT,
          Severity.WEAKENS,
          "an access port is in another VLAN than its role says",
          "V-206667 where VLAN 1 is found; common practice",
          Set.of("access"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<DesignVlan>> wish = port.wish(RoleKeys.ACCESS);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    DesignVlan wanted = wish.get().value();
    String designed = "access VLAN " + wanted;
    Setting<VlanId> access = port.get(Keys.ACCESS_VLAN);
    if (!access.isDecided()) {
      outcomes.add(port.undecided(access, designed, wish.get().at()).boundTo(PortMode.ACCESS));
    } else if (access.is(wanted.id())) {
      outcomes.conforms(port.subject());
    } else {
      String found = access.value().map(port.at()::name).orElse("no VLAN");
      VlanSet both =
          VlanSet.of(wanted.id().number())
              .plus(access.value().map(id -> VlanSet.of(id.number())).orElse(VlanSet.NONE));
      outcomes.add(
          Candidate.of(
                  port.subject(),
                  designed,
                  access.value().map(id -> Words.role("access", port.design(), id)).orElse(found),
                  Words.capital(Words.behind(port.port()))
                      + " is in "
                      + found
                      + " and not in "
                      + wanted
                      + ".",
                  port.proofs(access),
                  Optional.of(wish.get().at()))
              .about(both)
              .boundTo(PortMode.ACCESS));
    }
  }
}
