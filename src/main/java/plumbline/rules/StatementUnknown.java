package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import plumbline.effective.UnknownLine;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;
import plumbline.statement.SwitchText;

/** Statements inside covered ports that the grammar does not know. */
final class StatementUnknown implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "statement-unknown",
          Group.INPUT,
          Severity.UNVERIFIED,
          "a port of the design holds statements that the grammar does not know",
          RuleInfo.COMMON_PRACTICE,
          Set.of("harmless"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    // a statement that the cut broke in two is the cut's doing
    int cut =
        device.settings().truncation().map(SwitchText.Truncation::line).orElse(Integer.MAX_VALUE);
    SortedMap<Integer, String> lines = new TreeMap<>();
    List<String> ports = new ArrayList<>();
    for (PortCase port : device.ports()) {
      List<UnknownLine> unknown =
          port.settings().stream()
              .flatMap(settings -> settings.unknown().stream())
              .filter(line -> line.line() < cut)
              .toList();
      unknown.forEach(line -> lines.put(line.line(), line.firstWord()));
      if (!unknown.isEmpty()) {
        ports.add(port.fullName());
      }
    }
    if (lines.isEmpty()) {
      outcomes.conforms(device.subject());
      return;
    }
    outcomes.add(
        Candidate.of(
            device.subject(),
            "statements that are known, or listed under harmless",
            lines.entrySet().stream()
                .map(line -> "line " + line.getKey() + " \"" + line.getValue() + "\"")
                .collect(Collectors.joining(", ")),
            "What "
                + (lines.size() == 1 ? "this statement does" : "these statements do")
                + " is not known: "
                + Words.list(ports)
                + " may behave otherwise than reported.",
            device.proofs(evidence(lines)),
            Optional.of(device.designed().at())));
  }

  private static List<Evidence> evidence(Map<Integer, String> lines) {
    return lines.entrySet().stream()
        .map(line -> (Evidence) new Evidence.Line(line.getKey(), line.getValue()))
        .toList();
  }
}
