package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.setting.PortMode;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** What a rule says of one subject. */
public sealed interface Outcome {
  /** What it is about. */
  Subject subject();

  /**
   * Design and effective settings agree.
   *
   * @param subject what it is about
   */
  record Conforms(Subject subject) implements Outcome {}

  /**
   * They differ; a finding unless another cause explains it.
   *
   * @param subject what it is about
   * @param severity the severity, where it is not the rule's floor
   * @param vlans the VLANs it is about
   * @param designed what the design says
   * @param found what the config says
   * @param consequence one or two plain sentences
   * @param proofs what it rests on, in the order of the text
   * @param design where the design says so
   * @param others other ends
   * @param needsMode the mode in which the setting has an effect, where it is bound to one
   * @param spoilsMode the mode whose settings have no effect because of this
   * @param derived whether it goes by itself once the switch has the VLANs and the other ends carry
   *     them
   * @param across what goes with it when findings about single ports are repaired
   */
  record Candidate(
      Subject subject,
      Optional<Severity> severity,
      VlanSet vlans,
      String designed,
      String found,
      String consequence,
      List<Proof> proofs,
      Optional<Position> design,
      List<Place> others,
      Optional<PortMode> needsMode,
      Optional<PortMode> spoilsMode,
      boolean derived,
      Optional<Across> across)
      implements Outcome {
    /** Copies the lists. */
    public Candidate {
      proofs = List.copyOf(proofs);
      others = List.copyOf(others);
    }

    /** A difference at the rule's floor that is about no VLAN in particular. */
    public static Candidate of(
        Subject subject,
        String designed,
        String found,
        String consequence,
        List<Proof> proofs,
        Optional<Position> design) {
      return new Candidate(
          subject,
          Optional.empty(),
          VlanSet.NONE,
          designed,
          found,
          consequence,
          proofs,
          design,
          List.of(),
          Optional.empty(),
          Optional.empty(),
          false,
          Optional.empty());
    }

    /** The same, about these VLANs. */
    public Candidate about(VlanSet those) {
      return with(severity, those, consequence, others, needsMode, spoilsMode);
    }

    /** The same with a severity of its own. */
    public Candidate at(Severity own) {
      return with(Optional.of(own), vlans, consequence, others, needsMode, spoilsMode);
    }

    /** The same, about a setting that has an effect in this mode only. */
    public Candidate boundTo(PortMode mode) {
      return with(severity, vlans, consequence, others, Optional.of(mode), spoilsMode);
    }

    /** The same, and settings of this mode have no effect because of it. */
    public Candidate spoiling(PortMode mode) {
      return with(severity, vlans, consequence, others, needsMode, Optional.of(mode));
    }

    /** The same with one more sentence of consequence. */
    public Candidate followedBy(String sentence) {
      return with(severity, vlans, consequence + " " + sentence, others, needsMode, spoilsMode);
    }

    /** The same with other ends. */
    public Candidate beside(List<Place> ends) {
      return with(severity, vlans, consequence, ends, needsMode, spoilsMode);
    }

    /** The same, a mere consequence of what the switch's VLANs or the other ends lack. */
    public Candidate derivedFrom(List<Place> ends) {
      return new Candidate(
          subject,
          severity,
          vlans,
          designed,
          found,
          consequence,
          proofs,
          design,
          ends,
          needsMode,
          spoilsMode,
          true,
          across);
    }

    /** The same, gone once what single ports of it depart in is repaired. */
    public Candidate across(Across ports) {
      return new Candidate(
          subject,
          severity,
          vlans,
          designed,
          found,
          consequence,
          proofs,
          design,
          others,
          needsMode,
          spoilsMode,
          derived,
          Optional.of(ports));
    }

    /** The same at another place. */
    public Candidate movedTo(Subject other) {
      return new Candidate(
          other,
          severity,
          vlans,
          designed,
          found,
          consequence,
          proofs,
          design,
          others,
          needsMode,
          spoilsMode,
          derived,
          across);
    }

    private Candidate with(
        Optional<Severity> itsSeverity,
        VlanSet itsVlans,
        String itsConsequence,
        List<Place> itsOthers,
        Optional<PortMode> itsNeed,
        Optional<PortMode> itsSpoil) {
      return new Candidate(
          subject,
          itsSeverity,
          itsVlans,
          designed,
          found,
          itsConsequence,
          proofs,
          design,
          itsOthers,
          itsNeed,
          itsSpoil,
          derived,
          across);
    }
  }

  /**
   * The text cannot decide it.
   *
   * @param subject what it is about
   * @param cause what kind of gap leaves it open
   * @param why a clause for the reader
   * @param designed what the design says
   * @param proofs the lines that leave it open
   * @param design where the design says so
   * @param needsMode the mode in which the setting has an effect, where it is bound to one
   */
  record Undecided(
      Subject subject,
      Cause cause,
      String why,
      String designed,
      List<Proof> proofs,
      Optional<Position> design,
      Optional<PortMode> needsMode)
      implements Outcome {
    /** Copies the list. */
    public Undecided {
      proofs = List.copyOf(proofs);
    }

    /** A gap that no wrong mode makes meaningless. */
    public static Undecided of(
        Subject subject,
        Cause cause,
        String why,
        String designed,
        List<Proof> proofs,
        Optional<Position> design) {
      return new Undecided(subject, cause, why, designed, proofs, design, Optional.empty());
    }

    /** The same gap of another kind, unless the text as a whole leaves it open anyway. */
    public Undecided because(Cause other) {
      return cause == Cause.OWN
          ? new Undecided(subject, other, why, designed, proofs, design, needsMode)
          : this;
    }

    /** The same, about a setting that has an effect in this mode only. */
    public Undecided boundTo(PortMode mode) {
      return new Undecided(subject, cause, why, designed, proofs, design, Optional.of(mode));
    }

    /** Kinds of gap: the wide ones are reported once for the switch, not at every port. */
    public enum Cause {
      /** A line of the port itself, or the lack of its base. */
      OWN,
      /** The port's mode is open, which decides it; the rules about modes report that. */
      MODE,
      /**
       * The text as a whole: a script, in which an absent line is no default, a lost header, or a
       * default that differs between the families of the dialect.
       */
      TEXT,
      /** The text is cut short. */
      CUT,
      /** The VLAN list of the switch is not in the text. */
      VLAN_DATABASE
    }
  }
}
