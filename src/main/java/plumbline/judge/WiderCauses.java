package plumbline.judge;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.rules.Across;
import plumbline.rules.Group;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.rules.Subject;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.vlan.VlanSet;

/**
 * Takes away what is said of a bundle's member, a pair or a link and goes by itself once a finding
 * of one of its ports is repaired, and tells it there. What is left of one pair or link is one
 * finding, at a port that is shut with the finding that says so.
 */
final class WiderCauses {
  /** What a finding about the mode of a port leaves open. */
  private static final Set<Key<?>> OF_MODE =
      Set.of(
          Keys.MODE,
          Keys.ACCESS_VLAN,
          Keys.VOICE_VLAN,
          Keys.NATIVE_VLAN,
          Keys.NATIVE_TAGGING,
          Keys.ALLOWED,
          Keys.NEGOTIATE,
          Keys.FAST_START,
          Keys.BPDU_GUARD,
          Keys.BPDU_FILTER);

  /** The settings that a rule's finding about one port can be about. */
  private static final Map<String, Set<Key<?>>> SPEAKS_OF =
      Map.ofEntries(
          Map.entry("access-vlan-differs", Set.of(Keys.ACCESS_VLAN)),
          Map.entry("bpdu-filter-set", Set.of(Keys.BPDU_FILTER, Keys.BPDU_GUARD)),
          Map.entry("bpdu-guard-missing", Set.of(Keys.BPDU_GUARD)),
          Map.entry("bundle-differs", Set.of(Keys.BUNDLE)),
          Map.entry("bundle-member-differs", Set.of(Keys.SPEED, Keys.DUPLEX)),
          Map.entry("fast-start-missing", Set.of(Keys.FAST_START, Keys.BPDU_GUARD)),
          Map.entry("fast-start-without-effect", Set.of(Keys.FAST_START, Keys.BPDU_GUARD)),
          Map.entry("mode-differs", OF_MODE),
          Map.entry("mtu-differs", Set.of(Keys.MTU)),
          Map.entry("native-vlan-differs", Set.of(Keys.NATIVE_VLAN)),
          Map.entry(
              "native-vlan-in-use", Set.of(Keys.NATIVE_VLAN, Keys.ACCESS_VLAN, Keys.VOICE_VLAN)),
          Map.entry("negotiation-open", OF_MODE),
          Map.entry("port-security-on-uplink", Set.of(Keys.PORT_SECURITY)),
          Map.entry(
              "port-setting-differs",
              Set.of(
                  Keys.BPDU_FILTER,
                  Keys.BPDU_GUARD,
                  Keys.LOOP_GUARD,
                  Keys.NATIVE_TAGGING,
                  Keys.NEGOTIATE,
                  Keys.PORT_SECURITY,
                  Keys.ROOT_GUARD,
                  Keys.STORM_CONTROL)),
          Map.entry("qos-differs", Set.of(Keys.QOS_TRUST, Keys.POLICY_IN, Keys.POLICY_OUT)),
          Map.entry("speed-duplex-differs", Set.of(Keys.SPEED, Keys.DUPLEX)),
          Map.entry("tagged-vlan-extra", Set.of(Keys.ALLOWED)),
          Map.entry("tagged-vlan-missing", Set.of(Keys.ALLOWED)),
          Map.entry("voice-vlan-differs", Set.of(Keys.VOICE_VLAN)));

  /** The rules that speak although no role names what they are about. */
  private static final Set<String> KEYLESS =
      Set.of(
          "bpdu-filter-set",
          "bundle-member-differs",
          "native-vlan-in-use",
          "negotiation-open",
          "port-security-on-uplink");

  /** What a rule about both ends says, and the rule that says the same of the end that departs. */
  private static final Map<String, String> SAYS_ITSELF =
      Map.of("link-vlans-differ", "tagged-vlan-missing", "link-mtu-differs", "mtu-differs");

  private final List<Spoken> left;

  /** Places of candidates and of gaps in {@link #left}, for findings in each to be found fast. */
  private final Map<Place, List<Integer>> at = new HashMap<>();

  private WiderCauses(List<Spoken> said) {
    this.left = new ArrayList<>(said);
    for (int index = 0; index < left.size(); index++) {
      int here = index;
      left.get(index)
          .outcome()
          .subject()
          .place()
          .ifPresent(place -> at.computeIfAbsent(place, any -> new ArrayList<>()).add(here));
    }
  }

  /** What is left, in the same order. */
  static List<Spoken> settled(List<Spoken> said) {
    if (said.stream().noneMatch(WiderCauses::isWider)) {
      return said;
    }
    WiderCauses causes = new WiderCauses(said);
    for (Group group : List.of(Group.BUNDLE, Group.PAIR, Group.LINK)) {
      causes.settle(group);
    }
    return causes.result();
  }

  private static boolean isWider(Spoken one) {
    return isOfTwo(one)
        || (one.outcome() instanceof Candidate candidate && candidate.across().isPresent());
  }

