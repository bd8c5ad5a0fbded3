package plumbline.rules;

/** A rule about the waivers that a run was given. */
public non-sealed interface WaiverRule extends Rule {
  /** Judges one waiver. */
  void check(WaiverCase waiver, Outcomes outcomes);
}
