package plumbline.judge;

import static java.util.stream.Collectors.groupingBy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.finding.Finding;
import plumbline.port.PortName;
import plumbline.rules.Outcome;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.rules.Outcome.Undecided.Cause;
import plumbline.rules.Subject;
import plumbline.setting.PortMode;

/**
 * Turns what rules said into findings, so that one cause is one finding: what an earlier finding
 * explains is not given again, and what the text leaves open for one reason is given once.
 */
public final class Judge {
  static final String ABSENT = "port-absent";
  static final String SHUT = "port-shut";

  /** Which rule's finding, at one port, makes which other rule's finding superfluous there. */
  private static final Map<String, Set<String>> SPEAKS_FOR =
      Map.of(
          "gateway-forbidden", Set.of("native-vlan-in-use"),
          "native-vlan-in-use", Set.of("native-vlan-differs", "port-undeclared"),
          "spare-port-open", Set.of("native-vlan-in-use"),
          "trunk-undeclared", Set.of("port-undeclared"));

  /** The rules that speak of a mode that is wrong or open. */
  static final Set<String> MODE_RULES = Set.of("mode-differs", "negotiation-open");

  private static final Comparator<Finding> ORDER =
      Comparator.comparing(Finding::switchName)
          .thenComparing(
              Finding::portOrder,
              Comparator.comparing(
                  port -> port.orElse(null),
                  Comparator.nullsFirst(Comparator.<PortName>naturalOrder())))
          .thenComparing(Finding::rule)
          .thenComparing(Finding::id);

  private Judge() {}

  /** The findings, by switch, port (numeric), rule, id. */
  public static List<Finding> findings(List<Spoken> spoken) {
    Map<String, List<Spoken>> switches =
        Joined.told(WiderCauses.settled(spoken)).stream()
            .collect(
                groupingBy(
                    said -> said.outcome().subject().switchName(),
                    TreeMap::new,
                    Collectors.toList()));
    return switches.values().stream()
        .flatMap(said -> ofSwitch(said).stream())
        .sorted(ORDER)
        .toList();
  }

  private static List<Finding> ofSwitch(List<Spoken> said) {
    Map<Subject, List<Spoken>> ports =
        said.stream()
            .filter(one -> one.outcome().subject().port().isPresent())
            .collect(
                groupingBy(
                    one -> portOf(one.outcome().subject()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    List<Spoken> left =
        new ArrayList<>(
            Rests.merged(
                said.stream().filter(one -> one.outcome().subject().port().isEmpty()).toList()));
    ports.values().forEach(port -> left.addAll(ofPort(port)));
    return Gaps.findings(Consequences.listed(AbsentVlans.merged(left)));
  }

  /** One port may be spoken of under several subjects, such as a spare port and a VLAN in use. */
  static Subject portOf(Subject subject) {
    return new Subject(subject.place(), subject.port(), "");
  }

  /** On one port: absent, then shut, then mode, then the rest. */
  private static List<Spoken> ofPort(List<Spoken> port) {
    for (String whole : List.of(ABSENT, SHUT)) {
      for (Spoken one : port) {
        if (isCandidate(one, whole)) {
          return List.of(listing(one, withoutSuperfluous(withoutModeBound(port))));
        }
      }
    }
    return withoutSuperfluous(withoutModeBound(port));
  }

  /** Settings that a wrong mode leaves without effect are no findings, and no gaps. */
  private static List<Spoken> withoutModeBound(List<Spoken> port) {
    Set<PortMode> spoiled =
        port.stream()
            .flatMap(
                one ->
                    one.outcome() instanceof Candidate candidate
                        ? candidate.spoilsMode().stream()
                        : Stream.empty())
            .collect(Collectors.toSet());
    return port.stream()
        .filter(one -> spoiled.stream().noneMatch(mode -> needs(one, mode)))
        .toList();
  }

  private static boolean needs(Spoken one, PortMode mode) {
    Optional<PortMode> needed = Optional.empty();
    if (one.outcome() instanceof Candidate candidate) {
      needed = candidate.needsMode();
    } else if (one.outcome() instanceof Undecided open) {
      needed = open.needsMode();
    }
    return needed.filter(mode::equals).isPresent();
  }

  private static List<Spoken> withoutSuperfluous(List<Spoken> port) {
    Set<String> superfluous =
        port.stream()
            .filter(one -> one.outcome() instanceof Candidate)
            .flatMap(one -> SPEAKS_FOR.getOrDefault(one.rule().id(), Set.of()).stream())
            .collect(Collectors.toSet());
    boolean modeSpeaks =
        port.stream()
            .anyMatch(
                one ->
                    MODE_RULES.contains(one.rule().id())
                        && !(one.outcome() instanceof Outcome.Conforms)
                        && !isOwnGap(one));
    return Rests.merged(
        port.stream()
            .filter(one -> !superfluous.contains(one.rule().id()))
            .filter(one -> !(modeSpeaks && isModeGap(one)))
            .toList());
  }

  private static boolean isModeGap(Spoken one) {
    return one.outcome() instanceof Undecided open && open.cause() == Cause.MODE;
  }

  /** Such a gap lists the others that it explains. */
  private static boolean isOwnGap(Spoken one) {
    return one.outcome() instanceof Undecided open && open.cause() == Cause.OWN;
  }

  /** The finding that stands for its port, with what else differs there in words. */
  private static Spoken listing(Spoken first, List<Spoken> port) {
    Candidate cause = (Candidate) first.outcome();
    String others =
        port.stream()
            .filter(one -> !one.equals(first) && one.outcome() instanceof Candidate)
            .sorted(Comparator.comparing(one -> one.rule().id()))
            .map(one -> one.rule().summary())
            .distinct()
            .collect(Collectors.joining("; "));
    String open = Gap.checks(port.stream().filter(one -> one.outcome() instanceof Undecided));
    if (!others.isEmpty()) {
      cause = cause.followedBy("When this is repaired, more remains: " + others + ".");
    }
    // a port that is not there has no settings to be left open
    return new Spoken(
        first.rule(),
        open.isEmpty() || isCandidate(first, ABSENT)
            ? cause
            : cause.followedBy("Checks that the text leaves open there: " + open + "."));
  }

  private static boolean isCandidate(Spoken one, String rule) {
    return one.rule().id().equals(rule) && one.outcome() instanceof Candidate;
  }
}
