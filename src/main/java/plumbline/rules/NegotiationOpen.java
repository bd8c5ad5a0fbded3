package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignPort.Place;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided.Cause;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.yaml.Position;

/** A port whose mode the other end can talk it into. */
final class NegotiationOpen implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "negotiation-open",
          Group.PORT,
          Severity.WEAKENS,
          "the mode of a port is open to negotiation with the other end",
          "V-206665",
          Set.of("negotiate", "mode"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish = port.wish(RoleKeys.NEGOTIATE);
    Optional<Wanted<PortMode>> mode = port.wishedMode();
    boolean routed = mode.filter(wanted -> wanted.value() == PortMode.ROUTED).isPresent();
    if (!port.isSwitching() || port.settings().isEmpty() || routed) {
      return;
    }
    boolean mayStay = wish.filter(Wanted::value).isPresent();
    boolean dynamic = port.get(Keys.MODE).is(PortMode.NEGOTIATED);
    boolean modeMatters = dynamic && !(mayStay && mode.isEmpty());
    boolean framesMatter = wish.isPresent() && !mayStay;
    // where the design is silent on modes, no other rule says that this one is open
    boolean mayBeDynamic = wish.isEmpty() && mode.isEmpty() && !port.get(Keys.MODE).isDecided();
    if (!modeMatters && !framesMatter && !mayBeDynamic) {
      return;
    }
    Position at =
        mode.filter(any -> dynamic)
            .map(Wanted::at)
            .or(() -> wish.map(Wanted::at))
            .orElse(port.port().at());
    String designed =
        mode.map(wanted -> "mode " + wanted.value()).orElse("a fixed mode")
            + (wish.isPresent() && !mayStay ? ", negotiation off" : "");
    Setting<Boolean> negotiate = port.get(Keys.NEGOTIATE);
    if (dynamic) {
      Candidate open =
          Candidate.of(
              port.subject(),
              designed,
              "the mode is left to negotiation",
              dynamicConsequence(port),
              port.proofs(port.get(Keys.MODE)),
              Optional.of(at));
      // a host does not answer: the port is access towards it, whatever its trunk lines say
      outcomes.add(isTowardsHost(port) ? open.spoiling(PortMode.TRUNK) : open);
    } else if (!negotiate.isDecided()) {
      Outcome.Undecided open = port.undecided(negotiate, designed, at);
      // what a mode of another kind negotiates is of no interest where that mode is wrong
      outcomes.add(port.modeToRepair().isPresent() ? open.because(Cause.MODE) : open);
    } else if (negotiate.is(true)) {
      outcomes.add(
          Candidate.of(
              port.subject(),
              designed,
              "negotiation frames are sent",
              invitation(port),
              port.proofs(negotiate),
              Optional.of(at)));
    } else {
      outcomes.conforms(port.subject());
    }
  }

  private static boolean isTowardsHost(PortCase port) {
    return port.port().place() == Place.HOST || port.port().place() == Place.SHEET;
  }

  /** A fixed trunk that still sends negotiation frames. */
  private static String invitation(PortCase port) {
    return isTowardsHost(port)
        ? "The port invites whatever is plugged in to trunk: a switch port that is left to"
            + " negotiation becomes a trunk as soon as it is connected here."
        : "The port invites the far end to trunk: a far end that is left to negotiation is a trunk"
            + " because of it, though no line there says so.";
  }

  private static String dynamicConsequence(PortCase port) {
    String access =
        port.get(Keys.ACCESS_VLAN)
            .value()
            .map(port.at()::name)
            .orElse("a VLAN that the text does not tell");
    return "Whether the port trunks is up to the other end: towards "
        + (isTowardsHost(port) ? "a host" : "a device that does not negotiate")
        + " it is an access port in "
        + access
        + ", and whatever negotiates can turn it into a trunk.";
  }
}
