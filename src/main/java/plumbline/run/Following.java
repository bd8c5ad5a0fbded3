package plumbline.run;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.audit.AuditOutcome;
import plumbline.finding.Finding;
import plumbline.history.Comparison;
import plumbline.history.Decider;
import plumbline.history.Earlier;
import plumbline.result.Accepted;
import plumbline.result.FollowUp;
import plumbline.result.Past;
import plumbline.result.Result.RuleCount;
import plumbline.result.State;
import plumbline.waiver.WaiverAudit;
import plumbline.waiver.WaiverFile;

/**
 * What follows an audit: waivers are held against its findings, then all of them against the run
 * before.
 *
 * @param findings those that count
 * @param waived how many are waived
 * @param checks how often each rule was asked, those about waivers too
 * @param followUp for the reports
 */
record Following(List<Finding> findings, int waived, List<RuleCount> checks, FollowUp followUp) {
  /** Follows an audit up. */
  static Following of(AuditRun.Request request, Audited run) {
    AuditOutcome outcome = run.outcome();
    LocalDate today = LocalDate.ofInstant(request.at(), ZoneOffset.UTC);
    Optional<WaiverAudit> waivers =
        request.waivers().map(file -> WaiverAudit.of(file, outcome.findings(), today, run));
    List<Finding> open = waivers.map(WaiverAudit::open).orElse(outcome.findings());
    List<Finding> all =
        waivers.map(WaiverAudit::all).orElseGet(outcome.findings()::stream).toList();
    Optional<Comparison> comparison =
        request.earlier().map(earlier -> compared(request, run, earlier, all, waivers));
    Optional<Accepted> accepted =
        waivers.map(audit -> audit.accepted(comparison.map(Following::carried).orElse(List.of())));
    List<Finding> waived = accepted.map(Accepted::waived).orElse(List.of());
    return new Following(
        open,
        waived.size(),
        waivers.map(audit -> checks(outcome, audit)).orElse(outcome.checks()),
        new FollowUp(comparison.map(one -> past(request, one, open, accepted)), accepted));
  }

  private static Comparison compared(
      AuditRun.Request request,
      Audited run,
      Earlier earlier,
      List<Finding> all,
      Optional<WaiverAudit> waivers) {
    LocalDate today = LocalDate.ofInstant(request.at(), ZoneOffset.UTC);
    if (earlier.newest().isEmpty()) {
      return Comparison.ofFirst(all, today);
    }
    Decider decider =
        new Fates(run, earlier.newest().get(), waivers, request.waivers().map(WaiverFile::sha256));
    return Comparison.of(earlier.newest().get(), all, today, decider);
  }

  /** Findings that may still be there. */
  private static List<Finding> carried(Comparison comparison) {
    return comparison.gone().stream()
        .filter(one -> comparison.standings().get(one.id()).state() == State.UNCHECKED)
        .toList();
  }

  private static Past past(
      AuditRun.Request request,
      Comparison comparison,
      List<Finding> open,
      Optional<Accepted> accepted) {
    Earlier earlier = request.earlier().orElseThrow();
    Instant at = request.at().truncatedTo(ChronoUnit.SECONDS);
    Set<String> waived =
        accepted.stream()
            .flatMap(one -> one.acceptances().entrySet().stream())
            .filter(one -> one.getValue().whole())
            .map(Map.Entry::getKey)
            .collect(Collectors.toCollection(HashSet::new));
    List<Past.TrendPoint> trend = new ArrayList<>(earlier.trend());
    trend.add(comparison.point(at, open, waived));
    return new Past(
        earlier.newest().map(run -> new Past.Run(run.file(), run.at())),
        earlier.setAside(),
        comparison.standings(),
        comparison.gone(),
        trend);
  }

  /** The audit counts no waiver. */
  private static List<RuleCount> checks(AuditOutcome outcome, WaiverAudit waivers) {
    Map<String, RuleCount> counts =
        waivers.counts().stream().collect(Collectors.toMap(RuleCount::rule, Function.identity()));
    return Stream.concat(
            outcome.checks().stream().filter(one -> !counts.containsKey(one.rule())),
            counts.values().stream())
        .sorted(java.util.Comparator.comparing(RuleCount::rule))
        .toList();
  }
}
