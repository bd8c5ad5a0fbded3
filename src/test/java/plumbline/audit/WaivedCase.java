package plumbline.audit;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.design.Design;
import plumbline.result.Result;
import plumbline.rules.RuleCatalogue;
import plumbline.waiver.Surroundings;
import plumbline.waiver.WaiverAudit;
import plumbline.waiver.WaiverReader;
import plumbline.waiver.WaiverReading;

/** Holds the findings of a rule's case against the waivers in its folder. */
final class WaivedCase {
  /** The file's name in the folder of a case. */
  static final String FILE = "waivers.yaml";

  private WaivedCase() {}

  /** The same findings beside a file of waivers. */
  static AuditOutcome of(String text, AuditInput input, AuditOutcome outcome) {
    WaiverReading reading = WaiverReader.read(FILE, "0".repeat(64), text, RuleCatalogue.names());
    WaiverAudit audit =
        WaiverAudit.of(
            reading
                .waivers()
                .orElseThrow(() -> new IllegalArgumentException(reading.problems().toString())),
            outcome.findings(),
            LocalDate.ofInstant(input.at(), ZoneOffset.UTC),
            new Whole(input.design(), input.configs(), outcome));
    List<Result.RuleCount> checks = new ArrayList<>(audit.counts());
    outcome.checks().stream()
        .filter(count -> !count.rule().startsWith("waiver-"))
        .forEach(checks::add);
    return new AuditOutcome(
        audit.open(),
        checks,
        outcome.switchChecks(),
        outcome.notChecked(),
        outcome.ruleFailures(),
        outcome.inFront(),
        outcome.answers());
  }

  /** A run of all rules about a folder. */
  private record Whole(Design design, List<AuditInput.AuditedConfig> configs, AuditOutcome outcome)
      implements Surroundings {
    @Override
    public Set<String> switches() {
      return design.switches().keySet();
    }

    @Override
    public boolean isAudited(String switchName) {
      return configs.stream()
          .filter(one -> one.settings().truncation().isEmpty())
          .flatMap(one -> one.designed().stream())
          .anyMatch(one -> one.name().equals(switchName));
    }

    @Override
    public Set<String> asked() {
      return RuleCatalogue.ALL.stream()
          .map(rule -> rule.info().id())
          .filter(id -> !design.silentRules().contains(id))
          .collect(Collectors.toSet());
    }

    @Override
    public Set<String> silent() {
      return design.silentRules();
    }

    @Override
    public boolean hasOpen(Open such) {
      return outcome.answers().hasOpen(such::is);
    }
  }
}
