package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.Role;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A spare port that is not shut, or that is shut outside the VLANs kept for spare ports. */
final class SparePortOpen implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "spare-port-open",
          Group.SWITCH,
          Severity.WEAKENS,
          "a spare port is not shut in an unused VLAN",
          "V-206666; common practice",
          Set.of(Role.SPARE));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    if (!port.isSpare()) {
      return;
    }
    if (port.settings().isEmpty()) {
      outcomes.add(absent(port));
      return;
    }
    Setting<Boolean> shut = port.get(Keys.SHUT);
    if (!shut.isDecided()) {
      outcomes.add(port.undecided(shut, designed(port), port.port().at()));
    } else if (shut.is(false)) {
      outcomes.add(open(port, shut));
    } else {
      outcomes.add(parked(port));
    }
  }

  /** A port that the switch does not have cannot be open. */
  private static Outcome absent(PortCase port) {
    if (port.at().settings().isPortAbsent(port.port().port()) == Truth.YES) {
      return new Outcome.Conforms(port.subject());
    }
    Undecided.Cause cause = port.at().listCause();
    return Undecided.of(
        port.subject(),
        cause == Undecided.Cause.OWN ? Undecided.Cause.TEXT : cause,
        port.at().settings().whyPortsMayBeMissing().orElse("the text opens no such port"),
        designed(port),
        port.at().absence("the text opens no such port"),
        Optional.of(port.port().at()));
  }

  private static Candidate open(PortCase port, Setting<Boolean> shut) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    Setting<VlanId> access = port.get(Keys.ACCESS_VLAN);
    String where = "what it is set up for";
    if (mode.is(PortMode.ACCESS) && access.value().isPresent()) {
      where = port.at().name(access.value().get());
    } else if (mode.is(PortMode.TRUNK)) {
      where = "the VLANs of its trunk";
    }
    return Candidate.of(
        port.subject(),
        designed(port),
        "not shut",
        "Whoever plugs something in there is on the network at once, in " + where + ".",
        port.proofs(shut),
        Optional.of(port.port().at()));
  }

  private static Outcome parked(PortCase port) {
    List<DesignVlan> unused = unused(port);
    Setting<PortMode> mode = port.get(Keys.MODE);
    Setting<VlanId> access = port.get(Keys.ACCESS_VLAN);
    // a routed port is in no VLAN; a design without unused VLANs has no place to park in
    if (mode.is(PortMode.ROUTED) || unused.isEmpty()) {
      return new Outcome.Conforms(port.subject());
    }
    Setting<?> open = mode.isDecided() ? access : mode;
    if (!open.isDecided()) {
      return port.undecided(open, designed(port), port.port().at());
    }
    boolean bridgesHosts = mode.is(PortMode.ACCESS) || mode.is(PortMode.NEGOTIATED);
    if (bridgesHosts && unused.stream().anyMatch(vlan -> access.is(vlan.id()))) {
      return new Outcome.Conforms(port.subject());
    }
    String found =
        bridgesHosts
            ? "shut, in " + access.value().map(port.at()::name).orElse("no VLAN")
            : "shut, as " + (mode.is(PortMode.TRUNK) ? "a trunk" : "a port of another mode");
    return Candidate.of(
            port.subject(),
            designed(port),
            found,
            "Nothing passes now; opened by mistake, it puts what is plugged in among hosts"
                + " instead of nowhere.",
            bridgesHosts ? port.proofs(access) : port.proofs(mode),
            Optional.of(port.port().at()))
        .at(Severity.UNTIDY)
        .about(
            VlanSet.of(bridgesHosts ? access.value().stream().toList() : new ArrayList<VlanId>()));
  }

  private static List<DesignVlan> unused(PortCase port) {
    return port.design().vlans().values().stream().filter(DesignVlan::unused).toList();
  }

  private static String designed(PortCase port) {
    List<DesignVlan> unused = unused(port);
    return unused.isEmpty()
        ? "spare: shut"
        : "spare: shut, in "
            + String.join(" or ", unused.stream().map(DesignVlan::toString).toList());
  }
}