  private static boolean isOfTwo(Spoken one) {
    return one.rule().group() == Group.PAIR || one.rule().group() == Group.LINK;
  }

  private void settle(Group group) {
    for (int index = 0; index < left.size(); index++) {
      Spoken one = left.get(index);
      if (one == null || one.rule().group() != group) {
        continue;
      }
      if (one.outcome() instanceof Candidate candidate) {
        settle(index, candidate);
      } else if (isOfTwo(one) && one.outcome() instanceof Undecided open && isTold(open)) {
        left.set(index, null);
      }
    }
  }

  private void settle(int index, Candidate candidate) {
    List<Integer> causes = candidate.across().map(how -> causes(candidate, how)).orElse(List.of());
    if (causes.isEmpty()) {
      return;
    }
    Spoken wider = left.get(index);
    left.set(index, null);
    for (int cause : causes) {
      Spoken told = left.get(cause);
      Candidate known = (Candidate) told.outcome();
      boolean said =
          known.consequence().contains(candidate.consequence())
              || SAYS_ITSELF.getOrDefault(wider.rule().id(), "").equals(told.rule().id());
      Candidate carrying = said ? known : known.followedBy(candidate.consequence());
      left.set(cause, new Spoken(told.rule(), carrying.at(joint(told, wider))));
    }
  }

  /** Causes that only together bring something about each carry it, at its severity. */
  private static Severity joint(Spoken cause, Spoken wider) {
    Severity own = severity(cause);
    Severity other = severity(wider);
    return own.reaches(other) ? own : other;
  }

  private static Severity severity(Spoken one) {
    return ((Candidate) one.outcome()).severity().orElse(one.rule().floor());
  }

  /** The findings that together take all of the difference away, or none. */
  private List<Integer> causes(Candidate candidate, Across how) {
    List<Integer> causes = new ArrayList<>();
    VlanSet open = candidate.vlans();
    for (Place place : how.ports()) {
      for (int index : at.getOrDefault(place, List.of())) {
        Spoken one = left.get(index);
        if (one != null
            && !isOfTwo(one)
            && one.outcome() instanceof Candidate cause
            && speaksOf(one.rule().id(), how)
            && isAbout(one.rule().id(), cause, candidate)) {
          causes.add(index);
          open = hasList(one.rule().id()) ? open.minus(cause.vlans()) : VlanSet.NONE;
        }
      }
    }
    return open.isEmpty() || !how.settings().contains(Keys.ALLOWED) ? causes : List.of();
  }

  private static boolean speaksOf(String rule, Across how) {
    return (how.byRole() || KEYLESS.contains(rule))
        && !Collections.disjoint(SPEAKS_OF.getOrDefault(rule, Set.of()), how.settings());
  }

  /** Findings about a trunk's list are causes of what they list only. */
  private static boolean isAbout(String rule, Candidate cause, Candidate candidate) {
    return !hasList(rule) || cause.vlans().intersects(candidate.vlans());
  }

  private static boolean hasList(String rule) {
    return rule.equals("tagged-vlan-missing") || rule.equals("tagged-vlan-extra");
  }

  /** Whether a rule about the port itself says that the same is left open there. */
  private boolean isTold(Undecided open) {
    return open.subject().place().stream()
        .flatMap(place -> at.getOrDefault(place, List.of()).stream())
        .map(left::get)
        .anyMatch(
            one ->
                one != null
                    && !isOfTwo(one)
                    && one.outcome() instanceof Undecided known
                    && known.why().equals(open.why()));
  }

  private List<Spoken> result() {
    List<Spoken> result = new ArrayList<>();
    Map<Object, Integer> merged = new HashMap<>();
    for (Spoken one : left) {
      if (one == null) {
        continue;
      }
      if (!isOfTwo(one) || !(one.outcome() instanceof Candidate candidate)) {
        result.add(one);
        continue;
      }
      Candidate placed = placed(candidate);
      Integer known = merged.putIfAbsent(List.of(one.rule().id(), placed.subject()), result.size());
      if (known == null) {
        result.add(new Spoken(one.rule(), placed));
      } else {
        Spoken first = result.get(known);
        result.set(
            known,
            new Spoken(
                one.rule(), Merged.of((Candidate) first.outcome(), placed, one.rule().floor())));
      }
    }
    return result;
  }

  /** At a shut port nothing but that is told: what differs besides is listed there. */
  private Candidate placed(Candidate candidate) {
    List<Place> ends = new ArrayList<>(candidate.subject().place().stream().toList());
    ends.addAll(candidate.others());
    Optional<Subject> shut =
        ends.stream()
            .flatMap(place -> at.getOrDefault(place, List.of()).stream())
            .map(left::get)
            .filter(one -> one != null && one.rule().id().equals(Judge.SHUT))
            .filter(one -> one.outcome() instanceof Candidate)
            .map(one -> one.outcome().subject())
            .findFirst();
    Optional<PortName> port = shut.flatMap(Subject::port);
    return port.isEmpty()
        ? candidate
        : candidate.movedTo(new Subject(shut.get().place(), port, candidate.subject().words()));
  }
}
