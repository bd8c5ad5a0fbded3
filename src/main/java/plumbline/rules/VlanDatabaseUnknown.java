package plumbline.rules;

import java.util.Optional;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/** Needed VLANs of which the text does not tell whether they exist. */
final class VlanDatabaseUnknown implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "vlan-database-unknown",
          Group.SWITCH,
          Severity.UNVERIFIED,
          "the config does not tell whether VLANs that the switch needs exist on it",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    var needed = Needed.on(device).keySet();
    if (needed.isEmpty()) {
      return;
    }
    VlanDatabase database = device.settings().vlans();
    VlanSet open =
        VlanSet.of(needed.stream().filter(vlan -> database.exists(vlan) == Truth.UNKNOWN).toList());
    String designed = Words.vlans(device.design(), VlanSet.of(needed));
    if (open.isEmpty()) {
      outcomes.conforms(device.subject());
    } else if (device.settings().truncation().isPresent()) {
      outcomes.add(
          Undecided.of(
              device.subject(),
              Undecided.Cause.CUT,
              database.why(),
              designed,
              device.listEvidence(),
              Optional.of(device.designed().at())));
    } else {
      outcomes.add(
          Candidate.of(
                  device.subject(),
                  designed,
                  "no stanza for " + Words.vlans(device.design(), open) + "; " + database.why(),
                  "Whether "
                      + Words.list(
                          open.ids()
                              .mapToObj(plumbline.vlan.VlanId::new)
                              .map(device::name)
                              .toList())
                      + (open.size() == 1 ? " exists" : " exist")
                      + " here is not known; if not, no port of this switch carries "
                      + Words.them(open.size())
                      + ".",
                  device.listEvidence(),
                  Optional.of(device.designed().at()))
              .about(open));
    }
  }
}
