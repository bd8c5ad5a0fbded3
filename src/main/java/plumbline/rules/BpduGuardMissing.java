package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** A port that would take a switch behind it into the spanning tree. */
final class BpduGuardMissing implements PortRule {
  private static final String DESIGNED = "BPDU guard";
  private static final RuleInfo INFO =
      new RuleInfo(
          "bpdu-guard-missing",
          Group.PORT,
          Severity.WEAKENS,
          "BPDU guard does not work on a port whose role wants it",
          "V-206655; common practice",
          Set.of("bpdu-guard: true"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish =
        port.wish(RoleKeys.BPDU_GUARD).filter(wanted -> wanted.value());
    // between two switches of the design the guard would take the link down
    boolean between = port.isLinkEnd() && !port.farEnds().isEmpty();
    if (wish.isEmpty() || between || !port.isSwitching() || !port.mayFastStart()) {
      return;
    }
    Setting<Effect> guard = port.get(Keys.BPDU_GUARD);
    if (!guard.isDecided()) {
      outcomes.add(port.gap(guard, DESIGNED, wish.get().at()));
    } else if (guard.is(Effect.ON)) {
      outcomes.conforms(port.subject());
    } else {
      Candidate missing =
          guard.is(Effect.WITHOUT_EFFECT)
              ? disarmed(port, guard, wish.get())
              : off(port, guard, wish.get());
      outcomes.add(port.modeToRepairFor(guard).map(missing::boundTo).orElse(missing));
    }
  }

  private static Candidate off(PortCase port, Setting<Effect> guard, Wanted<Boolean> wish) {
    return candidate(
        port,
        wish,
        "BPDU guard off",
        (port.isLinkEnd()
                ? "A switch at the far end of " + Words.behind(port.port())
                : "A switch that is connected in place of "
                    + Words.behind(port.port())
                    + ", or behind it,")
            + " joins the spanning tree: it can become root or close a loop.",
        proofs(port, guard));
  }

  /** A routed port has no guard to disarm: its mode is what is wrong, and says so. */
  private static Candidate disarmed(PortCase port, Setting<Effect> guard, Wanted<Boolean> wish) {
    return candidate(
        port,
        wish,
        port.get(Keys.BPDU_FILTER).is(Effect.ON)
            ? "BPDU guard, without effect: a BPDU filter on the port"
            : "BPDU guard, without effect",
        "BPDU guard never hears a BPDU here: a switch or a loop behind the port goes unnoticed.",
        proofs(port, guard));
  }

  private static Candidate candidate(
      PortCase port, Wanted<Boolean> wish, String found, String so, List<Proof> proofs) {
    return Candidate.of(port.subject(), DESIGNED, found, so, proofs, Optional.of(wish.at()));
  }

  /** Behind lines for all ports alone the reader would look for the port in vain. */
  private static List<Proof> proofs(PortCase port, Setting<Effect> guard) {
    List<Evidence> evidence = new ArrayList<>(guard.evidence());
    if (guard.is(Effect.OFF)) {
      evidence.add(port.settings().orElseThrow().header());
    }
    return port.at().proofs(evidence);
  }
}
