package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Two ports that back each other up and are not alike. */
final class PairDiffers implements PairRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "pair-differs",
          Group.PAIR,
          Severity.WEAKENS,
          "the two ports of a pair are not set alike",
          RuleInfo.COMMON_PRACTICE,
          Set.of("hosts.pairs"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PairCase pair, Outcomes outcomes) {
    Comparison comparison = new Comparison(pair.ends(), outcomes);
    comparison.ask(mode(pair));
    Optional<PortMode> both = fixedMode(pair.first()).value().filter(fixedMode(pair.second())::is);
    if (both.filter(PortMode.TRUNK::equals).isPresent()) {
      comparison.ask(untagged(pair, "native", Keys.NATIVE_VLAN, RoleKeys.NATIVE));
      comparison.ask(tagging(pair));
      new CarriedLists(pair.ends(), comparison, side -> lost(pair, side)).compare();
    } else if (both.filter(PortMode.ACCESS::equals).isPresent()) {
      comparison.ask(untagged(pair, "access", Keys.ACCESS_VLAN, RoleKeys.ACCESS));
      comparison.ask(voice());
    }
    if (both.isPresent()) {
      PairParts.bridging(pair).forEach(comparison::ask);
    }
    PairParts.rest(pair).forEach(part -> part.ask(comparison));
    comparison.close();
  }

  private static Comparison.Asked<PortMode> mode(PairCase pair) {
    return Comparison.Asked.of(
        "mode",
        Set.of(Keys.MODE),
        PairDiffers::fixedMode,
        PortCase::wishedMode,
        mode -> "mode " + mode,
        (one, other) ->
            pair.host().name()
                + " sends the same frames by both ports, and each takes others of them: what one of"
                + " them drops is lost for good when the other fails.");
  }

  /** A host does not negotiate: a port that is left to it is an access port towards the host. */
  private static Setting<PortMode> fixedMode(PortCase port) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    return mode.is(PortMode.OTHER)
        ? new Setting.Unknown<>("the mode is of another kind", mode.evidence())
        : mode.map(one -> one == PortMode.NEGOTIATED ? PortMode.ACCESS : one);
  }

  private static Comparison.Asked<VlanId> untagged(
      PairCase pair, String kind, Key<VlanId> key, RoleKey<DesignVlan> role) {
    return new Comparison.Asked<>(
        kind + " VLAN",
        Set.of(key),
        port -> port.get(key),
        port -> port.wish(role).map(wish -> new Wanted<>(wish.value().id(), wish.at())),
        vlan -> Words.role(kind, pair.first().design(), vlan),
        (one, other) -> landing(pair, one, other),
        (one, other) -> VlanSet.of(one.number(), other.number()));
  }

  private static String landing(PairCase pair, VlanId one, VlanId other) {
    boolean dropped = isDropped(pair.first(), one);
    boolean otherDropped = isDropped(pair.second(), other);
    String frames = "Untagged frames of " + pair.host().name();
    if (dropped && otherDropped) {
      return frames + " are dropped by both ports.";
    }
    return frames
        + fate(pair.first(), one)
        + " by "
        + pair.pair().first()
        + " and"
        + fate(pair.second(), other)
        + " by "
        + pair.pair().second()
        + ": a machine that sends untagged "
        + (dropped || otherDropped ? "loses the network" : "changes its network")
        + " with the port.";
  }

  private static String fate(PortCase port, VlanId untagged) {
    return isDropped(port, untagged) ? " are dropped" : " land in " + port.at().name(untagged);
  }

  /** A trunk drops them where its native VLAN is tagged, or is none that it lets through. */
  private static boolean isDropped(PortCase port, VlanId untagged) {
    return port.get(Keys.MODE).is(PortMode.TRUNK) && (port.tagsNative() || port.bars(untagged));
  }

  private static Comparison.Asked<Boolean> tagging(PairCase pair) {
    return Comparison.Asked.of(
        "native tagging",
        Set.of(Keys.NATIVE_TAGGING),
        port -> port.get(Keys.NATIVE_TAGGING),
        port -> port.wish(RoleKeys.NATIVE_TAGGING),
        tagged -> tagged ? "native VLAN tagged" : "native VLAN untagged",
        (one, other) ->
            "Untagged frames of "
                + pair.host().name()
                + " are dropped by "
                + (one ? pair.pair().first() : pair.pair().second())
                + ", where the native VLAN is tagged.");
  }

  private static Comparison.Asked<Optional<VoiceVlan>> voice() {
    return Comparison.Asked.of(
        "voice VLAN",
        Set.of(Keys.VOICE_VLAN),
        port -> Comparison.orElse(port.get(Keys.VOICE_VLAN).map(Optional::of), Optional.empty()),
        port -> Optional.empty(),
        voice -> voice.map(one -> "voice VLAN " + one).orElse("no voice VLAN"),
        (one, other) -> "Tagged frames of phones pass by one port only.");
  }

  private static String lost(PairCase pair, CarriedLists.OneSided side) {
    boolean first = side.barring().equals(pair.first());
    return "Machines in "
        + Words.vlans(side.passing().design(), side.vlans())
        + " on "
        + pair.host().name()
        + " have the network by "
        + (first ? pair.pair().second() : pair.pair().first())
        + " only: they lose it when that fails, or when they use "
        + (first ? pair.pair().first() : pair.pair().second())
        + ".";
  }
}
