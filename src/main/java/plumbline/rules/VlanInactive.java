package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Stream;
import plumbline.design.DesignVlan;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** VLANs that ports of the switch must carry and that stand suspended or shut on it. */
final class VlanInactive implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "vlan-inactive",
          Group.SWITCH,
          Severity.WEAKENS,
          "a VLAN that ports or gateways of the switch need is suspended or shut on it",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    SortedMap<VlanId, List<String>> needed = Needed.on(device);
    List<VlanDatabase.Entry> entries =
        needed.keySet().stream()
            .flatMap(id -> Stream.ofNullable(device.settings().vlans().entries().get(id)))
            .toList();
    List<VlanDatabase.Entry> inactive = having(entries, device, Truth.NO);
    List<VlanDatabase.Entry> open = having(entries, device, Truth.UNKNOWN);
    if (!inactive.isEmpty()) {
      outcomes.add(inactive(device, inactive, needed));
    } else if (!open.isEmpty()) {
      outcomes.add(open(device, open));
    } else if (!entries.isEmpty()) {
      outcomes.conforms(device.subject());
    }
  }

  private static List<VlanDatabase.Entry> having(
      List<VlanDatabase.Entry> entries, SwitchCase device, Truth active) {
    return entries.stream()
        .filter(entry -> device.settings().vlans().isActive(entry.id()) == active)
        .toList();
  }

  private static VlanSet ids(List<VlanDatabase.Entry> entries) {
    return VlanSet.of(entries.stream().map(VlanDatabase.Entry::id).toList());
  }

  private static List<Evidence> evidence(List<VlanDatabase.Entry> entries) {
    return entries.stream().flatMap(entry -> entry.active().evidence().stream()).toList();
  }

  private static Candidate inactive(
      SwitchCase device,
      List<VlanDatabase.Entry> inactive,
      SortedMap<VlanId, List<String>> needed) {
    VlanSet vlans = ids(inactive);
    String words = Words.vlans(device.design(), vlans);
    List<String> users =
        inactive.stream().flatMap(entry -> needed.get(entry.id()).stream()).distinct().toList();
    return Candidate.of(
            device.subject(),
            words + " active",
            words
                + (vlans.size() == 1 ? " exists and is" : " exist and are")
                + " suspended or shut",
            "The switch drops every frame in "
                + words
                + ", whatever its ports allow; affected: "
                + Words.list(users)
                + ".",
            device.proofs(evidence(inactive)),
            device.design().vlan(inactive.get(0).id()).map(DesignVlan::at))
        .about(vlans);
  }

  private static Undecided open(SwitchCase device, List<VlanDatabase.Entry> open) {
    Setting<Boolean> first = open.get(0).active();
    String words = Words.vlans(device.design(), ids(open));
    return Undecided.of(
        device.subject(),
        device.cause(first),
        "whether "
            + words
            + " "
            + Words.are(open.size())
            + " active: "
            + first.reason().orElse("the text does not tell"),
        words + " active",
        device.proofs(evidence(open)),
        Optional.of(device.designed().at()));
  }
}
