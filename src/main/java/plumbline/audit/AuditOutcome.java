package plumbline.audit;

import java.util.List;
import plumbline.finding.Finding;
import plumbline.result.Result;

/**
 * What an audit comes to.
 *
 * @param findings by switch, port (numeric), rule, id
 * @param checks how many subjects each rule checked, by rule id, sorted; without silent rules and
 *     those that were not asked
 * @param switchChecks the same on each switch, by name of the switch and rule id
 * @param notChecked what the design asks of the switches given and no rule checks, sorted by key
 * @param ruleFailures one line for each rule that failed with a bug, naming rule and place
 * @param inFront what rules that were not asked find at ports that the others were asked about
 * @param answers what the rules said, whether a finding came of it or not
 */
public record AuditOutcome(
    List<Finding> findings,
    List<Result.RuleCount> checks,
    List<Result.SwitchCount> switchChecks,
    List<Result.NotChecked> notChecked,
    List<String> ruleFailures,
    List<Result.InFront> inFront,
    Answers answers) {
  /** Copies the lists. */
  public AuditOutcome {
    findings = List.copyOf(findings);
    checks = List.copyOf(checks);
    switchChecks = List.copyOf(switchChecks);
    notChecked = List.copyOf(notChecked);
    ruleFailures = List.copyOf(ruleFailures);
    inFront = List.copyOf(inFront);
  }
}
