package plumbline.window;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.ResultOrder;
import plumbline.finding.Severity;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.vlan.VlanSet;

/**
 * The findings of the audits before and after a window, by id and VLANs: each VLAN of a finding is
 * cleared, standing or introduced, and no two of these.
 */
final class FindingComparison {
  /** Rules that say in several ways that a VLAN is not there; one of them hides the others. */
  private static final Set<String> VLAN_LACKING =
      Set.of("tagged-vlan-missing", "vlan-not-created", "vlan-inactive");

  private final Set<String> uncertainBefore;
  private final Set<String> uncertainAfter;

  /**
   * Takes the switches of which a side does not tell all.
   *
   * @param uncertainBefore names of switches whose text before is missing or not whole
   * @param uncertainAfter names of switches whose text after is missing or not whole
   */
  FindingComparison(Set<String> uncertainBefore, Set<String> uncertainAfter) {
    this.uncertainBefore = Set.copyOf(uncertainBefore);
    this.uncertainAfter = Set.copyOf(uncertainAfter);
  }

  /** Compares; by switch, port (numeric), rule, id. */
  List<WindowFinding> of(List<Finding> before, List<Finding> after) {
    Map<String, Finding> old = byId(before);
    Map<String, Finding> now = byId(after);
    List<WindowFinding> all = new ArrayList<>();
    now.forEach(
        (id, finding) ->
            all.add(
                old.containsKey(id)
                    ? both(old.get(id), finding)
                    : of(
                        finding, isAbout(finding, uncertainBefore) ? State.UNCHECKED : State.NEW)));
    old.forEach(
        (id, finding) -> {
          if (!now.containsKey(id)) {
            boolean uncertain = isAbout(finding, uncertainAfter);
            all.add(of(finding, uncertain ? State.UNCHECKED : State.CLEARED));
          }
        });
    all.sort(Comparator.comparing(WindowFinding::finding, ResultOrder.BY_PLACE));
    return all;
  }

  private static Map<String, Finding> byId(List<Finding> findings) {
    Map<String, Finding> byId = new LinkedHashMap<>();
    findings.forEach(finding -> byId.putIfAbsent(finding.id(), finding));
    return byId;
  }

  private static WindowFinding of(Finding finding, State state) {
    return new WindowFinding(finding, state, VlanSet.NONE, VlanSet.NONE, false, false);
  }

  private static WindowFinding both(Finding was, Finding is) {
    boolean doubted = was.severity() == Severity.UNVERIFIED;
    if (is.severity() == Severity.UNVERIFIED && !doubted) {
      return of(is, State.UNCHECKED);
    }
    if (was.severity() == is.severity() && was.vlans().equals(is.vlans())) {
      return of(is, State.STANDING);
    }
    return new WindowFinding(
        is,
        State.CHANGED,
        is.vlans().minus(was.vlans()),
        was.vlans().minus(is.vlans()),
        !doubted && is.severity().compareTo(was.severity()) < 0,
        false);
  }

  private static boolean isAbout(Finding finding, Set<String> switches) {
    return Stream.concat(finding.place().stream(), finding.others().stream())
        .map(Place::switchName)
        .anyMatch(switches::contains);
  }

  /**
   * The same findings; those that are new are marked as not done where they say of a VLAN what was
   * said of the whole switch before: it was lacking on the port all the time.
   */
  static List<WindowFinding> withUncovered(List<WindowFinding> all) {
    return all.stream()
        .map(
            one ->
                one.state() == State.NEW && all.stream().anyMatch(other -> covered(other, one))
                    ? notDone(one)
                    : one)
        .toList();
  }

  private static boolean covered(WindowFinding gone, WindowFinding fresh) {
    VlanSet cleared = cleared(gone);
    return !gone.finding().id().equals(fresh.finding().id())
        && VLAN_LACKING.contains(gone.finding().rule())
        && VLAN_LACKING.contains(fresh.finding().rule())
        && gone.finding().switchName().equals(fresh.finding().switchName())
        && gone.finding().portOrder().isEmpty()
        && cleared.containsAll(fresh.finding().vlans())
        && !fresh.finding().vlans().isEmpty();
  }

  private static VlanSet cleared(WindowFinding gone) {
    return gone.state() == State.CLEARED ? gone.finding().vlans() : gone.clearedVlans();
  }

  private static WindowFinding notDone(WindowFinding one) {
    return new WindowFinding(
        one.finding(), one.state(), one.newVlans(), one.clearedVlans(), one.worse(), true);
  }

  /**
   * The same findings; of those that stand, the ones that were to be cleared are marked: where the
   * same rule was cleared of the same VLAN elsewhere, or, of a finding about no VLAN, at the port
   * that belongs with this one.
   */
  static List<WindowFinding> withNotDone(List<WindowFinding> all, Partners partners) {
    return all.stream()
        .map(
            one ->
                isStanding(one) && all.stream().anyMatch(other -> clears(other, one, partners))
                    ? notDone(one)
                    : one)
        .toList();
  }

  private static boolean isStanding(WindowFinding one) {
    return (one.state() == State.STANDING || one.state() == State.CHANGED)
        && one.finding().severity() != Severity.UNVERIFIED;
  }

  private static boolean clears(WindowFinding gone, WindowFinding stands, Partners partners) {
    boolean whole = gone.state() == State.CLEARED;
    VlanSet cleared = cleared(gone);
    if ((!whole && cleared.isEmpty())
        || gone.finding().id().equals(stands.finding().id())
        || !isSameRule(gone.finding(), stands.finding())) {
      return false;
    }
    VlanSet left = stands.finding().vlans().minus(stands.newVlans());
    boolean aboutNone = left.isEmpty() && cleared.isEmpty();
    return aboutNone ? partners.are(gone.finding(), stands.finding()) : left.intersects(cleared);
  }

  private static boolean isSameRule(Finding one, Finding other) {
    return one.rule().equals(other.rule())
        || VLAN_LACKING.containsAll(new HashSet<>(List.of(one.rule(), other.rule())));
  }
}
