package plumbline.rules;

import java.util.Optional;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;

/** A port that is set up and open and has no place in the design. */
final class PortUndeclared implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "port-undeclared",
          Group.SWITCH,
          Severity.UNTIDY,
          "a port that is set up and not shut has no place in the design",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    boolean any = false;
    for (Undeclared port : Undeclared.on(device)) {
      boolean bridges =
          port.settings().hasSwitchingLine() && !port.settings().get(Keys.MODE).is(PortMode.ROUTED);
      if (bridges) {
        any = true;
        outcomes.add(judge(device, port));
      }
    }
    if (!any) {
      outcomes.conforms(device.subject());
    }
  }

  private static Outcome judge(SwitchCase device, Undeclared port) {
    Setting<Boolean> shut = port.settings().get(Keys.SHUT);
    if (!shut.isDecided()) {
      return Undecided.of(
          port.subject(device),
          device.cause(shut),
          shut.reason().orElse("the text does not tell"),
          "no place for this port, so shut or not set up",
          device.proofs(port.settings().header(), shut.evidence()),
          Optional.of(device.designed().at()));
    }
    Setting<PortMode> mode = port.settings().get(Keys.MODE);
    Setting<VlanId> access = port.settings().get(Keys.ACCESS_VLAN);
    boolean hosts = mode.is(PortMode.ACCESS) || mode.is(PortMode.NEGOTIATED);
    String found =
        hosts && access.value().isPresent()
            ? "open, in " + device.name(access.value().get())
            : "open, with lines about switching";
    return Candidate.of(
            port.subject(device),
            "no place for this port",
            found,
            "The design does not know what is connected there: no check, schedule or repair"
                + " covers it.",
            device.proofs(port.settings().header(), (hosts ? access : mode).evidence()),
            Optional.of(device.designed().at()))
        .beside(port.places(device));
  }
}
