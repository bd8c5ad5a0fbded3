package plumbline.finding;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * One difference between design and effective settings.
 *
 * @param rule id of the rule that gives it
 * @param severity how much it hurts
 * @param place the end that departs from its role; empty where there is none
 * @param portOrder numeric sort key of the port; empty where the finding has none
 * @param others the other ends
 * @param vlans the VLANs it is about
 * @param subject what is behind the place, in words, stable over runs; may be empty
 * @param designed what the design says, in words
 * @param found what the config says, in words
 * @param consequence one or two plain sentences: what stops working, or will
 * @param evidence what it rests on, in the order of the text
 * @param design where the design says so
 * @param affected everything that it takes, now or at the next single failure, worst first; what
 *     the consequence says in short
 */
public record Finding(
    String rule,
    Severity severity,
    Optional<Place> place,
    Optional<plumbline.port.PortName> portOrder,
    List<Place> others,
    VlanSet vlans,
    String subject,
    String designed,
    String found,
    String consequence,
    List<Proof> evidence,
    Optional<Position> design,
    List<Affected> affected) {
  /** Copies the lists. */
  public Finding {
    Objects.requireNonNull(rule);
    others = List.copyOf(others);
    evidence = List.copyOf(evidence);
    affected = List.copyOf(affected);
  }

  /** A finding of which nothing is told but its consequence. */
  public Finding(
      String rule,
      Severity severity,
      Optional<Place> place,
      Optional<plumbline.port.PortName> portOrder,
      List<Place> others,
      VlanSet vlans,
      String subject,
      String designed,
      String found,
      String consequence,
      List<Proof> evidence,
      Optional<Position> design) {
    this(
        rule,
        severity,
        place,
        portOrder,
        others,
        vlans,
        subject,
        designed,
        found,
        consequence,
        evidence,
        design,
        List.of());
  }

  /** The same with what it takes, told in more sentences, and at least as severe. */
  public Finding taking(List<Affected> those, String sentences, Severity least) {
    return new Finding(
        rule,
        severity.reaches(least) ? severity : least,
        place,
        portOrder,
        others,
        vlans,
        subject,
        designed,
        found,
        consequence + " " + sentences,
        evidence,
        design,
        those);
  }

  /** {@code rule/switch/port/subject}, readable and stable: no line numbers, no VLANs. */
  public String id() {
    return rule
        + "/"
        + place.map(Place::switchName).orElse("")
        + "/"
        + place.flatMap(Place::port).orElse("")
        + "/"
        + subject;
  }

  /** The switch, or nothing where the finding has no place. */
  public String switchName() {
    return place.map(Place::switchName).orElse("");
  }
}
