package plumbline.run;

import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import plumbline.audit.Answers;
import plumbline.audit.AuditOutcome;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.rules.InputCase;
import plumbline.rules.RuleCatalogue;
import plumbline.waiver.Surroundings;

/** What a run looked at: which switches wholly, which not and why not, and which rules it asked. */
final class Audited implements Surroundings {
  private static final String OUTSIDE = "is outside this run";

  private final Design design;
  private final boolean whole;
  private final Set<String> asked;
  private final AuditOutcome outcome;
  private final Set<String> audited = new HashSet<>();
  private final Map<String, String> gaps = new TreeMap<>();
  private final Map<String, Set<String>> configs = new TreeMap<>();

  /**
   * Takes it from a run.
   *
   * @param whole whether all configs that there are were given
   */
  Audited(AuditRun.Request request, boolean whole, Scope scope, AuditOutcome outcome) {
    this.design = request.design().design();
    this.whole = whole && request.switches().isEmpty();
    this.outcome = outcome;
    this.asked =
        RuleCatalogue.ALL.stream()
            .map(rule -> rule.info().id())
            .filter(rule -> !design.silentRules().contains(rule))
            .filter(rule -> request.rules().isEmpty() || request.rules().contains(rule))
            .collect(Collectors.toUnmodifiableSet());
    scope.notInScope().forEach(name -> gaps.put(name, OUTSIDE));
    scope.missing().forEach(one -> gaps.put(one.designed().name(), "has no config in this run"));
    scope.unread().stream()
        .flatMap(one -> one.designed().stream())
        .forEach(one -> gaps.put(one.name(), "has a config that cannot be read"));
    scope.entries().forEach(this::take);
  }

  private void take(Scope.Entry entry) {
    SwitchSettings settings = entry.config().settings();
    configs.computeIfAbsent(entry.name(), any -> new HashSet<>()).add(entry.file().sha256());
    Optional<DesignSwitch> designed = entry.config().designed();
    if (designed.isEmpty()) {
      return;
    }
    if (settings.truncation().isPresent()) {
      gaps.put(entry.name(), "has a config that is cut short");
    } else if (InputCase.isConfig(settings)) {
      audited.add(entry.name());
    }
  }

  @Override
  public Set<String> switches() {
    return design.switches().keySet();
  }

  @Override
  public boolean isAudited(String switchName) {
    return audited.contains(switchName);
  }

  @Override
  public Set<String> asked() {
    return asked;
  }

  @Override
  public Set<String> silent() {
    return design.silentRules();
  }

  @Override
  public boolean hasOpen(Open such) {
    return outcome.answers().hasOpen(such::is);
  }

  /** Why a switch of the design was not wholly audited, a clause without its name. */
  Optional<String> gap(String switchName) {
    return audited.contains(switchName)
        ? Optional.empty()
        : Optional.ofNullable(gaps.get(switchName));
  }

  /** Whether a config of a switch of the design had to be given. */
  boolean isInScope(String switchName) {
    return !OUTSIDE.equals(gaps.get(switchName));
  }

  /** Whether all configs that there are were given, and every switch of the design audited. */
  boolean isWhole() {
    return whole && audited.containsAll(switches());
  }

  /** Whether every rule was asked that the design does not switch off. */
  boolean asksAll() {
    return RuleCatalogue.ALL.stream()
        .map(rule -> rule.info().id())
        .allMatch(rule -> asked.contains(rule) || silent().contains(rule));
  }

  /** Whether all configs that there are were given. */
  boolean isOfAllFiles() {
    return whole;
  }

  /** What rules said of these. */
  Map<String, Answers.Answer> answers(Set<String> ids) {
    return outcome.answers().to(ids);
  }

  /** Whether a rule failed with a bug. */
  boolean hasFailed(String rule) {
    return outcome.ruleFailures().stream()
        .anyMatch(line -> line.startsWith("rule " + rule + " failed"));
  }

  /** SHA-256 of the files that switches were read from, by switch. */
  Map<String, Set<String>> configs() {
    return configs;
  }

  Design design() {
    return design;
  }

  AuditOutcome outcome() {
    return outcome;
  }
}
