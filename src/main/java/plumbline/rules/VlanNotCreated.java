package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import plumbline.design.DesignVlan;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** VLANs that ports of the switch must carry and that the switch does not have. */
final class VlanNotCreated implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "vlan-not-created",
          Group.SWITCH,
          Severity.WEAKENS,
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
                  found(device, missing),
                  consequence(device, missing, needed),
                  evidence(device, missing),
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
              "whether "
                  + Words.vlans(device.design(), open)
                  + (open.size() == 1 ? " exists" : " exist")
                  + " here: "
                  + database.why(),
              designed,
              device.listEvidence(),
              Optional.of(device.designed().at())));
    } else {
      outcomes.conforms(device.subject());
    }
  }

  /** A line that removes a VLAN tells by itself; for the others it matters who keeps the list. */
  private static String found(SwitchCase device, VlanSet missing) {
    VlanSet removed = removed(device, missing);
    VlanSet others = missing.minus(removed);
    List<String> parts = new ArrayList<>();
    if (!removed.isEmpty()) {
      parts.add(Words.vlans(device.design(), removed) + " removed");
    }
    if (!others.isEmpty()) {
      String why = device.settings().vlans().why();
      parts.add(Words.vlans(device.design(), others) + " not created; " + why);
    }
    return String.join("; ", parts);
  }

  private static List<Proof> evidence(SwitchCase device, VlanSet missing) {
    VlanSet removed = removed(device, missing);
    VlanDatabase database = device.settings().vlans();
    if (removed.isEmpty()) {
      return device.listEvidence();
    }
    List<Evidence> lines =
        new ArrayList<>(
            removed.ids().mapToObj(VlanId::new).map(vlan -> database.removed().get(vlan)).toList());
    if (!removed.equals(missing)) {
      lines.addAll(database.evidence());
    }
    return device.proofs(lines);
  }

  private static VlanSet removed(SwitchCase device, VlanSet missing) {
    return missing.and(VlanSet.of(device.settings().vlans().removed().keySet()));
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
