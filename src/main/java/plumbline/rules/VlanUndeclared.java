package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.design.DesignVlan;
import plumbline.effective.Gateway;
import plumbline.effective.SwitchSettings;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** VLANs of the switch that the design does not know. */
final class VlanUndeclared implements SwitchRule {
  private static final int MOST_LINES = 5;

  private static final RuleInfo INFO =
      new RuleInfo(
          "vlan-undeclared",
          Group.SWITCH,
          Severity.UNTIDY,
          "the switch has VLANs that the design does not declare",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    SwitchSettings settings = device.settings();
    VlanSet declared =
        VlanSet.of(device.design().vlans().values().stream().map(DesignVlan::id).toList())
            .plus(device.design().otherVlans())
            .plus(VlanSet.RESERVED)
            .plus(VlanSet.of(VlanId.DEFAULT.number()));
    List<Gateway> addressed =
        settings.gateways().stream()
            .filter(gateway -> gateway.has(Gateway.Need.Kind.ADDRESS) == Truth.YES)
            .filter(gateway -> settings.vlans().exists(gateway.vlan()) != Truth.NO)
            .toList();
    VlanSet found =
        settings
            .vlans()
            .existing()
            .plus(VlanSet.of(addressed.stream().map(Gateway::vlan).toList()))
            .minus(declared);
    if (!found.isEmpty()) {
      outcomes.add(undeclared(device, found, addressed));
    } else if (settings.vlans().known()) {
      // a list that stands outside the text may hold any VLAN
      outcomes.conforms(device.subject());
    }
  }

  private static Candidate undeclared(SwitchCase device, VlanSet found, List<Gateway> addressed) {
    Stream<Evidence> stanzas =
        device.settings().vlans().entries().values().stream()
            .filter(entry -> found.contains(entry.id()))
            .flatMap(VlanUndeclared::stanza);
    Stream<Evidence> headers =
        addressed.stream().filter(gateway -> found.contains(gateway.vlan())).map(Gateway::header);
    List<Evidence> evidence = new ArrayList<>(Stream.concat(stanzas, headers).distinct().toList());
    boolean one = found.size() == 1;
    return Candidate.of(
            device.subject(),
            "only the VLANs that the design declares, and its other-vlans",
            Words.vlans(device.design(), found) + " declared here",
            "The design does not say what "
                + (one ? "it is" : "they are")
                + " for; nobody can tell from it whether "
                + (one ? "it" : "they")
                + " may be removed.",
            device.proofs(evidence).stream().limit(MOST_LINES).toList(),
            Optional.empty())
        .about(found);
  }

  private static Stream<Evidence> stanza(VlanDatabase.Entry entry) {
    return Stream.of(entry.active(), entry.name())
        .map(
            setting ->
                setting.evidence().stream().filter(Evidence.Line.class::isInstance).findFirst())
        .flatMap(Optional::stream)
        .limit(1);
  }
}
