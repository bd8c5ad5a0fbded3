package plumbline.setting;

import plumbline.vlan.VlanSet;

/**
 * The VLANs that a port carries, tagged or untagged.
 *
 * @param certain carried for certain
 * @param possible carried for certain or perhaps; contains {@code certain}
 */
public record Carried(VlanSet certain, VlanSet possible) {
  /** Refuses a certainty that is not possible. */
  public Carried {
    if (!possible.containsAll(certain)) {
      throw new IllegalArgumentException("what is certain must be possible");
    }
  }

  /** Carries exactly these. */
  public static Carried exactly(VlanSet vlans) {
    return new Carried(vlans, vlans);
  }

  /** The VLANs of which the text does not tell whether they are carried. */
  public VlanSet undecided() {
    return possible.minus(certain);
  }

  @Override
  public String toString() {
    return undecided().isEmpty() ? certain.toString() : certain + " (perhaps " + undecided() + ")";
  }
}
