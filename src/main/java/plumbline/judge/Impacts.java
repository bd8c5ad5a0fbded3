package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.fabric.Fabric;
import plumbline.fabric.Failure;
import plumbline.finding.Affected;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.promise.Effect;
import plumbline.promise.FailureWords;
import plumbline.promise.Fault;
import plumbline.promise.FaultPlaces;

/**
 * Tells with each finding what it takes, and from whom: what the faults at its place are to blame
 * for. Findings that take something only together each tell it, at its severity.
 */
public final class Impacts {
  private static final String SETTINGS = "port-setting-differs";

  /** The rules whose findings say why a VLAN does not pass a place. */
  private static final Set<String> CAUSES =
      Set.of(
          "access-vlan-differs",
          "bundle-differs",
          "bundle-member-differs",
          "gateway-not-working",
          "link-bundle-clash",
          "link-mode-differs",
          "link-native-differs",
          "link-vlans-differ",
          "mode-differs",
          "native-vlan-differs",
          "native-vlan-in-use",
          "negotiation-open",
          "port-absent",
          SETTINGS,
          "port-shut",
          "tagged-vlan-missing",
          "vlan-inactive",
          "vlan-not-created",
          "voice-vlan-differs");

  private static final Set<String> ACCESS = Set.of("access-vlan-differs", "voice-vlan-differs");

  /** What is gone now comes first, and of that services. */
  private static final Comparator<Effect> ORDER =
      Comparator.<Effect, Boolean>comparing(effect -> effect.when().isPresent())
          .thenComparing(Effect::loss)
          .thenComparing(effect -> effect.when().map(Impacts::rank).orElse(0));

  private final Map<Place, List<Integer>> at = new HashMap<>();
  private final List<Finding> findings;
  private final FaultPlaces places;
  private final FailureWords words;

  private Impacts(List<Finding> findings, Fabric network) {
    this.findings = findings;
    this.places = new FaultPlaces(network);
    this.words = new FailureWords(network);
    for (int index = 0; index < findings.size(); index++) {
      Finding finding = findings.get(index);
      if (CAUSES.contains(finding.rule()) && finding.severity() != Severity.UNVERIFIED) {
        int here = index;
        finding
            .place()
            .ifPresent(place -> at.computeIfAbsent(place, any -> new ArrayList<>()).add(here));
      }
    }
  }

  /**
   * The findings, in the same order, with what they take.
   *
   * @param effects what is taken in the network
   * @param network the network, for names
   */
  public static List<Finding> told(List<Finding> findings, List<Effect> effects, Fabric network) {
    return new Impacts(findings, network).told(effects);
  }

  private List<Finding> told(List<Effect> effects) {
    Map<Integer, List<Effect>> taken = new LinkedHashMap<>();
    Map<Fault, List<Integer>> causes = new HashMap<>();
    for (Effect effect : effects) {
      Set<Integer> to = new LinkedHashSet<>();
      effect.faults().forEach(fault -> to.addAll(causes.computeIfAbsent(fault, this::causes)));
      to.forEach(index -> taken.computeIfAbsent(index, any -> new ArrayList<>()).add(effect));
    }
    List<Finding> told = new ArrayList<>(findings);
    taken.forEach((index, all) -> told.set(index, told(findings.get(index), all)));
    return told;
  }

  private List<Integer> causes(Fault fault) {
    Set<Integer> found = new HashSet<>();
    for (Place place : places.of(fault)) {
      for (int index : at.getOrDefault(place, List.of())) {
        Finding finding = findings.get(index);
        if (isOf(finding, fault)
            && (finding.vlans().isEmpty() || finding.vlans().contains(fault.vlan()))) {
          found.add(index);
        }
      }
    }
    // a port that negotiates is an access port towards a host: its VLAN is what is wrong then
    if (found.stream().anyMatch(index -> ACCESS.contains(findings.get(index).rule()))) {
      found.removeIf(index -> findings.get(index).rule().equals("negotiation-open"));
    }
    return found.stream().sorted().toList();
  }

  /** Of the many settings that one rule tells of, one says how many cables a bundle needs. */
  private static boolean isOf(Finding finding, Fault fault) {
    return !finding.rule().equals(SETTINGS)
        || (fault instanceof Fault.OfBundle
            && finding.designed().contains(RoleKeys.MIN_LINKS.name() + " "));
  }

  private Finding told(Finding finding, List<Effect> effects) {
    boolean now = effects.stream().anyMatch(effect -> effect.when().isEmpty());
    List<Affected> affected =
        effects.stream()
            .sorted(ORDER)
            .map(
                effect ->
                    new Affected(
                        effect.who(), effect.vlan(), effect.loss(), effect.when().map(words::of)))
            .distinct()
            .toList();
    return finding.taking(
        affected,
        new ImpactWords(words, affected, finding.place()).sentences(),
        now ? Severity.BREAKS : Severity.WEAKENS);
  }

  /** Whole switches come to mind first, single cables last. */
  private static int rank(Failure failure) {
    if (failure instanceof Failure.OfSwitch) {
      return 0;
    }
    if (failure instanceof Failure.OfLink) {
      return 2;
    }
    boolean cable = failure instanceof Failure.OfCable || failure instanceof Failure.OfPort;
    return cable ? 3 : 1;
  }
}
