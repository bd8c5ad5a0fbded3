package plumbline.waiver;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.ResultOrder;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.result.Accepted;
import plumbline.result.Result.RuleCount;
import plumbline.result.Waiver;
import plumbline.rules.Outcome;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;
import plumbline.rules.Subject;
import plumbline.rules.WaiverCase;
import plumbline.rules.WaiverRule;

/**
 * The findings of a run beside a file of waivers: what is waived, what is open, and what the rules
 * about waivers find.
 */
public final class WaiverAudit {
  private final WaiverFile file;
  private final LocalDate today;
  private final Surroundings run;
  private final Coverage coverage;
  private final List<Finding> open = new ArrayList<>();
  private final List<Finding> waived = new ArrayList<>();
  private final Map<String, int[]> counts = new TreeMap<>();
  private final Map<String, Boolean> decided = new HashMap<>();
  private int undecided;

  private WaiverAudit(WaiverFile file, LocalDate today, Surroundings run) {
    this.file = file;
    this.today = today;
    this.run = run;
    this.coverage = new Coverage(file.entries(), today);
  }

  /**
   * Holds findings against waivers.
   *
   * @param findings of the run, by switch, port, rule, id
   * @param today the day of the run, UTC
   */
  public static WaiverAudit of(
      WaiverFile file, List<Finding> findings, LocalDate today, Surroundings run) {
    WaiverAudit audit = new WaiverAudit(file, today, run);
    findings.forEach(one -> (audit.coverage.isWhole(one) ? audit.waived : audit.open).add(one));
    audit.judge();
    audit.open.sort(ResultOrder.BY_PLACE);
    return audit;
  }

  private void judge() {
    Map<Subject, List<WaiverEntry>> subjects = new LinkedHashMap<>();
    for (WaiverEntry entry : file.entries()) {
      subjects.computeIfAbsent(subject(entry), any -> new ArrayList<>()).add(entry);
    }
    for (Rule rule : RuleCatalogue.ALL) {
      if (rule instanceof WaiverRule asked && isAsked(rule.info().id())) {
        int[] count = counts.computeIfAbsent(rule.info().id(), any -> new int[3]);
        subjects.forEach((subject, entries) -> judge(asked, subject, entries, count));
      }
    }
    undecided =
        (int)
            file.entries().stream()
                .filter(one -> coverage.fits(one).isEmpty() && !isDecided(one))
                .count();
  }

  private boolean isAsked(String rule) {
    return run.asked().contains(rule);
  }

  /** Of several waivers for the same thing the first that gives a finding speaks. */
  private void judge(WaiverRule rule, Subject subject, List<WaiverEntry> entries, int[] count) {
    List<Outcome> said = new ArrayList<>();
    for (WaiverEntry entry : entries) {
      rule.check(waiverCase(subject, entry), said::add);
    }
    Optional<Outcome> differs =
        said.stream().filter(Outcome.Candidate.class::isInstance).findFirst();
    Optional<Outcome> open = said.stream().filter(Outcome.Undecided.class::isInstance).findFirst();
    if (differs.isPresent()) {
      count[1]++;
      this.open.add(finding(rule.info(), (Outcome.Candidate) differs.get()));
    } else if (open.isPresent()) {
      count[2]++;
    } else if (!said.isEmpty()) {
      count[0]++;
    }
    decided.put(idOf(rule.info().id(), subject), entries.stream().allMatch(this::isDecided));
  }

  private WaiverCase waiverCase(Subject subject, WaiverEntry entry) {
    return new WaiverCase(
        subject,
        entry.told().at(),
        entry.told().until(),
        today,
        coverage.fits(entry).stream().map(WaiverAudit::words).distinct().toList(),
        isDecided(entry),
        why(entry));
  }

  /** Whether the run checked all that a waiver may be for. */
  private boolean isDecided(WaiverEntry entry) {
    Selector what = entry.what();
    List<String> rules = rules(what);
    if (rules.isEmpty() || isOfNoSwitch(what)) {
      return true;
    }
    return run.asked().containsAll(rules)
        && (what.oneSwitch().isEmpty() || run.switches().stream().anyMatch(what::fitsSwitch))
        && run.switches().stream().filter(what::fitsSwitch).allMatch(run::isAudited)
        && (!what.isForNoSwitch() || run.switches().stream().allMatch(run::isAudited))
        && (coverage.isSeen(entry) || !run.hasOpen(what::fits));
  }

  /** The rules that it can be for, without those that the design switches off. */
  private List<String> rules(Selector what) {
    return RuleCatalogue.ALL.stream()
        .filter(rule -> !(rule instanceof WaiverRule))
        .map(rule -> rule.info().id())
        .filter(id -> what.fitsRule(id) && !run.silent().contains(id))
        .toList();
  }

