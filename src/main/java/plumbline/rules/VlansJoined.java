package plumbline.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.DesignVlan;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.design.RoleKeys;
import plumbline.effective.SpanningTree;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Joint;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Domains.Pair;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Declared VLANs that a link makes one broadcast domain. */
final class VlansJoined implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "vlans-joined",
          Group.FABRIC,
          Severity.WEAKENS,
          "a link makes two VLANs one broadcast domain",
          "IEEE 802.1Q: a BPDU of its trees names no VLAN; common practice",
          Set.of("links.ends against each other"));

  private static final String DESIGNED = "each VLAN a broadcast domain of its own";

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    Fabric found = network.sides().found();
    IdentityHashMap<FabricLink, LinkCase> links = new IdentityHashMap<>();
    LinkCase.of(found, network.switches()).forEach(link -> links.put(link.link(), link));
    Map<Integer, Joint> joints = new HashMap<>();
    Joint.in(found).forEach(joint -> joints.put(joint.link(), joint));
    Domains domains =
        new Domains(found, joints.values().stream().filter(VlansJoined::isSure).toList());
    Set<Integer> staying =
        Joint.in(network.sides().repaired()).stream()
            .filter(joint -> joint.unnoticed() != Truth.NO)
            .map(Joint::link)
            .collect(Collectors.toSet());
    for (int index = 0; index < found.links().size(); index++) {
      Joint joint = joints.get(index);
      LinkCase link = links.get(found.links().get(index));
      if (link != null && joint != null) {
        judge(network, domains, link, joint, staying.contains(index)).ifPresent(outcomes::add);
      } else if (link != null && isDecided(link)) {
        outcomes.conforms(link.first().subject());
      }
    }
  }

  /** Whether a link joins its two VLANs for certain, unless a tree blocks it. */
  private static boolean isSure(Joint joint) {
    return joint.up() == Truth.YES && joint.unnoticed() == Truth.YES;
  }

  /** Whether both ends are known to have one VLAN for untagged frames, or none. */
  private static boolean isDecided(LinkCase link) {
    return Stream.of(link.first(), link.second())
        .allMatch(
            end -> {
              Setting<PortMode> mode = link.mode(end);
              return mode.value()
                  .filter(one -> end.settings().orElseThrow().untaggedIn(one).isDecided())
                  .isPresent();
            });
  }

  private static Optional<Outcome> judge(
      FabricCase network, Domains domains, LinkCase link, Joint joint, boolean stays) {
    if (joint.unnoticed() == Truth.NO) {
      return Optional.of(new Outcome.Conforms(link.first().subject()));
    }
    if (isSure(joint)) {
      List<Pair> pairs = domains.pairs(joint);
      return pairs.isEmpty()
          ? Optional.empty()
          : Optional.of(candidate(domains, link, joint, pairs, stays));
    }
    boolean declared =
        Stream.of(joint.vlans().first(), joint.vlans().second())
            .allMatch(vlan -> network.design().vlan(vlan).isPresent());
    boolean alike = link.bothIn(PortMode.TRUNK) || link.bothIn(PortMode.ACCESS);
    boolean elsewhere = network.told().test(alike ? "link-native-differs" : "link-mode-differs");
    return declared && !elsewhere && joint.up() == Truth.YES ? undecided(link) : Optional.empty();
  }

  private static Candidate candidate(
      Domains domains, LinkCase link, Joint joint, List<Pair> pairs, boolean stays) {
    PortCase near = departs(link);
    PortCase far = link.ends().other(near);
    List<String> broken = joint.forwards() == Truth.YES ? broken(domains, joint, pairs) : List.of();
    List<String> vlans =
        pairs.stream()
            .flatMap(pair -> pair.both().stream())
            .sorted(Comparator.comparing(DesignVlan::id))
            .map(DesignVlan::toString)
            .distinct()
            .toList();
    List<String> so = new ArrayList<>();
    so.add(
        Words.list(vlans)
            + when(joint.forwards())
            + ": a loop, a flood or a wrong address in one reaches "
            + (vlans.size() == 2 ? "the other." : "the others."));
    so.addAll(broken);
    so.addAll(lived(domains, pairs));
    Set<Integer> numbers = Domains.numbers(pairs);
    Candidate candidate =
        Candidate.of(
                near.subject(),
                DESIGNED,
                untagged(link, near, joint)
                    + "; "
                    + untagged(link, far, joint)
                    + " at "
                    + TwoEnds.name(far)
                    + ", which no spanning tree notices",
                String.join(" ", so),
                Stream.concat(proofs(link, near), proofs(link, far)).distinct().toList(),
                Optional.of(link.design().at()))
            .about(VlanSet.of(numbers.stream().mapToInt(Integer::intValue).toArray()))
            .beside(far.subject().place().stream().toList())
            .across(
                new Across(
                    Set.of(Keys.NATIVE_VLAN, Keys.ACCESS_VLAN, Keys.MODE, Keys.BPDU_FILTER),
                    places(link),
                    !stays));
    return broken.isEmpty() ? candidate : candidate.at(Severity.BREAKS);
  }

  private static String when(Truth forwards) {
    return switch (forwards) {
      case YES -> " are one broadcast domain";
      case NO ->
          " become one broadcast domain when the link takes over, which spanning tree blocks now";
      case UNKNOWN -> " are one broadcast domain unless spanning tree blocks the link";
    };
  }

  /** The promises that it breaks now. */
  private static List<String> broken(Domains domains, Joint joint, List<Pair> pairs) {
    List<String> broken = new ArrayList<>();
    for (Pair pair : pairs) {
      DesignVlan one = pair.one();
      DesignVlan other = pair.other();
      if (one.apartFrom().contains(other.name()) || other.apartFrom().contains(one.name())) {
        broken.add(one + " and " + other + " must stay apart.");
      }
      for (DesignVlan closed : pair.both()) {
        DesignVlan open = closed.equals(one) ? other : one;
        if (closed.gateway() == GatewayNeed.FORBIDDEN
            && !closed.unused()
            && domains.leadsToGateway(joint, closed, open)) {
          broken.add(closed + ", which must have no gateway, reaches that of " + open + ".");
        }
      }
    }
    return broken;
  }

  /**
   * Nobody lives in an unused VLAN, so that nothing that works now is broken by who lives there.
   */
  private static List<String> lived(Domains domains, List<Pair> pairs) {
    List<String> lived = new ArrayList<>();
    for (Pair pair : pairs) {
      for (DesignVlan unused : pair.both()) {
        DesignVlan other = unused.equals(pair.one()) ? pair.other() : pair.one();
        if (unused.unused() && !other.unused() && domains.isInhabited(other)) {
          lived.add(
              "Hosts of "
                  + other
                  + " are in "
                  + unused
                  + " too, in which none may live: whoever is plugged in there is among them.");
        }
      }
    }
    return lived;
  }

  /** The end that departs from its role, else the first. */
  private static PortCase departs(LinkCase link) {
    return departs(link.second()) && !departs(link.first()) ? link.second() : link.first();
  }

  private static boolean departs(PortCase end) {
    return end.wish(RoleKeys.NATIVE)
        .filter(wish -> !end.get(Keys.NATIVE_VLAN).is(wish.value().id()))
        .isPresent();
  }

  private static String untagged(LinkCase link, PortCase end, Joint joint) {
    boolean trunk = link.mode(end).is(PortMode.TRUNK);
    return Words.role(
        trunk ? "native" : "access",
        end.design(),
        end.equals(link.first()) ? joint.vlans().first() : joint.vlans().second());
  }

  /** The VLAN of untagged frames, and why no tree notices what arrives in another. */
  private static Stream<Proof> proofs(LinkCase link, PortCase end) {
    SpanningTree tree = end.at().settings().tree();
    Setting<VlanId> vlan =
        end.get(link.mode(end).is(PortMode.TRUNK) ? Keys.NATIVE_VLAN : Keys.ACCESS_VLAN);
    boolean off = vlan.value().filter(one -> tree.isOff(one) == Truth.YES).isPresent();
    Setting<?> why =
        end.get(Keys.BPDU_FILTER).is(Effect.ON)
            ? end.get(Keys.BPDU_FILTER)
            : off && !tree.mode().is(TreeMode.Mode.NONE) ? tree.off() : tree.mode();
    List<Evidence> all = new ArrayList<>(vlan.evidence());
    if (all.stream().noneMatch(Evidence.Line.class::isInstance)) {
      all.add(end.settings().orElseThrow().header());
    }
    all.addAll(why.evidence());
    return end.at().proofs(all).stream();
  }

  /** Both ends with their members, and both switches. */
  private static List<Place> places(LinkCase link) {
    List<Place> places = new ArrayList<>(link.ends().places());
    places.add(Place.ofSwitch(link.first().port().switchName()));
    places.add(Place.ofSwitch(link.second().port().switchName()));
    return places;
  }

  /** The first setting that leaves open whether a tree notices it. */
  private static Optional<Outcome> undecided(LinkCase link) {
    for (PortCase end : List.of(link.first(), link.second())) {
      Setting<?> filter = end.get(Keys.BPDU_FILTER);
      if (!filter.isDecided()) {
        return Optional.of(end.gap(filter, DESIGNED, link.design().at()));
      }
      SpanningTree tree = end.at().settings().tree();
      Setting<?> open = tree.mode().isDecided() ? tree.off() : tree.mode();
      if (!open.isDecided()) {
        return Optional.of(
            Undecided.of(
                end.subject(),
                end.at().cause(open),
                open.reason().orElse("the text does not tell"),
                DESIGNED,
                Stream.concat(proofs(link, end), end.at().proofs(open.evidence()).stream())
                    .distinct()
                    .toList(),
                Optional.of(link.design().at())));
      }
    }
    return Optional.empty();
  }
}
