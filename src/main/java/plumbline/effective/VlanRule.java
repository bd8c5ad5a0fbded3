package plumbline.effective;

import java.util.Optional;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.statement.PortCommand;
import plumbline.vlan.VlanId;

/** Decides a port's access, voice and native VLAN and whether the native VLAN is tagged. */
final class VlanRule {
  private final Globals globals;

  VlanRule(Globals globals) {
    this.globals = globals;
  }

  /** Puts the four settings. */
  void apply(PortDraft port) {
    Lines lines = port.lines();
    Dialect dialect = globals.dialect();
    port.put(
        Keys.ACCESS_VLAN,
        lines
            .last(Matter.ACCESS, PortCommand.AccessVlan.class)
            .operand(PortCommand.AccessVlan::vlan, dialect.fact(VlanId.DEFAULT, "access VLAN 1")));
    port.put(Keys.VOICE_VLAN, voice(lines));
    port.put(
        Keys.NATIVE_VLAN,
        lines
            .last(Matter.NATIVE, PortCommand.NativeVlan.class)
            .operand(PortCommand.NativeVlan::vlan, dialect.fact(VlanId.DEFAULT, "native VLAN 1")));
    port.put(Keys.NATIVE_TAGGING, tagging(lines));
    port.put(Keys.ALLOWED, port.allowed().setting());
  }

  private Setting<VoiceVlan> voice(Lines lines) {
    Setting<VoiceVlan> none = globals.dialect().nothing("no voice VLAN");
    return lines
        .last(Matter.VOICE, PortCommand.Voice.class)
        .decide(
            last -> {
              if (!last.sets()) {
                return last.backTo(none);
              }
              Optional<VoiceVlan> voice = last.command().voice();
              return voice.isPresent()
                  ? last.known(voice.get())
                  : Setting.absent(last.statement().evidence());
            },
            () -> none);
  }

  /** A port line, in either spelling, over the global one. */
  private Setting<Boolean> tagging(Lines lines) {
    LastWord<PortCommand.NativeVlan> vlan = lines.last(Matter.NATIVE, PortCommand.NativeVlan.class);
    if (vlan instanceof LastWord.Said<PortCommand.NativeVlan> said
        && said.sets()
        && said.command().tagged()) {
      return said.known(true);
    }
    return lines
        .last(Matter.NATIVE_TAG, PortCommand.NativeTagging.class)
        .flag(globals.nativeTagging());
  }
}