  private boolean isOfNoSwitch(Selector what) {
    return what.oneSwitch().isPresent() && run.switches().stream().noneMatch(what::fitsSwitch);
  }

  private String why(WaiverEntry entry) {
    if (rules(entry.what()).isEmpty()) {
      return "the design switches its rule off";
    }
    if (isOfNoSwitch(entry.what())) {
      return "the design has no such switch";
    }
    Optional<Finding> beside = coverage.beside(entry);
    if (beside.isPresent()) {
      boolean one = beside.get().vlans().size() == 1;
      return beside.get().vlans().isEmpty()
          ? "it names VLANs, and " + words(beside.get()) + " is about none in particular"
          : words(beside.get())
              + " is about "
              + (one ? "VLAN " : "VLANs ")
              + beside.get().vlans()
              + (entry.told().vlans().isEmpty() ? ", and it names none" : ", not those it names");
    }
    return entry.isExpired(today) && coverage.isSeen(entry)
        ? "it has ended, and another waiver covers the same"
        : "there is no such finding";
  }

  /** What a waiver is for; at a place of its own where it names one switch of the design. */
  private Subject subject(WaiverEntry entry) {
    Selector what = entry.what();
    Optional<String> name =
        what.oneSwitch()
            .flatMap(any -> run.switches().stream().filter(what::fitsSwitch).findFirst());
    if (name.isEmpty()) {
      return new Subject(Optional.empty(), Optional.empty(), "waiver for " + what.words());
    }
    Optional<PortName> port = what.onePort();
    Optional<String> full =
        port.map(
            known ->
                coverage.fits(entry).stream()
                    .flatMap(one -> one.place().flatMap(Place::port).stream())
                    .findFirst()
                    .orElse(known.toString()));
    return new Subject(
        Optional.of(new Place(name.get(), full)),
        port,
        "waiver for " + (port.isPresent() ? what.wordsWithoutPlace() : what.words()));
  }

  private static String words(Finding finding) {
    return finding.rule()
        + finding.place().map(place -> " at " + place).orElse("")
        + (finding.subject().isEmpty() ? "" : " (" + finding.subject() + ")");
  }

  private static Finding finding(RuleInfo rule, Outcome.Candidate said) {
    return new Finding(
        rule.id(),
        said.severity().orElse(rule.floor()),
        said.subject().place(),
        said.subject().port(),
        said.others(),
        said.vlans(),
        said.subject().words(),
        said.designed(),
        said.found(),
        said.consequence(),
        said.proofs(),
        said.design());
  }

  private static String idOf(String rule, Subject subject) {
    return new Finding(
            rule,
            Severity.UNTIDY,
            subject.place(),
            subject.port(),
            List.of(),
            plumbline.vlan.VlanSet.NONE,
            subject.words(),
            "",
            "",
            "",
            List.of(),
            Optional.empty())
        .id();
  }

  /** The findings that count: what no waiver covers wholly, and what is wrong with waivers. */
  public List<Finding> open() {
    return List.copyOf(open);
  }

  /** How often each of the rules about waivers was asked. */
  public List<RuleCount> counts() {
    return counts.entrySet().stream()
        .map(
            count ->
                new RuleCount(
                    count.getKey(), count.getValue()[0], count.getValue()[1], count.getValue()[2]))
        .toList();
  }

  /**
   * Whether a finding about a waiver that is still in the file would be there if there were cause;
   * empty where no waiver of the file can give it.
   *
   * @param id of the finding
   */
  public Optional<Boolean> decided(String id) {
    return Optional.ofNullable(decided.get(id));
  }

  /**
   * What reports tell of the waivers.
   *
   * @param carried findings of an earlier run that this one could not check: they are covered too
   */
  public Accepted accepted(List<Finding> carried) {
    Coverage further = new Coverage(file.entries(), today);
    carried.forEach(further::isWhole);
    Map<String, Accepted.Acceptance> all = new LinkedHashMap<>(further.acceptances());
    all.putAll(coverage.acceptances());
    List<Waiver> ending =
        file.entries().stream()
            .filter(one -> !coverage.fits(one).isEmpty() && !one.isExpired(today))
            .map(WaiverEntry::told)
            .filter(one -> !one.until().isAfter(today.plusDays(Accepted.SOON_DAYS)))
            .sorted(Comparator.comparing(Waiver::until))
            .toList();
    return new Accepted(
        file.file(), file.sha256(), file.entries().size(), waived, all, ending, undecided);
  }

  /** All findings of the run, open and waived. */
  public Stream<Finding> all() {
    return Stream.concat(open.stream(), waived.stream());
  }
}
