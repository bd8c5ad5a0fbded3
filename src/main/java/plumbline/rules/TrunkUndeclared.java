package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.design.DesignVlan;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Carried;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

/** An open trunk on a port that has no place in the design. */
final class TrunkUndeclared implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "trunk-undeclared",
          Group.SWITCH,
          Severity.WEAKENS,
          "a port that has no place in the design is an open trunk",
          "V-206670; common practice");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    Undeclared.on(device).forEach(port -> outcomes.add(judge(device, port)));
  }

  private static Outcome judge(SwitchCase device, Undeclared port) {
    Setting<PortMode> mode = port.settings().get(Keys.MODE);
    Setting<Boolean> shut = port.settings().get(Keys.SHUT);
    // a port that nobody set up to negotiate is no trunk until its far end asks for one
    boolean byLine = mode.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
    boolean mayTrunk = mode.is(PortMode.NEGOTIATED) && byLine;
    if (mode.isDecided() && !mode.is(PortMode.TRUNK) && !mayTrunk) {
      return new Outcome.Conforms(port.subject(device));
    }
    Setting<?> open = mode.isDecided() ? shut : mode;
    return open.isDecided()
        ? trunk(device, port, mayTrunk)
        : Undecided.of(
            port.subject(device),
            device.cause(open),
            open.reason().orElse("the text does not tell"),
            "no place for this port, so no open trunk",
            device.proofs(port.settings().header(), open.evidence()),
            Optional.of(device.designed().at()));
  }

  private static Candidate trunk(SwitchCase device, Undeclared port, boolean mayTrunk) {
    VlanSet declared =
        VlanSet.of(device.design().vlans().values().stream().map(DesignVlan::id).toList());
    Optional<Carried> carried = port.settings().get(Keys.CARRIED).value();
    VlanSet certain = carried.map(Carried::certain).orElse(VlanSet.NONE).and(declared);
    VlanSet possible = carried.map(Carried::possible).orElse(declared).and(declared);
    VlanSet spoken = certain.isEmpty() || mayTrunk ? possible : certain;
    String words = Words.vlans(device.design(), spoken);
    String consequence;
    if (spoken.isEmpty()) {
      consequence = "It carries none of the VLANs of the design; what it is for is not known.";
    } else if (mayTrunk) {
      consequence = "Whatever is connected there can make it a trunk and reach " + words + ".";
    } else if (certain.isEmpty()) {
      consequence = "Whatever is connected there may reach " + words + ".";
    } else {
      consequence =
          "Whatever is connected there reaches "
              + words
              + "; a switch there may loop them or take over their spanning tree.";
    }
    List<Proof> proofs =
        device.proofs(port.settings().header(), port.settings().get(Keys.MODE).evidence());
    Candidate candidate =
        Candidate.of(
                port.subject(device),
                "no place for this port",
                mayTrunk ? "open, trunk left to negotiation" : "open trunk",
                consequence,
                proofs,
                Optional.of(device.designed().at()))
            .about(spoken)
            .beside(port.places(device));
    return spoken.isEmpty() ? candidate.at(Severity.UNTIDY) : candidate;
  }
}
