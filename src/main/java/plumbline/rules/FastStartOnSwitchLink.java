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

/** A port that forwards at once although its role says that a bridge is behind it. */
final class FastStartOnSwitchLink implements PortRule {
  private static final String DESIGNED = "no edge fast-start";
  private static final RuleInfo INFO =
      new RuleInfo(
          "fast-start-on-switch-link",
          Group.PORT,
          Severity.WEAKENS,
          "edge fast-start is on where a role wants it off, as on a link to another switch",
          "IEEE 802.1Q adminEdge; common practice",
          Set.of("fast-start: false"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish =
        port.wish(RoleKeys.FAST_START).filter(wanted -> !wanted.value());
    if (wish.isEmpty() || !port.isSwitching() || !port.mayFastStart()) {
      return;
    }
    Setting<Effect> setting = port.get(Keys.FAST_START);
    if (!setting.isDecided()) {
      outcomes.add(port.gap(setting, DESIGNED, wish.get().at()));
    } else if (setting.is(Effect.ON)) {
      Candidate on =
          Candidate.of(
              port.subject(),
              DESIGNED,
              "edge fast-start",
              consequence(port),
              port.proofs(setting),
              Optional.of(wish.get().at()));
      outcomes.add(port.modeToRepairFor(setting).map(on::boundTo).orElse(on));
    } else if (port.modeToRepairFor(setting).isEmpty()) {
      // off only because of a wrong mode tells nothing of the right one
      outcomes.conforms(port.subject());
    }
  }

  /** An edge port that hears a BPDU is none any more (IEEE 802.1Q operEdge). */
  private static String consequence(PortCase port) {
    String link = port.isLinkEnd() ? "this link" : Words.behind(port.port());
    return "The port forwards at every link-up before spanning tree has looked: a loop through "
        + link
        + " floods its VLANs until a BPDU is heard, and for good where none is.";
  }
}
