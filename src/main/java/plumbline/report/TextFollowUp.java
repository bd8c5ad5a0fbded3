package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.result.Accepted;
import plumbline.result.Past;
import plumbline.result.Result;
import plumbline.result.Standing;
import plumbline.result.State;
import plumbline.text.Page;

/** The parts of a text report that tell what became of findings since the run before. */
final class TextFollowUp {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** How many lines a list of cleared findings, of reasons or of runs has at most. */
  private static final int MOST_CLEARED = 60;

  private static final int MOST_REASONS = 12;
  private static final int MOST_NAMED = 4;

  private final Result result;
  private final Optional<Past> past;
  private final Optional<Accepted> accepted;

  TextFollowUp(Result result) {
    this.result = result;
    this.past = result.followUp().past();
    this.accepted = result.followUp().accepted();
  }

  /**
   * Findings under one title.
   *
   * @param title empty where the report has but one such part
   * @param findings by switch, port, rule, id
   */
  record Part(String title, List<Finding> findings) {}

  /** The findings that the run before had not, or had otherwise; empty parts are left out. */
  List<Part> news() {
    List<Part> parts = new ArrayList<>();
    if (isCompared()) {
      part(parts, State.NEW, "NEW since " + before());
      part(parts, State.CHANGED, "CHANGED since " + before());
    }
    return parts;
  }

  /** The other findings that count; empty parts are left out. */
  List<Part> rest() {
    if (!isCompared()) {
      return List.of(new Part("", result.findings()));
    }
    List<Part> parts = new ArrayList<>();
    part(parts, State.STANDING, "STANDING");
    part(parts, State.UNCHECKED, "NOT DECIDED ANY MORE");
    return parts;
  }

  private boolean isCompared() {
    return past.flatMap(Past::before).isPresent();
  }

  private void part(List<Part> parts, State state, String title) {
    List<Finding> findings =
        result.findings().stream().filter(one -> past.get().of(one).state() == state).toList();
    if (!findings.isEmpty()) {
      parts.add(new Part(title + ": " + Words.count(findings.size(), "finding"), findings));
    }
  }

  /** Day of the run before; its minute too where it was on the same day. */
  private String before() {
    Instant at = past.orElseThrow().before().orElseThrow().at();
    LocalDate day = LocalDate.ofInstant(at, ZoneOffset.UTC);
    return day.equals(today()) ? MINUTE.format(at) : day.toString();
  }

  private LocalDate today() {
    return LocalDate.ofInstant(result.at(), ZoneOffset.UTC);
  }

  /** A sentence for the head of the report; nothing where no history is kept. */
  String summary() {
    if (past.isEmpty()) {
      return "";
    }
    if (past.get().before().isEmpty()) {
      return result.findings().isEmpty()
          ? " There is no earlier run to compare with."
          : " There is no earlier run to compare with: all of it counts as new.";
    }
    List<String> counts = new ArrayList<>();
    count(counts, "new", counted(State.NEW));
    count(counts, "changed", counted(State.CHANGED));
    count(counts, "standing", counted(State.STANDING));
    count(counts, "not decided any more", counted(State.UNCHECKED));
    count(counts, "cleared", gone(State.CLEARED).size());
    count(counts, "not checked", gone(State.UNCHECKED).size());
    return " Since "
        + before()
        + ": "
        + (counts.isEmpty() ? "nothing new." : String.join(", ", counts) + ".");
  }

  private long counted(State state) {
    return result.findings().stream().filter(one -> past.get().of(one).state() == state).count();
  }

  private static void count(List<String> counts, String word, long number) {
    if (number > 0 || word.equals("new")) {
      counts.add((number == 0 ? "nothing" : "" + number) + " " + word);
    }
  }

  /** The worst of the new findings, where it is not the worst of all. */
  Optional<Finding> worstNew() {
    if (!isCompared()) {
      return Optional.empty();
    }
    Optional<Finding> worst =
        FindingOrder.worst(
            result.findings().stream()
                .filter(
                    one ->
                        past.get().of(one).state() == State.NEW
                            || past.get().of(one).state() == State.CHANGED)
                .toList());
    return worst.equals(FindingOrder.worst(result.findings())) ? Optional.empty() : worst;
  }

  /** What findings must share to be told in one block. */
  Object key(Finding finding) {
    return List.of(
        past.map(all -> lines(all.of(finding))).orElse(Map.of()),
        accepted.flatMap(all -> all.of(finding)).isPresent() ? finding.id() : "");
  }

  /** Further lines of a finding's block, by their labels. */
  Map<String, String> lines(Finding finding) {
    return past.map(all -> lines(all.of(finding))).orElse(Map.of());
  }

