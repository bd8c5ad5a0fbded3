package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignPort;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.PortSettings;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;

/** An edge port that waits for spanning tree as if a bridge were behind it. */
final class FastStartMissing implements PortRule {
  private static final String DESIGNED = "edge fast-start";
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
    if (wish.isEmpty() || !port.isSwitching() || !port.mayFastStart()) {
      return;
    }
    Setting<Effect> setting = port.get(Keys.FAST_START);
    Setting<PortMode> mode = port.get(Keys.MODE);
    if (!setting.isDecided()) {
      boolean openMode = mode.value().isEmpty() || mode.is(PortMode.NEGOTIATED);
      Undecided open = port.undecided(setting, DESIGNED, wish.get().at());
      Undecided gap = openMode ? open.because(Undecided.Cause.MODE) : open;
      outcomes.add(port.modeToRepair().map(gap::boundTo).orElse(gap));
    } else if (setting.is(Effect.ON)) {
      outcomes.conforms(port.subject());
    } else if (!setting.is(Effect.WITHOUT_EFFECT)) {
      boolean network = port.settings().filter(PortSettings::isNetworkPort).isPresent();
      boolean blocks = network && port.port().place() != DesignPort.Place.LINK;
      Candidate off = blocks ? blocked(port, setting, wish.get()) : slow(port, setting, wish.get());
      outcomes.add(port.modeToRepairFor(setting).map(off::boundTo).orElse(off));
    }
  }

  private static Candidate slow(PortCase port, Setting<Effect> setting, Wanted<Boolean> wish) {
    // with the default timers: twice a forward delay of 15 s (IEEE 802.1D-1998, RFC 4188)
    return off(
        port,
        setting,
        wish,
        "fast-start off",
        " waits up to 30 seconds after every link-up before the port forwards.");
  }

  /** Common practice, no source: a network port that hears no BPDUs is taken for a broken link. */
  private static Candidate blocked(PortCase port, Setting<Effect> setting, Wanted<Boolean> wish) {
    return off(
            port,
            setting,
            wish,
            "port type network, for links between switches",
            " has no connection: it sends no BPDUs, and without them the port stays blocked.")
        .at(Severity.BREAKS);
  }

  private static Candidate off(
      PortCase port, Setting<Effect> setting, Wanted<Boolean> wish, String found, String happens) {
    return Candidate.of(
        port.subject(),
        DESIGNED,
        found,
        Words.capital(Words.behind(port.port())) + happens,
        port.proofs(setting),
        Optional.of(wish.at()));
  }
}
