package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.yaml.Position;

/** A port on which spanning tree is off. */
final class BpduFilterSet implements PortRule {
  private static final String DESIGNED = "no BPDU filter";
  private static final RuleInfo INFO =
      new RuleInfo(
          "bpdu-filter-set",
          Group.PORT,
          Severity.WEAKENS,
          "a BPDU filter turns spanning tree off on a port",
          RuleInfo.COMMON_PRACTICE,
          Set.of("bpdu-filter: false"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish = port.wish(RoleKeys.BPDU_FILTER);
    boolean wanted = wish.filter(Wanted::value).isPresent();
    if (wanted || !port.isSwitching() || !port.mayFastStart()) {
      return;
    }
    Setting<Effect> filter = port.get(Keys.BPDU_FILTER);
    Position at = wish.map(Wanted::at).orElse(port.port().at());
    if (!filter.isDecided()) {
      outcomes.add(port.gap(filter, DESIGNED, at));
    } else if (filter.is(Effect.ON)) {
      outcomes.add(
          Candidate.of(
              port.subject(),
              DESIGNED,
              "BPDU filter: no BPDU leaves the port or is heard on it",
              consequence(port) + armed(port),
              port.proofs(filter),
              Optional.of(at)));
    } else if (!filter.is(Effect.WITHOUT_EFFECT) || port.modeToRepair().isEmpty()) {
      // without effect only because of a wrong mode, it comes to life with the right one
      outcomes.conforms(port.subject());
    }
  }

  /** Beside a filter a guard has no effect, and nothing else would tell of it. */
  private static String armed(PortCase port) {
    boolean wanted =
        port.farEnds().isEmpty()
            && port.wish(RoleKeys.BPDU_GUARD).filter(Wanted::value).isPresent();
    boolean waiting = port.isLinkEnd() && port.get(Keys.BPDU_GUARD).is(Effect.WITHOUT_EFFECT);
    return waiting && !wanted
        ? " BPDU guard is set there too, and only the filter keeps it quiet: without the filter the"
            + " first BPDU disables the port, so take the guard away first."
        : "";
  }

  private static String consequence(PortCase port) {
    return port.isLinkEnd()
        ? "Spanning tree does not see the "
            + port.port().subject()
            + ": a second path beside it is a loop that nothing breaks."
        : "Spanning tree is off towards "
            + Words.behind(port.port())
            + ": a loop there floods the port's VLANs, and nothing breaks it.";
  }
}
