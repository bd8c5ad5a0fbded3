package plumbline.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.result.ClearedBy;
import plumbline.result.Past;
import plumbline.result.Standing;
import plumbline.result.State;
import plumbline.vlan.VlanSet;

class ComparisonTest {
  private static final Instant THEN = Instant.parse("2026-11-18T02:10:00Z");
  private static final LocalDate TODAY = LocalDate.parse("2026-11-25");
  private static final LocalDate LONG_AGO = LocalDate.parse("2026-10-07");

  @Test
  void a_finding_that_no_run_had_is_new_from_today() {
    Finding one = Runs.finding(1, 1, Severity.WEAKENS, 231);
    assertThat(standing(run(), one)).isEqualTo(Standing.fresh(TODAY));
    assertThat(Comparison.ofFirst(List.of(one), TODAY).standings().get(one.id()))
        .isEqualTo(Standing.fresh(TODAY));
  }

  @Test
  void the_same_finding_stands_since_its_first_run() {
    Finding one = Runs.finding(1, 1, Severity.WEAKENS, 231);
    Standing standing = standing(run(past(one, State.STANDING)), one);
    assertThat(standing.state()).isEqualTo(State.STANDING);
    assertThat(standing.since()).isEqualTo(LONG_AGO);
  }

  @Test
  void other_vlans_or_another_severity_change_it_and_other_words_or_lines_do_not() {
    Finding was = Runs.finding(1, 1, Severity.WEAKENS, 231);
    PastRun before = run(past(was, State.NEW));
    Standing more = standing(before, Runs.finding(1, 1, Severity.WEAKENS, 231, 232));
    assertThat(more.state()).isEqualTo(State.CHANGED);
    assertThat(more.newVlans()).isEqualTo(VlanSet.of(232));
    assertThat(more.before()).contains(new Standing.Before(Severity.WEAKENS, VlanSet.of(231)));
    Standing worse = standing(before, Runs.finding(1, 1, Severity.BREAKS, 231));
    assertThat(worse.state()).isEqualTo(State.CHANGED);
    assertThat(worse.newVlans()).isEqualTo(VlanSet.NONE);
    Finding moved =
        new Finding(
            was.rule(),
            was.severity(),
            was.place(),
            was.portOrder(),
            List.of(),
            was.vlans(),
            was.subject(),
            "other words",
            "other words",
            "other words",
            List.of(),
            Optional.empty());
    assertThat(standing(before, moved).state()).isEqualTo(State.STANDING);
  }

  @Test
  void what_the_text_does_not_decide_any_more_is_unchecked_and_stands_when_it_is_decided_again() {
    Finding was = Runs.finding(1, 1, Severity.WEAKENS, 231);
    Finding open = Runs.finding(1, 1, Severity.UNVERIFIED);
    Standing now = standing(run(past(was, State.STANDING)), open);
    assertThat(now.state()).isEqualTo(State.UNCHECKED);
    assertThat(now.since()).isEqualTo(LONG_AGO);
    assertThat(now.why()).isNotEmpty();
    PastFinding kept =
        new PastFinding(open, Optional.of(now.state()), Optional.of(now.since()), now.before());
    assertThat(standing(run(kept), was).state()).isEqualTo(State.STANDING);
    // a gap that never was anything else stands as a gap
    assertThat(standing(run(past(open, State.NEW)), open).state()).isEqualTo(State.STANDING);
  }

  @Test
  void a_narrow_run_that_finds_it_less_bad_changes_nothing() {
    Finding was = Runs.finding(1, 1, Severity.BREAKS, 231);
    Finding less = Runs.finding(1, 1, Severity.WEAKENS, 231);
    Standing narrow =
        Comparison.of(run(past(was, State.NEW)), List.of(less), TODAY, Fixed.UNCHECKED)
            .standings()
            .get(was.id());
    assertThat(narrow.state()).isEqualTo(State.STANDING);
    PastFinding kept =
        new PastFinding(less, Optional.of(narrow.state()), Optional.of(LONG_AGO), narrow.before());
    assertThat(standing(run(kept), was).state()).isEqualTo(State.STANDING);
    assertThat(standing(run(kept), less).state()).isEqualTo(State.CHANGED);
    assertThat(standing(run(past(was, State.NEW)), less).state()).isEqualTo(State.CHANGED);
  }

  @Test
  void a_cleared_finding_is_told_once_and_is_new_when_it_comes_back() {
    Finding one = Runs.finding(1, 1, Severity.WEAKENS, 231);
    Comparison cleared = Comparison.of(run(past(one, State.NEW)), List.of(), TODAY, Fixed.CLEARED);
    assertThat(cleared.gone()).containsExactly(one);
    assertThat(cleared.standings().get(one.id()))
        .isEqualTo(Standing.cleared(LONG_AGO, ClearedBy.CONFIG));
    PastRun after = run(past(one, State.CLEARED));
    assertThat(Comparison.of(after, List.of(), TODAY, Fixed.CLEARED).gone()).isEmpty();
    assertThat(standing(after, one)).isEqualTo(Standing.fresh(TODAY));
  }

