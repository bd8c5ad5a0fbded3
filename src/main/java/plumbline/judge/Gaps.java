package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.rules.Outcome.Undecided.Cause;
import plumbline.rules.RuleInfo;
import plumbline.rules.Subject;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanSet;

/** Gives what remains of a switch's outcomes as findings, and each gap in its text once. */
final class Gaps {
  private static final String NOT_COUNTED =
      "The text given does not decide this; it is not counted as conforming.";

  private static final Comparator<PortName> PORTS =
      Comparator.nullsFirst(Comparator.naturalOrder());

  private Gaps() {}

  /** Lines in the order of the text, then defaults. */
  private static int lineOf(Proof proof) {
    return proof.evidence() instanceof Evidence.Line line ? line.line() : Integer.MAX_VALUE;
  }

  /** The rule whose finding stands for all gaps of a cause, where it is given. */
  private static final Map<Cause, String> STANDS_FOR =
      Map.of(Cause.CUT, "config-truncated", Cause.VLAN_DATABASE, "vlan-database-unknown");

  /** The findings of one switch, in no order. */
  static List<Finding> findings(List<Spoken> said) {
    List<Finding> findings = new ArrayList<>();
    Map<String, List<Spoken>> ofText = new TreeMap<>();
    List<Spoken> ofPorts = new ArrayList<>();
    for (Spoken one : said) {
      if (one.outcome() instanceof Undecided open && !isStoodFor(open, said)) {
        if (open.cause() == Cause.TEXT) {
          ofText.computeIfAbsent(one.rule().id(), any -> new ArrayList<>()).add(one);
        } else if (open.cause() == Cause.OWN || open.cause() == Cause.MODE) {
          ofPorts.add(one);
        } else {
          findings.add(finding(new Gap(one, List.of())));
        }
      }
    }
    UnknownStatements unknown = UnknownStatements.of(said);
    Map<Boolean, List<Gap>> gaps =
        Gap.of(ofPorts).stream().collect(Collectors.partitioningBy(unknown::explain));
    for (Spoken one : said) {
      if (one.outcome() instanceof Candidate candidate) {
        Candidate given =
            UnknownStatements.isGiven(one)
                ? UnknownStatements.telling(candidate, inOrder(gaps.get(true)))
                : counted(one.rule(), candidate, said);
        findings.add(finding(one.rule(), given));
      }
    }
    gaps.get(false).forEach(gap -> findings.add(finding(gap)));
    ofText.values().forEach(open -> findings.add(merged(open)));
    return findings;
  }

  private static List<Gap> inOrder(List<Gap> gaps) {
    return gaps.stream()
        .sorted(
            Comparator.comparing(gap -> gap.lead().outcome().subject().port().orElse(null), PORTS))
        .toList();
  }

  private static boolean isStoodFor(Undecided open, List<Spoken> said) {
    String rule = STANDS_FOR.get(open.cause());
    return rule != null
        && said.stream()
            .anyMatch(one -> one.rule().id().equals(rule) && one.outcome() instanceof Candidate);
  }

  /** A cut text says how much it leaves open. */
  private static Candidate counted(RuleInfo rule, Candidate candidate, List<Spoken> said) {
    if (!rule.id().equals(STANDS_FOR.get(Cause.CUT))) {
      return candidate;
    }
    List<Subject> open =
        said.stream()
            .filter(one -> one.outcome() instanceof Undecided gap && gap.cause() == Cause.CUT)
            .map(one -> one.outcome().subject())
            .toList();
    long ports = open.stream().filter(one -> one.port().isPresent()).distinct().count();
    return candidate.followedBy(
        "Left open by it: " + plural(open.size(), "check") + " on " + plural(ports, "port") + ".");
  }

  private static String plural(long count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  private static Finding finding(RuleInfo rule, Candidate candidate) {
    return new Finding(
        rule.id(),
        candidate.severity().orElse(rule.floor()),
        candidate.subject().place(),
        candidate.subject().port(),
        candidate.others(),
        candidate.vlans(),
        candidate.subject().words(),
        candidate.designed(),
        candidate.found(),
        candidate.consequence(),
        candidate.proofs(),
        candidate.design());
  }

  private static Finding finding(Gap gap) {
    Undecided open = (Undecided) gap.lead().outcome();
    String more =
        gap.others().isEmpty()
            ? ""
            : " Open by the same cause: " + Gap.checks(gap.others().stream()) + ".";
    return new Finding(
        gap.lead().rule().id(),
        Severity.UNVERIFIED,
        open.subject().place(),
        open.subject().port(),
        List.of(),
        VlanSet.NONE,
        open.subject().words(),
        open.designed(),
        "cannot be told: " + open.why(),
        NOT_COUNTED + more,
        open.proofs(),
        open.design());
  }

  /** One finding for all ports on which a text leaves open what one rule asks. */
  private static Finding merged(List<Spoken> of) {
    List<Undecided> open =
        of.stream()
            .map(one -> (Undecided) one.outcome())
            .sorted(Comparator.comparing(one -> one.subject().port().orElse(null), PORTS))
            .toList();
    Undecided first = open.get(0);
    List<Place> ports =
        open.stream().flatMap(one -> one.subject().place().stream()).distinct().toList();
    List<String> designed = open.stream().map(Undecided::designed).distinct().toList();
    String why = open.stream().map(Undecided::why).distinct().collect(Collectors.joining("; "));
    return new Finding(
        of.get(0).rule().id(),
        Severity.UNVERIFIED,
        Optional.of(Place.ofSwitch(first.subject().switchName())),
        Optional.empty(),
        ports,
        VlanSet.NONE,
        "",
        designed.size() == 1 ? designed.get(0) : "what the roles of these ports say",
        "cannot be told on " + plural(ports.size(), "port") + ": " + why,
        NOT_COUNTED,
        open.stream()
            .flatMap(one -> one.proofs().stream())
            .distinct()
            .sorted(Comparator.comparingInt(Gaps::lineOf))
            .toList(),
        first.design());
  }
}
