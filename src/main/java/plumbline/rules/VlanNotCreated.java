package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import plumbline.design.DesignVlan;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** VLANs that ports of the switch must carry and that the switch does not have. */
final class VlanNotCreated implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "vlan-not-created",
          Group.SWITCH,
          Severity.BREAKS,
          "a VLAN that ports or gateways of the switch need does not exist on it",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    SortedMap<VlanId, List<String>> needed = Needed.on(device);
    if (needed.isEmpty()) {
      return;
    }
    VlanDatabase database = device.settings().vlans();
    VlanSet all = VlanSet.of(needed.keySet());
    VlanSet missing = having(needed, database, Truth.NO);
    VlanSet open = having(needed, database, Truth.UNKNOWN);
    String designed = Words.vlans(device.design(), all);
    if (!missing.isEmpty()) {
      outcomes.add(
          Candidate.of(
                  device.subject(),
                  designed,
                  Words.vlans(device.design(), missing) + " not created; " + database.why(),
                  consequence(device, missing, needed),
                  device.listEvidence(),
                  device
                      .design()
                      .vlan(new VlanId(missing.ids().min().orElseThrow()))
                      .map(DesignVlan::at))
              .about(missing));
    } else if (!open.isEmpty()) {
      outcomes.add(
          Undecided.of(
              device.subject(),
              device.settings().truncation().isPresent()
                  ? Undecided.Cause.CUT
                  : Undecided.Cause.VLAN_DATABASE,
              database.why(),
              designed,
              device.listEvidence(),
              Optional.of(device.designed().at())));
    } else {
      outcomes.conforms(device.subject());
    }
  }

  private static VlanSet having(
      SortedMap<VlanId, List<String>> needed, VlanDatabase database, Truth exists) {
    return VlanSet.of(
        needed.keySet().stream().filter(vlan -> database.exists(vlan) == exists).toList());
  }

  private static String consequence(
      SwitchCase device, VlanSet missing, SortedMap<VlanId, List<String>> needed) {
    List<String> users =
        missing
            .ids()
            .mapToObj(VlanId::new)
            .flatMap(id -> needed.get(id).stream())
            .distinct()
            .toList();
    return "Nothing in "
        + Words.vlans(device.design(), missing)
        + " passes through this switch, whatever its ports allow; affected: "
        + Words.list(users)
        + ".";
  }
}