  @Test
  void what_a_run_could_not_check_counts_in_the_trend_as_it_was() {
    Finding seen = Runs.finding(1, 1, Severity.WEAKENS, 231);
    Finding unseen = Runs.finding(2, 1, Severity.BREAKS, 231);
    Finding waived = Runs.finding(3, 1, Severity.BREAKS, 231);
    Comparison compared =
        Comparison.of(
            run(past(unseen, State.NEW), past(waived, State.NEW)),
            List.of(seen),
            TODAY,
            Fixed.UNCHECKED);
    assertThat(compared.point(THEN, List.of(seen), Set.of(waived.id())))
        .isEqualTo(new Past.TrendPoint(THEN, 1, 1, 0, 0, 1, 1, Optional.of(LONG_AGO)));
  }

  /** What the issue asks: cleared, standing and introduced partition the findings. */
  @Property(tries = 300)
  void cleared_standing_and_introduced_partition_the_findings(
      @ForAll("some") List<Finding> then,
      @ForAll("some") List<Finding> now,
      @ForAll Set<Integer> unchecked) {
    List<PastFinding> past = new ArrayList<>();
    then.forEach(one -> past.add(past(one, State.STANDING)));
    Decider decider =
        new Decider() {
          @Override
          public Fate of(PastFinding one, PastRun before) {
            return unchecked.contains(one.finding().id().hashCode() % 3)
                ? new Fate.Unchecked("it is outside this run")
                : new Fate.Cleared(ClearedBy.DESIGN);
          }

          @Override
          public boolean sawAll() {
            return true;
          }
        };
    Comparison compared = Comparison.of(run(past.toArray(PastFinding[]::new)), now, TODAY, decider);
    Set<String> before = ids(then);
    Set<String> after = ids(now);
    Map<State, Set<String>> byState =
        compared.standings().entrySet().stream()
            .collect(
                Collectors.groupingBy(
                    one -> one.getValue().state(),
                    Collectors.mapping(Map.Entry::getKey, Collectors.toSet())));
    Set<String> introduced = byState.getOrDefault(State.NEW, Set.of());
    Set<String> cleared = byState.getOrDefault(State.CLEARED, Set.of());
    Set<String> standing = new HashSet<>(byState.getOrDefault(State.STANDING, Set.of()));
    standing.addAll(byState.getOrDefault(State.CHANGED, Set.of()));
    standing.addAll(byState.getOrDefault(State.UNCHECKED, Set.of()));
    assertThat(introduced.size() + cleared.size() + standing.size())
        .isEqualTo(compared.standings().size());
    assertThat(compared.standings().keySet()).isEqualTo(union(before, after));
    assertThat(introduced).isEqualTo(minus(after, before));
    assertThat(union(introduced, standing)).containsAll(after);
    assertThat(union(cleared, standing)).isEqualTo(before);
    assertThat(minus(after, cleared)).isEqualTo(after);
    assertThat(ids(compared.gone())).isEqualTo(minus(before, after));
  }

  @Provide
  Arbitrary<List<Finding>> some() {
    Arbitrary<Finding> one =
        Combinators.combine(
                Arbitraries.integers().between(1, 3),
                Arbitraries.integers().between(1, 4),
                Arbitraries.of(Severity.values()),
                Arbitraries.integers().between(230, 233).array(int[].class).ofMaxSize(3))
            .as(Runs::finding);
    return one.list().ofMaxSize(12).uniqueElements(Finding::id);
  }

  private static Set<String> ids(List<Finding> findings) {
    return findings.stream().map(Finding::id).collect(Collectors.toSet());
  }

  private static Set<String> union(Set<String> one, Set<String> other) {
    Set<String> both = new HashSet<>(one);
    both.addAll(other);
    return both;
  }

  private static Set<String> minus(Set<String> one, Set<String> other) {
    Set<String> rest = new HashSet<>(one);
    rest.removeAll(other);
    return rest;
  }

  private static Standing standing(PastRun before, Finding now) {
    return Comparison.of(before, List.of(now), TODAY, Fixed.CLEARED).standings().get(now.id());
  }

  private static PastFinding past(Finding finding, State state) {
    return new PastFinding(finding, Optional.of(state), Optional.of(LONG_AGO), Optional.empty());
  }

  private static PastRun run(PastFinding... findings) {
    return new PastRun(
        "2026-11-18T021000Z-0123456789ab.json",
        THEN,
        Optional.of(Runs.SITE),
        Set.of(),
        Map.of(),
        Optional.empty(),
        new Past.TrendPoint(THEN, 0, 0, 0, 0, 0, 0, Optional.empty()),
        List.of(findings));
  }
}
