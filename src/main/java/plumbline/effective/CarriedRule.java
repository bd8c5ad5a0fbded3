package plumbline.effective;

import java.util.List;
import java.util.Optional;
import plumbline.setting.Carried;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.setting.VoiceVlan;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * Decides which VLANs cross a port, all things considered: the mode, the lists, the VLAN database
 * and whether the port is up. What the text leaves open is possible and not certain.
 *
 * <p>A port whose mode is left to negotiation carries for certain only what it would carry both as
 * an access port and as a trunk. Dynamic pruning takes nothing away here.
 */
final class CarriedRule {
  private final VlanSet active;
  private final VlanSet perhapsActive;

  private final Optional<Evidence> vlanSide;

  /**
   * Prepares the rule for one switch.
   *
   * @param others the lines outside ports: VLAN stanzas that list ports leave every port open
   */
  CarriedRule(VlanDatabase vlans, Lines others) {
    this.active = vlans.active();
    this.perhapsActive = vlans.perhapsActive();
    this.vlanSide =
        others.statements().stream()
            .filter(CarriedRule::listsPorts)
            .map(statement -> (Evidence) statement.evidence())
            .findFirst();
  }

  private static boolean listsPorts(Statement statement) {
    return statement.context() == Context.VLAN
        && statement.command() instanceof PortCommand.Unmodelled line
        && line.keywords().contains("tagged");
  }

  /**
   * The VLANs that the port carries.
   *
   * @param up whether the port is not shut, not suspended and not certain to be disabled
   * @param upEvidence what that rests on
   */
  Setting<Carried> carried(PortDraft port, Truth up, List<Evidence> upEvidence) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    if (up == Truth.NO) {
      return new Setting.Known<>(Carried.exactly(VlanSet.NONE), upEvidence);
    }
    List<Evidence> unmodelled = unmodelled(port);
    if (!unmodelled.isEmpty() && !mode.is(PortMode.ROUTED)) {
      return new Setting.Unknown<Carried>("a line of the port is not modelled", mode.evidence())
          .because(unmodelled);
    }
    if (vlanSide.isPresent() && !mode.is(PortMode.ROUTED)) {
      return Setting.unknown("a VLAN stanza lists ports, which is not modelled", vlanSide.get());
    }
    if (mode.value().isEmpty()) {
      return new Setting.Unknown<>(
          "the mode cannot be told: " + mode.reason().orElse("none is set"), mode.evidence());
    }
    return switch (mode.value().get()) {
      case ROUTED -> mode.map(routed -> Carried.exactly(VlanSet.NONE));
      case OTHER -> new Setting.Unknown<>("the port's mode is not modelled", mode.evidence());
      case ACCESS ->
          known(gated(access(port), up), mode)
              .because(port.get(Keys.ACCESS_VLAN).evidence())
              .because(voiceEvidence(port));
      case TRUNK -> known(gated(trunk(port), up), mode).because(port.allowed().evidence());
      case NEGOTIATED ->
          known(gated(either(access(port), trunk(port)), up), mode)
              .because(port.get(Keys.ACCESS_VLAN).evidence())
              .because(port.allowed().evidence());
    };
  }

  /** Lines that change what the port carries; those about one VLAN leave just that one open. */
  private static List<Evidence> unmodelled(PortDraft port) {
    return port.lines().statements().stream()
        .filter(
            statement ->
                statement.form() == Form.SET
                    && statement.command() instanceof PortCommand.Unmodelled line
                    && SwitchingLines.mayReachTrunks(line))
        .map(statement -> (Evidence) statement.evidence())
        .toList();
  }

  private static Setting<Carried> known(Carried carried, Setting<PortMode> mode) {
    return new Setting.Known<>(carried, mode.evidence());
  }

  private static List<Evidence> voiceEvidence(PortDraft port) {
    Setting<VoiceVlan> voice = port.get(Keys.VOICE_VLAN);
    return voice instanceof Setting.Absent<VoiceVlan> ? List.of() : voice.evidence();
  }

  private Carried trunk(PortDraft port) {
    return new Carried(
        port.allowed().certain().and(active), port.allowed().possible().and(perhapsActive));
  }

  private Carried access(PortDraft port) {
    Carried data = one(port.get(Keys.ACCESS_VLAN));
    Carried voice = voice(port.get(Keys.VOICE_VLAN));
    return new Carried(
        data.certain().plus(voice.certain()), data.possible().plus(voice.possible()));
  }

  private Carried one(Setting<VlanId> vlan) {
    if (vlan.value().isEmpty()) {
      return new Carried(VlanSet.NONE, perhapsActive);
    }
    VlanSet set = VlanSet.of(List.of(vlan.value().get()));
    return new Carried(set.and(active), set.and(perhapsActive));
  }

  /** Frames that a phone does not tag with a VLAN of their own belong to the access VLAN. */
  private Carried voice(Setting<VoiceVlan> voice) {
    if (!voice.isDecided()) {
      return new Carried(VlanSet.NONE, perhapsActive);
    }
    return voice
        .value()
        .flatMap(VoiceVlan::vlan)
        .map(vlan -> one(Setting.known(vlan)))
        .orElse(Carried.exactly(VlanSet.NONE));
  }

  private static Carried either(Carried one, Carried other) {
    return new Carried(one.certain().and(other.certain()), one.possible().plus(other.possible()));
  }

  private static Carried gated(Carried carried, Truth up) {
    return up == Truth.YES ? carried : new Carried(VlanSet.NONE, carried.possible());
  }
}
