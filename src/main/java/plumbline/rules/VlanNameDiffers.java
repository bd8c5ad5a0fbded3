package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.text.Secrets;
import plumbline.vlan.VlanSet;

/** A VLAN that has another name on the switch than the design gives it. */
final class VlanNameDiffers implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "vlan-name-differs",
          Group.SWITCH,
          Severity.UNTIDY,
          "a VLAN has another name on the switch than in the design",
          RuleInfo.COMMON_PRACTICE,
          Set.of("vlans.name"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    for (DesignVlan vlan : device.design().vlans().values()) {
      VlanDatabase.Entry entry = device.settings().vlans().entries().get(vlan.id());
      if (entry != null && vlan.deviceName().isPresent()) {
        outcomes.add(judge(device, vlan, entry));
      }
    }
  }

  private static Outcome judge(SwitchCase device, DesignVlan vlan, VlanDatabase.Entry entry) {
    Subject subject =
        new Subject(
            Optional.of(Place.ofSwitch(device.designed().name())), Optional.empty(), vlan.name());
    Setting<String> name = entry.name();
    // names are masked as the config's are: a secret in one is shown by neither
    String wanted = Secrets.mask(vlan.deviceName().orElseThrow());
    String found = name.value().map(Secrets::mask).orElseGet(() -> standard(vlan));
    List<Evidence> evidence = new ArrayList<>(name.evidence());
    if (evidence.stream().noneMatch(Evidence.Line.class::isInstance)) {
      entry.active().evidence().stream()
          .filter(Evidence.Line.class::isInstance)
          .forEach(evidence::add);
    }
    boolean hidden = wanted.contains(Secrets.MASK) && wanted.equals(found);
    if (!name.isDecided() || hidden) {
      return Undecided.of(
          subject,
          name.isDecided() ? Undecided.Cause.OWN : device.cause(name),
          name.reason().orElse("the name is masked, as it may be a secret"),
          "name " + wanted,
          device.proofs(evidence),
          Optional.of(vlan.at()));
    }
    if (found.equals(wanted)) {
      return new Outcome.Conforms(subject);
    }
    return Candidate.of(
            subject,
            "name " + wanted,
            name.value().isPresent() ? "name " + found : "no name",
            "Who works by names on this switch may take "
                + vlan
                + " for another VLAN; frames pass as before.",
            device.proofs(evidence),
            Optional.of(vlan.at()))
        .about(VlanSet.of(vlan.id().number()));
  }

  /** The name of a VLAN that was given none (common practice, no source). */
  private static String standard(DesignVlan vlan) {
    return vlan.id().number() == 1
        ? "default"
        : String.format(Locale.ROOT, "VLAN%04d", vlan.id().number());
  }
}
