package plumbline.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Proof;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * A switch of the design whose config was read.
 *
 * @param design the whole design
 * @param designed the switch
 * @param settings what its config says
 */
public record SwitchCase(Design design, DesignSwitch designed, SwitchSettings settings) {
  /** The switch as a whole. */
  public Subject subject() {
    return Subject.ofSwitch(designed.name());
  }

  /**
   * The ports that the design covers here, spare ports too, in the order of their names. A bundle
   * without a stanza stands here once for each of its members, whose lines count in its place.
   */
  public List<PortCase> ports() {
    return design.portsOf(designed.name()).stream().flatMap(this::cases).toList();
  }

  private Stream<PortCase> cases(DesignPort port) {
    Optional<PortSettings> own = settings.port(port.port());
    List<PortSettings> members =
        own.isEmpty() && port.port().kind().isBundle()
            ? settings.membersOf(port.port())
            : List.of();
    return members.isEmpty()
        ? Stream.of(new PortCase(this, port, own, false))
        : members.stream().map(member -> new PortCase(this, port, Optional.of(member), true));
  }

  /** The case of one port; for a bundle without a stanza that of its first member. */
  Optional<PortCase> caseOf(DesignPort port) {
    return cases(port).findFirst();
  }

  /** The design's own case for a port, if it covers it. */
  Optional<DesignPort> designOf(PortName name) {
    return design.portsOf(designed.name()).stream()
        .filter(port -> port.port().equals(name))
        .findFirst();
  }

  /** The VLAN as reports name it: {@code voice-a (231)}, or {@code VLAN 300}. */
  public String name(VlanId vlan) {
    return Words.vlan(design, vlan);
  }

  /** Why no frame of a VLAN passes this switch, as a verb; empty where one may. */
  Optional<String> whyIdle(VlanId vlan) {
    if (settings.vlans().isActive(vlan) != Truth.NO) {
      return Optional.empty();
    }
    return Optional.of(
        settings.vlans().exists(vlan) == Truth.NO
            ? "does not exist here"
            : "is suspended or shut here");
  }

  /**
   * What the knowledge of the switch's VLAN list rests on, as the place of a VLAN that it lacks.
   */
  public List<Proof> listEvidence() {
    List<Evidence> lines = settings.vlans().evidence();
    return lines.isEmpty() ? absence(settings.vlans().why()) : proofs(lines);
  }

  /** What kind of gap leaves open whether a VLAN exists that no port is designed to need. */
  public Undecided.Cause listCause() {
    if (settings.truncation().isPresent()) {
      return Undecided.Cause.CUT;
    }
    return settings.script() ? Undecided.Cause.TEXT : Undecided.Cause.OWN;
  }

  /** What kind of gap leaves a setting of this switch open. */
  public Undecided.Cause cause(Setting<?> setting) {
    if (settings.isCutOff(setting)) {
      return Undecided.Cause.CUT;
    }
    boolean wide = settings.isSilent(setting) || settings.isLeftToFamily(setting);
    return wide ? Undecided.Cause.TEXT : Undecided.Cause.OWN;
  }

  /** Evidence with this switch's file: lines in the order of the text, then defaults. */
  public List<Proof> proofs(List<? extends Evidence> evidence) {
    return evidence.stream()
        .<Evidence>map(one -> one)
        .distinct()
        .sorted(Comparator.comparingInt(SwitchCase::lineOf))
        .map(one -> Proof.of(settings.file(), one))
        .toList();
  }

  /** The same; where no line stands, the line that opens the block comes before the defaults. */
  public List<Proof> proofs(Evidence.Line header, List<? extends Evidence> evidence) {
    List<Evidence> all = new ArrayList<>(evidence);
    if (all.stream().noneMatch(Evidence.Line.class::isInstance)) {
      all.add(header);
    }
    return proofs(all);
  }

  private static int lineOf(Evidence evidence) {
    return evidence instanceof Evidence.Line line ? line.line() : Integer.MAX_VALUE;
  }

  /**
   * Evidence for something that the whole text lacks: its hostname line, as the head of the block
   * that should hold it, and what is lacking.
   *
   * @param lack such as {@code no stanza for this port}
   */
  public List<Proof> absence(String lack) {
    List<Proof> proofs = new ArrayList<>();
    settings.hostname().evidence().stream()
        .filter(Evidence.Line.class::isInstance)
        .forEach(line -> proofs.add(Proof.of(settings.file(), line)));
    proofs.add(new Proof(Optional.of(settings.file()), new Evidence.Default(lack)));
    return proofs;
  }
}
