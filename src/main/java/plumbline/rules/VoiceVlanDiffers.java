package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** An access port that gives phones another voice VLAN than designed, or none. */
final class VoiceVlanDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "voice-vlan-differs",
          Group.PORT,
          Severity.WEAKENS,
          "an access port gives phones another voice VLAN than its role says",
          RuleInfo.COMMON_PRACTICE,
          Set.of("voice"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<DesignVlan>> wish = port.wish(RoleKeys.VOICE);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    DesignVlan wanted = wish.get().value();
    Setting<VoiceVlan> voice = port.get(Keys.VOICE_VLAN);
    if (!voice.isDecided()) {
      outcomes.add(
          port.undecided(voice, "voice VLAN " + wanted, wish.get().at()).boundTo(PortMode.ACCESS));
    } else if (!voice.is(VoiceVlan.tagged(wanted.id()))) {
      outcomes.add(
          differing(port, wish.get(), found(port, voice), consequence(port, wanted, voice), voice));
    } else if (!isWithoutEffect(port)) {
      outcomes.conforms(port.subject());
    } else if (port.modeToRepair().isEmpty()) {
      // a role that leaves the mode open: no rule about modes speaks of it
      outcomes.add(
          differing(
              port,
              wish.get(),
              "voice VLAN "
                  + wanted
                  + ", without effect: mode "
                  + port.get(Keys.MODE).value().get(),
              "Only an access port tells phones their voice VLAN.",
              voice));
    }
  }

  private static boolean isWithoutEffect(PortCase port) {
    return port.get(Keys.MODE)
        .value()
        .filter(mode -> mode != PortMode.ACCESS && mode != PortMode.NEGOTIATED)
        .isPresent();
  }

  private static Candidate differing(
      PortCase port, Wanted<DesignVlan> wish, String found, String so, Setting<VoiceVlan> voice) {
    VlanSet both =
        VlanSet.of(wish.value().id().number())
            .plus(
                voice
                    .value()
                    .flatMap(VoiceVlan::vlan)
                    .map(id -> VlanSet.of(id.number()))
                    .orElse(VlanSet.NONE));
    return Candidate.of(
            port.subject(),
            "voice VLAN " + wish.value(),
            found,
            so,
            port.proofs(voice),
            Optional.of(wish.at()))
        .about(both)
        .boundTo(PortMode.ACCESS);
  }

  private static String found(PortCase port, Setting<VoiceVlan> voice) {
    return voice.value().map(kind -> found(port, kind)).orElse("no voice VLAN");
  }

  private static String found(PortCase port, VoiceVlan voice) {
    return switch (voice.kind()) {
      case TAGGED -> Words.role("voice", port.design(), voice.vlan().orElseThrow());
      case DOT1P -> "voice without a VLAN of its own, tagged with a priority only";
      case UNTAGGED -> "voice untagged";
    };
  }

  /** What a phone does that takes its VLAN from the switch, and one that is set by hand. */
  private static String consequence(PortCase port, DesignVlan wanted, Setting<VoiceVlan> voice) {
    Optional<VlanId> other = voice.value().flatMap(VoiceVlan::vlan);
    String where =
        other
            .map(port.at()::name)
            .or(() -> port.get(Keys.ACCESS_VLAN).value().map(port.at()::name))
            .orElse("the access VLAN");
    boolean told = voice.value().isPresent();
    return "A phone behind the port "
        + (told ? "is told to speak in " + where : "is told no VLAN and speaks in " + where)
        + "; the port does not carry "
        + wanted
        + ".";
  }
}
