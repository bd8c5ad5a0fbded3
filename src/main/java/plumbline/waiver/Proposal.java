package plumbline.waiver;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.result.Accepted;
import plumbline.text.Display;
import plumbline.vlan.VlanSet;

/**
 * Writes a file of waivers for what is open, to be filled in: reason, name and end are left empty,
 * so that it is not valid before a person has decided each.
 */
public final class Proposal {
  private static final String OF_WAIVERS = "waiver-";
  private static final int LONGEST_NOTE = 100;

  private Proposal() {}

  /**
   * The file in YAML; empty where nothing is open.
   *
   * @param findings those that count, in order
   * @param accepted what is covered of them already
   * @param today the day of the run, UTC
   */
  public static Optional<String> of(
      List<Finding> findings, Optional<Accepted> accepted, LocalDate today) {
    List<Finding> open =
        findings.stream().filter(one -> !one.rule().startsWith(OF_WAIVERS)).toList();
    if (open.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder text =
        new StringBuilder(
            "# What was open on "
                + today
                + ". Take out what is to be put right; give what is accepted a reason, the\n"
                + "# name of who accepts it and the last day on which that holds. Until then the file"
                + " is not valid.\n"
                + "format: "
                + WaiverReader.FORMAT
                + "\nwaivers:\n");
    for (Finding finding : open) {
      VlanSet covered =
          accepted.flatMap(all -> all.of(finding)).map(one -> one.vlans()).orElse(VlanSet.NONE);
      entry(text, finding, finding.vlans().minus(covered));
    }
    return Optional.of(text.toString());
  }

  private static void entry(StringBuilder text, Finding finding, VlanSet vlans) {
    text.append("  # ").append(note(finding.found())).append('\n');
    text.append("  # ").append(note(finding.consequence())).append('\n');
    text.append("  - rule: ").append(finding.rule()).append('\n');
    line(text, "switch", quoted(finding.switchName()));
    line(text, "port", quoted(finding.place().flatMap(Place::port).orElse("")));
    line(text, "subject", quoted(finding.subject()));
    if (!vlans.isEmpty()) {
      line(text, "vlans", "[" + vlans.toString().replace(",", ", ") + "]");
    }
    line(text, "severity", finding.severity().toString());
    line(text, "why", "");
    line(text, "accepted-by", "");
    line(text, "ticket", "");
    line(text, "until", "");
  }

  private static void line(StringBuilder text, String key, String value) {
    text.append("    ").append(key).append(':');
    text.append(value.isEmpty() ? "" : " " + value).append('\n');
  }

  private static String note(String words) {
    String clean = Display.clean(words).replaceAll("\\s+", " ").strip();
    return clean.codePointCount(0, clean.length()) <= LONGEST_NOTE
        ? clean
        : clean.substring(0, clean.offsetByCodePoints(0, LONGEST_NOTE - 3)) + "...";
  }

  /** A double-quoted scalar of YAML 1.2 (section 7.3.1); the same is a string of JSON. */
  private static String quoted(String word) {
    return '"' + Display.clean(word).replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
