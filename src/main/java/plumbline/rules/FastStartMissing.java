package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;

/** An edge port that waits for spanning tree as if a bridge were behind it. */
final class FastStartMissing implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "fast-start-missing",
          Group.PORT,
          Severity.WEAKENS,
          "edge fast-start is off on a port whose role wants it",
          "IEEE 802.1Q adminEdge; common practice",
          Set.of("fast-start: true"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish =
        port.wish(RoleKeys.FAST_START).filter(wanted -> wanted.value());
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    Setting<Effect> setting = port.get(Keys.FAST_START);
    Setting<PortMode> mode = port.get(Keys.MODE);
    String designed = "edge fast-start";
    if (!setting.isDecided()) {
      boolean openMode = mode.value().isEmpty() || mode.is(PortMode.NEGOTIATED);
      Outcome.Undecided open = port.undecided(setting, designed, wish.get().at());
      outcomes.add(openMode ? open.because(Outcome.Undecided.Cause.MODE) : open);
    } else if (setting.is(Effect.ON)) {
      outcomes.conforms(port.subject());
    } else if (!setting.is(Effect.WITHOUT_EFFECT)) {
      // with the default timers: twice a forward delay of 15 s (IEEE 802.1D-1998, RFC 4188)
      Candidate off =
          Candidate.of(
              port.subject(),
              designed,
              "fast-start off",
              Words.capital(Words.behind(port.port()))
                  + " waits up to 30 seconds after every link-up before the port forwards.",
              port.proofs(setting),
              Optional.of(wish.get().at()));
      // a global default that stops at trunks is in force again once the mode is right
      boolean restsOnMode =
          !mode.evidence().isEmpty() && setting.evidence().containsAll(mode.evidence());
      outcomes.add(
          port.port()
              .role()
              .value(RoleKeys.MODE)
              .filter(wanted -> restsOnMode)
              .map(off::boundTo)
              .orElse(off));
    }
  }
}
