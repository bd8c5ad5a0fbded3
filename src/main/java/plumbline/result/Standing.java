package plumbline.result;

import java.time.LocalDate;
import java.util.Optional;
import plumbline.finding.Severity;
import plumbline.vlan.VlanSet;

/**
 * What became of one finding since the run before.
 *
 * @param state in one word
 * @param since day of the first run that had it without a break, UTC
 * @param newVlans VLANs that it was not about before
 * @param before what it was when it was last decided, where that is not what it is now
 * @param clearedBy what took it away, where it is cleared
 * @param why for an unchecked one, a clause why it was not told; otherwise empty
 */
public record Standing(
    State state,
    LocalDate since,
    VlanSet newVlans,
    Optional<Before> before,
    Optional<ClearedBy> clearedBy,
    String why) {
  /**
   * What a finding was.
   *
   * @param severity its severity
   * @param vlans the VLANs that it was about
   */
  public record Before(Severity severity, VlanSet vlans) {}

  /** A finding that no run had before. */
  public static Standing fresh(LocalDate today) {
    return new Standing(State.NEW, today, VlanSet.NONE, Optional.empty(), Optional.empty(), "");
  }

  /** A finding that is gone. */
  public static Standing cleared(LocalDate since, ClearedBy by) {
    return new Standing(State.CLEARED, since, VlanSet.NONE, Optional.empty(), Optional.of(by), "");
  }

  /** A finding that may still be there. */
  public static Standing unchecked(LocalDate since, String why) {
    return new Standing(
        State.UNCHECKED, since, VlanSet.NONE, Optional.empty(), Optional.empty(), why);
  }
}
