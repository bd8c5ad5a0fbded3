package plumbline.judge;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;

/**
 * The lines that the finding about unknown statements lists: what they alone leave open is told
 * there and nowhere else.
 *
 * @param lines file and line number of each
 */
record UnknownStatements(Set<String> lines) {
  private static final String RULE = "statement-unknown";
  private static final int MOST = 5;

  /** Copies the set. */
  UnknownStatements {
    lines = Set.copyOf(lines);
  }

  /** The lines of a switch, none where no such finding is given. */
  static UnknownStatements of(List<Spoken> said) {
    return new UnknownStatements(
        said.stream()
            .filter(UnknownStatements::isGiven)
            .flatMap(one -> ((Candidate) one.outcome()).proofs().stream())
            .flatMap(proof -> line(proof).stream())
            .collect(Collectors.toSet()));
  }

  /** Whether an outcome is that finding. */
  static boolean isGiven(Spoken one) {
    return one.rule().id().equals(RULE) && one.outcome() instanceof Candidate;
  }

  /** Whether these lines, and nothing else, leave a port's setting open. */
  boolean explain(Gap gap) {
    return gap.lead().outcome().subject().port().isPresent()
        && !gap.proofs().isEmpty()
        && gap.proofs().stream().allMatch(proof -> line(proof).filter(lines::contains).isPresent());
  }

  /** The finding with what its lines leave open. */
  static Candidate telling(Candidate candidate, List<Gap> gaps) {
    if (gaps.isEmpty()) {
      return candidate;
    }
    Map<Place, List<Spoken>> ports = new LinkedHashMap<>();
    gaps.forEach(
        gap ->
            ports
                .computeIfAbsent(gap.place().orElseThrow(), any -> new ArrayList<>())
                .addAll(gap.all().toList()));
    Map<String, List<String>> alike =
        ports.entrySet().stream()
            .collect(
                groupingBy(
                    port -> Gap.checks(port.getValue().stream()),
                    LinkedHashMap::new,
                    mapping(port -> port.getKey().port().orElse(""), toList())));
    long count = gaps.stream().flatMap(Gap::all).count();
    String what =
        alike.entrySet().stream()
            .map(some -> some.getKey() + " on " + list(some.getValue()))
            .collect(Collectors.joining("; "));
    Set<Place> places = new LinkedHashSet<>(candidate.others());
    places.addAll(ports.keySet());
    return candidate
        .followedBy(
            "Left open by it, and not counted as conforming, "
                + (count == 1 ? "is 1 check: " : "are " + count + " checks: ")
                + what
                + ".")
        .beside(List.copyOf(places));
  }

  private static String list(List<String> names) {
    if (names.size() > MOST) {
      return String.join(", ", names.subList(0, MOST)) + " and " + (names.size() - MOST) + " more";
    }
    int last = names.size() - 1;
    return last == 0
        ? names.get(0)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }

  private static Optional<String> line(Proof proof) {
    return proof.evidence() instanceof Evidence.Line line
        ? Optional.of(proof.file().orElse("") + ":" + line.line())
        : Optional.empty();
  }
}
