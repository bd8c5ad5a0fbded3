package plumbline.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import plumbline.finding.Finding;
import plumbline.finding.Place;

/** The order in which people read findings: the worst switch first, on it the worst port. */
final class FindingOrder {
  private FindingOrder() {}

  /** Findings grouped by switch; iterates in reading order. */
  record Sections(Map<String, List<Finding>> bySwitch) {
    void forEach(BiConsumer<String, List<Finding>> section) {
      bySwitch.forEach(section);
    }
  }

  /**
   * Of the worst findings the one that touches most: a whole switch before a port, then by how many
   * VLANs and other ends it is about, then by the order of the result.
   */
  static Optional<Finding> worst(List<Finding> findings) {
    return findings.stream()
        .min(
            Comparator.comparing(Finding::severity)
                .thenComparing(finding -> !port(finding).isEmpty())
                .thenComparing(finding -> -(finding.vlans().size() + finding.others().size())));
  }

  /**
   * Switches by their worst finding, then by the order of the result; on each, ports by theirs,
   * then by the order of the result; on a port the worst first.
   *
   * @param findings in the order of the result: switch, port (numeric), rule, id
   */
  static Sections bySwitchWorstFirst(List<Finding> findings) {
    Map<String, List<Finding>> sections = new LinkedHashMap<>();
    for (List<Finding> ofSwitch : groups(findings, Finding::switchName)) {
      List<Finding> ordered = new ArrayList<>();
      for (List<Finding> ofPort : groups(ofSwitch, FindingOrder::port)) {
        ofPort.stream().sorted(Comparator.comparing(Finding::severity)).forEach(ordered::add);
      }
      sections.put(ofSwitch.get(0).switchName(), ordered);
    }
    return new Sections(sections);
  }

  /** The groups of equal key, the group with the worst finding first; the sort is stable. */
  private static List<List<Finding>> groups(List<Finding> findings, Function<Finding, String> key) {
    Map<String, List<Finding>> groups = new LinkedHashMap<>();
    for (Finding finding : findings) {
      groups.computeIfAbsent(key.apply(finding), any -> new ArrayList<>()).add(finding);
    }
    return groups.values().stream()
        .sorted(Comparator.comparing(group -> worst(group).orElseThrow().severity()))
        .toList();
  }

  private static String port(Finding finding) {
    return finding.place().flatMap(Place::port).orElse("");
  }
}
