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

/** Fast-start that stands in the config and does nothing. */
final class FastStartWithoutEffect implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "fast-start-without-effect",
          Group.PORT,
          Severity.WEAKENS,
          "edge fast-start is configured in a form that has no effect on this port",
          RuleInfo.COMMON_PRACTICE,
          Set.of("fast-start: true"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Boolean>> wish =
        port.wish(RoleKeys.FAST_START).filter(wanted -> wanted.value());
    if (wish.isEmpty() || !port.isSwitching() || !port.mayFastStart()) {
      return;
    }
    Setting<Effect> setting = port.get(Keys.FAST_START);
    if (setting.is(Effect.ON)) {
      outcomes.conforms(port.subject());
    } else if (setting.is(Effect.WITHOUT_EFFECT)) {
      boolean trunks = port.get(Keys.MODE).is(PortMode.TRUNK);
      outcomes.add(
          Candidate.of(
                  port.subject(),
                  "edge fast-start",
                  trunks
                      ? "fast-start for access ports, without effect while the port trunks"
                      : "fast-start configured, without effect",
                  Words.capital(Words.behind(port.port()))
                      + " waits up to 30 seconds after every link-up before the port forwards,"
                      + " although the config looks as if it did not.",
                  port.proofs(setting),
                  Optional.of(wish.get().at()))
              .boundTo(port.wishedMode().map(Wanted::value).orElse(PortMode.TRUNK)));
    }
  }
}
