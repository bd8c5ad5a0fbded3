package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.RoleKey;
import plumbline.design.Wanted;
import plumbline.effective.PortSettings;
import plumbline.finding.Proof;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Setting;
import plumbline.yaml.Position;

/**
 * A port that the design covers, on a switch whose config was read.
 *
 * @param at the switch
 * @param port the port in the design
 * @param settings what the config says of it; for a bundle without a stanza what its first member
 *     says; empty where the text does not open it
 * @param fromMember whether the settings are those of a member
 */
public record PortCase(
    SwitchCase at, DesignPort port, Optional<PortSettings> settings, boolean fromMember) {
  /** The design. */
  public Design design() {
    return at.design();
  }

  /** The port with what is behind it. */
  public Subject subject() {
    return Subject.ofPort(port.switchName(), fullName(), port.port(), port.subject());
  }

  /** The port's name in the switch's dialect. */
  public String fullName() {
    return settings.isPresent() && !fromMember
        ? settings.get().fullName()
        : at.settings().fullName(port.port());
  }

  /** Whether rules about switching ask this port: a member is judged through its bundle. */
  public boolean isSwitching() {
    return port.place() != DesignPort.Place.MEMBER && !isSpare();
  }

  /** Whether the port is set aside for nobody. */
  public boolean isSpare() {
    return port.role().isSpare();
  }

  /** What the role asks under a key. */
  public <T> Optional<Wanted<T>> wish(RoleKey<T> key) {
    return port.role().get(key);
  }

  /** Evidence of a setting; a default stands behind the line that opens the port. */
  public List<Proof> proofs(Setting<?>... of) {
    List<Evidence> evidence = new ArrayList<>();
    for (Setting<?> setting : of) {
      evidence.addAll(setting.evidence());
    }
    return settings
        .map(open -> at.proofs(open.header(), evidence))
        .orElseGet(() -> at.proofs(evidence));
  }

  /** The outcome of a setting that the text leaves open. */
  public Undecided undecided(Setting<?> setting, String designed, Position design) {
    return Undecided.of(
        subject(),
        at.cause(setting),
        setting.reason().orElse("the text does not tell"),
        designed,
        proofs(setting),
        Optional.of(design));
  }

  /** The setting under a key; only where the text opens the port. */
  public <T> Setting<T> get(Key<T> key) {
    return settings.orElseThrow().get(key);
  }
}
