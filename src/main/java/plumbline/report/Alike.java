package plumbline.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.setting.Evidence;

/**
 * Findings of one switch that say the same in the same words, and differ in the port only: a text
 * report tells them once.
 *
 * @param findings at least one, by port
 */
record Alike(List<Finding> findings) {
  /** How many ports of a block show their evidence. */
  private static final int MOST_SHOWN = 3;

  Alike {
    findings =
        findings.stream()
            .sorted(
                Comparator.comparing(
                    one -> one.portOrder().orElse(null),
                    Comparator.nullsFirst(Comparator.naturalOrder())))
            .toList();
  }

  /** The blocks of a switch, each where the first of its findings stands. */
  static List<Alike> of(List<Finding> findings) {
    return of(findings, any -> "");
  }

  /**
   * The blocks of a switch, each where the first of its findings stands.
   *
   * @param further what else the findings of a block must share
   */
  static List<Alike> of(List<Finding> findings, Function<Finding, Object> further) {
    Map<Object, List<Finding>> blocks = new LinkedHashMap<>();
    for (Finding finding : findings) {
      blocks
          .computeIfAbsent(
              List.of(words(finding), further.apply(finding)), any -> new ArrayList<>())
          .add(finding);
    }
    return blocks.values().stream().map(Alike::new).toList();
  }

  /** All that a reader is told beside port and evidence; what has no port stands alone. */
  private static Object words(Finding one) {
    return port(one).isEmpty()
        ? one
        : List.of(
            one.rule(),
            one.severity(),
            one.subject(),
            one.found(),
            one.designed(),
            one.consequence(),
            one.others(),
            one.design());
  }

  /** The finding whose words stand for all. */
  Finding first() {
    return findings.get(0);
  }

  /** Where and what: {@code GigabitEthernet1/0/10-49, 40 ports: desk-phone}. */
  String heading() {
    String ports = ports();
    String subject = first().place().isEmpty() ? Words.file(first()) : first().subject();
    if (findings.size() > 1) {
      return ports
          + ", "
          + Words.count(findings.size(), "port")
          + (subject.isEmpty() ? "" : ": " + subject);
    }
    if (ports.isEmpty() && subject.isEmpty()) {
      return "the whole switch";
    }
    return ports + (ports.isEmpty() || subject.isEmpty() ? "" : ", ") + subject;
  }

  /** The evidence, one line each; of many ports that of the first few. */
  List<String> evidence() {
    List<Proof> shown =
        findings.stream()
            .limit(MOST_SHOWN)
            .flatMap(one -> one.evidence().stream())
            .distinct()
            .sorted(Comparator.comparing(proof -> proof.evidence() instanceof Evidence.Default))
            .toList();
    int more = findings.size() - MOST_SHOWN;
    return Stream.concat(
            Words.evidence(findings.size() == 1 ? first().evidence() : shown).stream(),
            Stream.of("and " + Words.count(more, "more port") + ", each in a --report FILE.json")
                .filter(any -> more > 0))
        .toList();
  }

  /** Ports as ranges: a name stands once, before the numbers that follow each other. */
  private String ports() {
    return PortRanges.of(findings.stream().map(Alike::port).toList());
  }

  private static String port(Finding one) {
    return one.place().flatMap(Place::port).orElse("");
  }
}
