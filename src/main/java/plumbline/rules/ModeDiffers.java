package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A port that is access where the design wants a trunk, or the like. */
final class ModeDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "mode-differs",
          Group.PORT,
          Severity.WEAKENS,
          "a port is in another mode than its role says",
          "V-206670; common practice",
          Set.of("mode"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<PortMode>> wish = port.wishedMode();
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    PortMode wanted = wish.get().value();
    Setting<PortMode> mode = port.get(Keys.MODE);
    if (!mode.isDecided()) {
      outcomes.add(port.undecided(mode, "mode " + wanted, wish.get().at()));
      return;
    }
    PortMode found = mode.value().orElse(PortMode.OTHER);
    if (found == wanted) {
      outcomes.conforms(port.subject());
    } else if (found != PortMode.NEGOTIATED || wanted == PortMode.ROUTED) {
      // a negotiated port is neither right nor wrong yet: negotiation-open speaks of it
      outcomes.add(
          port.withoutWay(
              Candidate.of(
                      port.subject(),
                      "mode " + wanted,
                      found == PortMode.OTHER ? "a mode of another kind" : "mode " + found,
                      consequence(port, found),
                      port.proofs(mode),
                      Optional.of(wish.get().at()))
                  .spoiling(wanted)));
    }
  }

  private static String consequence(PortCase port, PortMode found) {
    String behind = Words.behind(port.port());
    return switch (found) {
      case ACCESS ->
          (port.isLinkEnd() ? "At most " : "Only ")
              + vlan(port, port.get(Keys.ACCESS_VLAN))
              + " passes, untagged"
              + voice(port)
              + "tagged frames to and from "
              + behind
              + " are dropped.";
      case TRUNK -> trunk(port, behind);
      case ROUTED -> "The port does not bridge: no VLAN reaches " + behind + ".";
      case NEGOTIATED -> "The port bridges instead of routing for " + behind + ".";
      case OTHER ->
          "What "
              + behind
              + " can reach depends on a mode that the design does not know and this program does"
              + " not compute.";
    };
  }

  private static String voice(PortCase port) {
    return port.get(Keys.VOICE_VLAN)
        .value()
        .flatMap(VoiceVlan::vlan)
        .map(vlan -> ", and " + port.at().name(vlan) + " tagged for phones; other ")
        .orElse("; ");
  }

  private static String trunk(PortCase port, String behind) {
    if (port.get(Keys.ALLOWED).is(VlanSet.NONE)) {
      return "Nothing passes: the trunk allows no VLAN.";
    }
    Setting<VlanId> untagged = port.get(Keys.NATIVE_VLAN);
    boolean dropped = port.tagsNative() || untagged.value().filter(port::bars).isPresent();
    return "Untagged frames of "
        + behind
        + (dropped ? " are dropped" : " land in " + vlan(port, untagged))
        + ", and every VLAN of the allowed list is open to it.";
  }

  private static String vlan(PortCase port, Setting<VlanId> setting) {
    return setting.value().map(port.at()::name).orElse("a VLAN that the text does not tell");
  }
}
