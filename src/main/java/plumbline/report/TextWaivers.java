package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.result.Accepted;
import plumbline.result.Result;
import plumbline.result.Waiver;
import plumbline.text.Page;
import plumbline.vlan.VlanSet;

/** The parts of a text report that tell what waivers cover. */
final class TextWaivers {
  private final LocalDate today;
  private final Optional<Accepted> accepted;

  TextWaivers(Result result) {
    this.today = LocalDate.ofInstant(result.at(), ZoneOffset.UTC);
    this.accepted = result.followUp().accepted();
  }

  /** Findings that are covered wholly, by switch, port, rule, id. */
  List<Finding> waived() {
    return accepted.map(Accepted::waived).orElse(List.of());
  }

  /** The same under their title. */
  TextFollowUp.Part part() {
    return new TextFollowUp.Part("WAIVED: " + Words.count(waived().size(), "finding"), waived());
  }

  /** The words behind the label {@code waived} of a finding's block; nothing where none apply. */
  List<String> lines(Finding finding) {
    Optional<Accepted.Acceptance> acceptance = accepted.flatMap(all -> all.of(finding));
    if (acceptance.isEmpty()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    for (Waiver waiver : acceptance.get().by()) {
      VlanSet own = waiver.vlans().and(finding.vlans());
      lines.add((own.isEmpty() ? "" : vlans(own) + " ") + words(waiver));
    }
    VlanSet rest = finding.vlans().minus(acceptance.get().vlans());
    if (!acceptance.get().whole() && !acceptance.get().by().isEmpty()) {
      lines.add("not " + vlans(rest) + ": that is open");
    }
    acceptance
        .get()
        .tooLow()
        .ifPresent(
            waiver ->
                lines.add(
                    "not by "
                        + place(waiver)
                        + ": accepted as "
                        + waiver.severity()
                        + ", and it is "
                        + finding.severity()
                        + " now"));
    return lines;
  }

  private static String vlans(VlanSet vlans) {
    return (vlans.size() == 1 ? "VLAN " : "VLANs ") + vlans;
  }

  private String words(Waiver waiver) {
    return "until "
        + waiver.until()
        + inDays(waiver)
        + ", accepted by "
        + waiver.acceptedBy()
        + waiver.ticket().map(ticket -> ", " + ticket).orElse("")
        + renewed(waiver)
        + ": "
        + waiver.why()
        + " ("
        + place(waiver)
        + ")";
  }

  private String inDays(Waiver waiver) {
    long days = ChronoUnit.DAYS.between(today, waiver.until());
    return days == 0 ? " (today)" : " (" + Words.count(days, "day") + " left)";
  }

  private static String renewed(Waiver waiver) {
    List<LocalDate> days = waiver.renewed();
    if (days.isEmpty()) {
      return "";
    }
    String times =
        switch (days.size()) {
          case 1 -> "once";
          case 2 -> "twice";
          default -> days.size() + " times";
        };
    return ", renewed "
        + times
        + " (it was to end on "
        + days.stream().map(LocalDate::toString).collect(joining(", "))
        + ")";
  }

  private static String place(Waiver waiver) {
    return waiver.at().file() + ":" + waiver.at().line();
  }

  /** Writes which waivers end soon, and which of them this run could not check. */
  void write(Page page) {
    if (accepted.isEmpty()) {
      return;
    }
    if (!accepted.get().ending().isEmpty()) {
      page.gap().heading("Waivers that end within " + Accepted.SOON_DAYS + " days");
      for (Waiver waiver : accepted.get().ending()) {
        page.item(
            waiver.until()
                + inDays(waiver)
                + ": "
                + waiver.what()
                + (waiver.vlans().isEmpty() ? "" : ", " + vlans(waiver.vlans()))
                + waiver.ticket().map(ticket -> ", " + ticket).orElse("")
                + ", accepted by "
                + waiver.acceptedBy()
                + ".");
      }
    }
  }

  /** What the file holds, for the list of inputs. */
  Optional<String> input() {
    return accepted.map(
        all ->
            "Waivers: "
                + all.file()
                + ", "
                + Words.count(all.count(), "waiver")
                + (all.undecided() == 0
                    ? ""
                    : "; " + all.undecided() + " may be for what this run did not check"));
  }
}
