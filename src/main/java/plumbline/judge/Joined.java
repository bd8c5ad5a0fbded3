package plumbline.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.rules.Across;
import plumbline.rules.Group;
import plumbline.rules.Outcome.Candidate;

/**
 * Tells that VLANs become one broadcast domain with the finding that says why a link joins them:
 * that its ends differ, or what of it goes with a finding of a port or a switch. Where nobody says
 * why, it stays a finding of its own.
 */
final class Joined {
  private static final String JOINED = "vlans-joined";

  /** What says that the two ends take untagged frames for different VLANs. */
  private static final Set<String> OF_PORT =
      Set.of(
          "access-vlan-differs",
          "mode-differs",
          "native-vlan-differs",
          "native-vlan-in-use",
          "negotiation-open",
          "port-setting-differs");

  private static final Set<String> OF_LINK = Set.of("link-mode-differs", "link-native-differs");

  /** What says why no spanning tree notices it. */
  private static final Set<String> OF_TREE =
      Set.of("bpdu-filter-set", "spanning-tree-mode-differs", "spanning-tree-off");

  private Joined() {}

  /** The same, with each such consequence told where it belongs. */
  static List<Spoken> told(List<Spoken> said) {
    List<Spoken> left = new ArrayList<>(said);
    for (Spoken one : said) {
      if (one.rule().id().equals(JOINED) && one.outcome() instanceof Candidate joined) {
        List<Integer> causes = causes(left, joined);
        if (!causes.isEmpty()) {
          causes.forEach(cause -> left.set(cause, carrying(left.get(cause), one)));
          left.remove(one);
        }
      }
    }
    return left;
  }

  private static List<Integer> causes(List<Spoken> said, Candidate joined) {
    Across how = joined.across().orElseThrow();
    List<Integer> link = at(said, joined, OF_LINK, how.ports());
    if (!link.isEmpty()) {
      return link;
    }
    // a port or a switch that is repaired takes it away, or it is none of its business
    List<Integer> port = how.byRole() ? at(said, joined, OF_PORT, how.ports()) : List.of();
    return !port.isEmpty() || !how.byRole() ? port : at(said, joined, OF_TREE, how.ports());
  }

  private static List<Integer> at(
      List<Spoken> said, Candidate joined, Set<String> rules, List<Place> places) {
    List<Integer> found = new ArrayList<>();
    for (int index = 0; index < said.size(); index++) {
      Spoken one = said.get(index);
      if (rules.contains(one.rule().id())
          && one.outcome() instanceof Candidate cause
          && cause.subject().place().filter(places::contains).isPresent()
          && (one.rule().group() != Group.LINK || isOfSameLink(cause, joined))) {
        found.add(index);
      }
    }
    return found;
  }

  /** Two links may end on one port. */
  private static boolean isOfSameLink(Candidate cause, Candidate joined) {
    List<Place> ends = new ArrayList<>(joined.others());
    ends.addAll(joined.subject().place().stream().toList());
    return ends.containsAll(cause.others());
  }

  private static Spoken carrying(Spoken cause, Spoken joined) {
    Candidate told = (Candidate) cause.outcome();
    Candidate consequence = (Candidate) joined.outcome();
    Severity own = told.severity().orElse(cause.rule().floor());
    Severity joint = consequence.severity().orElse(joined.rule().floor());
    Candidate with = told.followedBy(consequence.consequence());
    return new Spoken(cause.rule(), own.reaches(joint) ? with : with.at(joint));
  }
}