  private Map<String, String> lines(Standing standing) {
    Map<String, String> lines = new LinkedHashMap<>();
    if (past.orElseThrow().before().isPresent() && standing.state() != State.NEW) {
      lines.put("since", standing.since() + age(standing.since()));
    }
    if (standing.state() == State.CHANGED) {
      lines.put("changed", changed(standing));
    } else if (standing.state() == State.UNCHECKED) {
      lines.put(
          "before", standing.before().map(was -> words(was) + "; " + standing.why()).orElse(""));
    }
    return lines;
  }

  private String age(LocalDate since) {
    long days = java.time.temporal.ChronoUnit.DAYS.between(since, today());
    return days <= 0 ? "" : " (" + Words.count(days, "day") + ")";
  }

  private static String changed(Standing standing) {
    Standing.Before was = standing.before().orElseThrow();
    return "was "
        + words(was)
        + (standing.newVlans().isEmpty() ? "" : "; new in it: " + vlans(standing.newVlans()));
  }

  private static String words(Standing.Before was) {
    return was.severity() + (was.vlans().isEmpty() ? "" : ", " + vlans(was.vlans()));
  }

  private static String vlans(plumbline.vlan.VlanSet vlans) {
    return (vlans.size() == 1 ? "VLAN " : "VLANs ") + vlans;
  }

  private List<Finding> gone(State state) {
    return past.stream()
        .flatMap(all -> all.gone().stream().filter(one -> all.of(one).state() == state))
        .toList();
  }

  /** Writes what is gone. */
  void cleared(Page page) {
    List<Finding> cleared = gone(State.CLEARED);
    if (!cleared.isEmpty()) {
      page.gap()
          .heading("CLEARED since " + before() + ": " + Words.count(cleared.size(), "finding"));
      List<Alike> blocks = Alike.of(cleared, this::fate);
      blocks.stream().limit(MOST_CLEARED).forEach(block -> page.item(cleared(block)));
      more(page, blocks.size() - MOST_CLEARED, "more line");
    }
  }

  /** Writes what may still be there. */
  void unchecked(Page page) {
    List<Finding> unchecked = gone(State.UNCHECKED);
    if (!unchecked.isEmpty()) {
      page.gap()
          .heading(
              "NOT CHECKED in this run, and still open as far as is known: "
                  + Words.count(unchecked.size(), "finding"));
      Map<String, List<Finding>> reasons = new LinkedHashMap<>();
      unchecked.forEach(
          one ->
              reasons.computeIfAbsent(past.get().of(one).why(), any -> new ArrayList<>()).add(one));
      reasons.entrySet().stream()
          .limit(MOST_REASONS)
          .forEach(why -> page.item(unchecked(why.getKey(), why.getValue())));
      more(page, reasons.size() - MOST_REASONS, "more reason");
    }
  }

  private Object fate(Finding one) {
    Standing standing = past.orElseThrow().of(one);
    return List.of(one.switchName(), standing.since(), standing.clearedBy());
  }

  private String cleared(Alike block) {
    Finding first = block.first();
    Standing standing = past.orElseThrow().of(first);
    return (first.switchName().isEmpty() ? "" : first.switchName() + " ")
        + block.heading()
        + ": "
        + first.rule()
        + ", "
        + first.severity()
        + " since "
        + standing.since()
        + "; "
        + standing.clearedBy().orElseThrow().clause()
        + ".";
  }

  private String unchecked(String why, List<Finding> findings) {
    LocalDate oldest =
        findings.stream()
            .map(one -> past.orElseThrow().of(one).since())
            .min(LocalDate::compareTo)
            .orElseThrow();
    Severity worst = FindingOrder.worst(findings).orElseThrow().severity();
    String some = findings.stream().limit(MOST_NAMED).map(this::named).collect(joining(", "));
    int more = findings.size() - MOST_NAMED;
    return capital(why)
        + ": "
        + (findings.size() == 1
            ? worst + " since " + oldest
            : Words.count(findings.size(), "finding")
                + ", the worst "
                + worst
                + ", the oldest since "
                + oldest)
        + ": "
        + some
        + (more > 0 ? " and " + more + " more." : ".");
  }

  private String named(Finding finding) {
    String where = finding.place().map(place -> " at " + place).orElse(": " + finding.subject());
    boolean waived =
        accepted.flatMap(all -> all.of(finding)).filter(one -> one.whole()).isPresent();
    return finding.rule() + where + (waived ? " (waived)" : "");
  }

  private static String capital(String words) {
    boolean name = words.indexOf(' ') > 0 && words.substring(0, words.indexOf(' ')).contains("-");
    return name ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static void more(Page page, int number, String what) {
    if (number > 0) {
      page.item("and " + Words.count(number, what) + ", each in a --report FILE.json");
    }
  }
}
