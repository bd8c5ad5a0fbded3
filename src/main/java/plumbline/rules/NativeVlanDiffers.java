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

/** A trunk whose untagged frames belong to another VLAN than designed. */
final class NativeVlanDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "native-vlan-differs",
          Group.PORT,
          Severity.WEAKENS,
          "the native VLAN of a trunk is another than its role says",
          "V-206671 where VLAN 1 is found; common practice",
          Set.of("native"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<DesignVlan>> wish = port.wish(RoleKeys.NATIVE);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    DesignVlan wanted = wish.get().value();
    Setting<VlanId> setting = port.get(Keys.NATIVE_VLAN);
    String designed = "native VLAN " + wanted;
    if (setting.value().isEmpty()) {
      outcomes.add(port.undecided(setting, designed, wish.get().at()).boundTo(PortMode.TRUNK));
    } else if (setting.is(wanted.id())) {
      outcomes.add(
          !wanted.unused() && port.bars(wanted.id())
              ? barred(port, wish.get())
              : new Outcome.Conforms(port.subject()));
    } else {
      VlanId found = setting.value().get();
      outcomes.add(
          Candidate.of(
                  port.subject(),
                  designed,
                  Words.role("native", port.design(), found),
                  consequence(port, found, wanted),
                  port.proofs(setting),
                  Optional.of(wish.get().at()))
              .about(VlanSet.of(wanted.id().number(), found.number()))
              .boundTo(PortMode.TRUNK));
    }
  }

  /** A native VLAN outside the allowed list passes no traffic: no harm where none is to pass. */
  private static Outcome barred(PortCase port, Wanted<DesignVlan> wish) {
    DesignVlan wanted = wish.value();
    return Candidate.of(
            port.subject(),
            "native VLAN " + wanted,
            "native VLAN " + wanted + ", not in the allowed list",
            consequence(port, wanted.id(), wanted),
            port.proofs(port.get(Keys.NATIVE_VLAN), port.get(Keys.ALLOWED)),
            Optional.of(wish.at()))
        .about(VlanSet.of(wanted.id().number()))
        .boundTo(PortMode.TRUNK);
  }

  private static String consequence(PortCase port, VlanId found, DesignVlan wanted) {
    String untagged = "Untagged frames of " + Words.behind(port.port());
    if (port.tagsNative()) {
      return untagged + " are dropped, as native tagging is on; the far end may expect them.";
    }
    if (port.bars(found)) {
      return untagged + " are dropped: " + port.at().name(found) + " is not in the allowed list.";
    }
    Optional<String> idle = port.at().whyIdle(found);
    if (idle.isPresent()) {
      return untagged + " are dropped: " + port.at().name(found) + " " + idle.get() + ".";
    }
    return untagged + " land in " + port.at().name(found) + " instead of " + wanted + ".";
  }
}
