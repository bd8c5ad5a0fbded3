package plumbline.result;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.vlan.VlanSet;

/**
 * What waivers cover in a run.
 *
 * @param file the file of waivers, as typed
 * @param sha256 of that file, lower-case hexadecimal
 * @param count how many waivers it holds
 * @param waived findings of this run that are covered wholly, outside all counts; by switch, port
 *     (numeric), rule, id
 * @param acceptances what is covered, by id of the finding: all of {@code waived}, and those of the
 *     open ones of which a part is covered, or nothing for a reason that is told
 * @param ending waivers in force that end soon, the next first
 * @param undecided how many waivers fit no finding of this run, which could not check all that they
 *     may be for
 */
public record Accepted(
    String file,
    String sha256,
    int count,
    List<Finding> waived,
    Map<String, Acceptance> acceptances,
    List<Waiver> ending,
    int undecided) {
  /** Waivers whose last day is at most so many days ahead are listed. */
  public static final int SOON_DAYS = 30;

  /** Copies the collections. */
  public Accepted {
    waived = List.copyOf(waived);
    acceptances = Map.copyOf(acceptances);
    ending = List.copyOf(ending);
  }

  /**
   * What waivers cover of one finding.
   *
   * @param whole whether that is all of it
   * @param vlans the VLANs that are covered; none for a finding that is about none
   * @param by the waivers that cover it, in the order of their file
   * @param tooLow a waiver that would cover it if it had been accepted at the severity that the
   *     finding has now
   */
  public record Acceptance(boolean whole, VlanSet vlans, List<Waiver> by, Optional<Waiver> tooLow) {
    /** Copies the list. */
    public Acceptance {
      by = List.copyOf(by);
    }
  }

  /** What is covered of a finding, if anything is told of it. */
  public Optional<Acceptance> of(Finding finding) {
    return Optional.ofNullable(acceptances.get(finding.id()));
  }
}
