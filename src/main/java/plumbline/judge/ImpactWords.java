package plumbline.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.finding.Affected;
import plumbline.finding.Affected.Loss;
import plumbline.finding.Place;
import plumbline.promise.FailureWords;
import plumbline.text.Wording;
import plumbline.vlan.VlanId;

/** Says in one or two sentences what a finding takes, and counts what it does not name. */
final class ImpactWords {
  private final FailureWords words;
  private final List<Affected> affected;
  private final String here;

  /**
   * Words for one finding.
   *
   * @param place where it is: what is there need not be told
   */
  ImpactWords(FailureWords words, List<Affected> affected, Optional<Place> place) {
    this.words = words;
    this.affected = affected;
    this.here = " at " + place.map(Place::toString).orElse("no place");
  }

  /** What is gone now, and what goes at the next failure. */
  String sentences() {
    List<Affected> now = affected.stream().filter(one -> one.failure().isEmpty()).toList();
    Map<String, List<Affected>> later = new LinkedHashMap<>();
    affected.stream()
        .filter(one -> one.failure().isPresent())
        .forEach(
            one -> later.computeIfAbsent(one.failure().get(), any -> new ArrayList<>()).add(one));
    List<String> sentences = new ArrayList<>();
    if (!now.isEmpty()) {
      sentences.add("Now " + clauses(now) + ".");
    }
    if (!later.isEmpty()) {
      String worst = worst(later);
      sentences.add("When " + worst + " fails, " + clauses(later.get(worst)) + ".");
      Set<Affected> most = whatever(later.get(worst));
      List<String> same = new ArrayList<>();
      List<String> part = new ArrayList<>();
      List<String> other = new ArrayList<>();
      later.forEach(
          (failure, all) -> {
            Set<Affected> these = whatever(all);
            List<String> kind = these.equals(most) ? same : most.containsAll(these) ? part : other;
            if (!failure.equals(worst)) {
              kind.add(failure);
            }
          });
      add(sentences, "The same is lost when ", same);
      add(sentences, "Part of it is lost too when ", part);
      add(sentences, "Something else is lost when ", other);
    }
    return String.join(" ", sentences);
  }

  private static void add(List<String> sentences, String lost, List<String> failures) {
    if (!failures.isEmpty()) {
      sentences.add(lost + either(failures) + " fails.");
    }
  }

  /** What is lost, by whatever failure. */
  private static Set<Affected> whatever(List<Affected> all) {
    return all.stream()
        .map(one -> new Affected(one.who(), one.vlan(), one.loss(), Optional.empty()))
        .collect(Collectors.toSet());
  }

  /** The failure that takes most; of several the first. */
  private static String worst(Map<String, List<Affected>> later) {
    return later.entrySet().stream()
        .reduce((one, other) -> weight(other.getValue()) > weight(one.getValue()) ? other : one)
        .orElseThrow()
        .getKey();
  }

  private static long weight(List<Affected> all) {
    long services = all.stream().filter(one -> one.loss() == Loss.SERVICE).count();
    return services * 1_000_000 + all.size();
  }

  private static String either(List<String> things) {
    return Wording.list(things).replaceFirst(" and (?=[^,]*$)", " or ");
  }

  private String local(String who) {
    return who.substring(0, who.length() - here.length()) + " here";
  }

  /** One clause for each kind of loss, VLANs of the same victims together. */
  private String clauses(List<Affected> all) {
    Map<Loss, Map<VlanId, Set<String>>> losses = new LinkedHashMap<>();
    Set<String> services = new LinkedHashSet<>();
    for (Affected one : all) {
      if (one.vlan().isEmpty()) {
        services.add(one.who());
      } else {
        losses
            .computeIfAbsent(one.loss(), any -> new LinkedHashMap<>())
            .computeIfAbsent(one.vlan().get(), any -> new LinkedHashSet<>())
            .add(one.who().endsWith(here) ? local(one.who()) : one.who());
      }
    }
    List<String> clauses = new ArrayList<>();
    losses.forEach(
        (loss, vlans) ->
            bySufferers(vlans)
                .forEach((who, in) -> clauses.add(clause(loss, List.copyOf(who), in))));
    if (!services.isEmpty()) {
      clauses.add(
          (services.size() == 1 ? "the service " : "the services ")
              + Wording.list(List.copyOf(services))
              + (services.size() == 1 ? " stops" : " stop"));
    }
    return clauses.size() < 2
        ? clauses.get(0)
        : clauses.stream().limit(clauses.size() - 1L).collect(Collectors.joining("; "))
            + "; and "
            + clauses.get(clauses.size() - 1);
  }

  private static Map<Set<String>, List<VlanId>> bySufferers(Map<VlanId, Set<String>> vlans) {
    Map<Set<String>, List<VlanId>> sufferers = new LinkedHashMap<>();
    vlans.forEach(
        (vlan, who) -> sufferers.computeIfAbsent(who, any -> new ArrayList<>()).add(vlan));
    return sufferers;
  }

  private static String sends(boolean one) {
    return one ? " sends" : " send";
  }

  private String clause(Loss loss, List<String> who, List<VlanId> in) {
    String vlans = Wording.list(in.stream().map(words::vlan).toList());
    String all = Wording.list(who);
    boolean one = who.size() == 1;
    return switch (loss) {
      case VLAN -> all + (one ? " is" : " are") + " cut off from " + vlans;
      case GATEWAY -> all + (one ? " reaches" : " reach") + " no gateway in " + vlans;
      case DOMAIN -> all + (one ? " is" : " are") + " cut off from the rest of " + vlans;
      case PORT_GATEWAY -> "what " + all + sends(one) + " in " + vlans + " reaches no gateway";
      case PORT_DOMAIN ->
          "what " + all + sends(one) + " in " + vlans + " does not reach the rest of it";
      case SERVICE -> all + " stops";
    };
  }
}
