package plumbline.report;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plumbline.result.Result;
import plumbline.result.Verdict;

/** What stands at the head of every report for people: the verdict and what it is about. */
final class Headline {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Result result;

  Headline(Result result) {
    this.result = result;
  }

  /** The verdict in one word, in capitals. */
  String word() {
    return result.verdict().result().toString().toUpperCase(Locale.ROOT);
  }

  /** The verdict's counts, and what it claims. */
  String summary() {
    Verdict verdict = result.verdict();
    List<String> counts = new ArrayList<>();
    count(counts, "breaks", verdict.breaks());
    count(counts, "weakens", verdict.weakens());
    count(counts, "unverified", verdict.unverified());
    count(counts, "untidy", verdict.untidy());
    if (verdict.waived() > 0) {
      counts.add(verdict.waived() + " waived");
    }
    if (!result.notAudited().isEmpty()) {
      counts.add(result.notAudited().size() + " not audited");
    }
    long doubt = result.narrowed().portsInDoubt();
    if (doubt > 0) {
      counts.add(Words.count(doubt, "port") + " in doubt for a rule that was not asked");
    }
    String list = String.join(", ", counts);
    return switch (verdict.result()) {
      case DRIFT -> list + "." + narrowed();
      case INCOMPLETE -> incomplete(verdict, list) + "." + narrowed();
      case CONFORMS ->
          audited().stream().allMatch(config -> config.portsDesigned() == 0)
              ? "no port was checked: the design covers none of these switches."
              : conforming(counts.isEmpty() ? "" : "; " + list) + narrowed() + unchecked();
    };
  }

  private String incomplete(Verdict verdict, String list) {
    if (audited().isEmpty()) {
      return "nothing was audited" + (list.isEmpty() ? "" : ": " + list);
    }
    return verdict.checked() == 0
        ? "nothing was checked: no rule that was asked applies to what was given"
            + (list.isEmpty() ? "" : "; " + list)
        : "no drift found, but not everything could be decided: " + list;
  }

  /** Claims no more than what was checked. */
  private String conforming(String counts) {
    if (!counts.isEmpty()) {
      return "nothing that counts as drift in this run" + counts + ".";
    }
    return result.notChecked().isEmpty() && result.narrowed().rules().isEmpty()
        ? "nothing differs from the design."
        : "nothing that was checked differs from the design.";
  }

  private String narrowed() {
    int rules = result.narrowed().rules().size();
    return rules == 0
        ? ""
        : " Only "
            + rules
            + " of "
            + Words.count(rules + result.narrowed().unasked(), "rule")
            + (rules == 1 ? " was asked." : " were asked.");
  }

  private String unchecked() {
    int keys = result.notChecked().size();
    return keys == 0
        ? ""
        : " Not checked by this version: "
            + Words.count(keys, "key")
            + " of the design, named at the end.";
  }

  /** The configs whose switches the design has. */
  List<Result.ConfigFile> audited() {
    return result.configs().stream().filter(Result.ConfigFile::inDesign).toList();
  }

  private static void count(List<String> counts, String word, int number) {
    if (number > 0) {
      counts.add(word + " " + number);
    }
  }

  /** What was checked, against which design, as of when. */
  String scope() {
    long switches = audited().stream().map(Result.ConfigFile::switchName).distinct().count();
    String site = result.site().map(name -> " of " + name).orElse("");
    String revision = result.revision().map(change -> ", design " + change).orElse("");
    return Words.count(result.verdict().checked(), "check")
        + " on "
        + Words.count(switches, "switch")
        + site
        + revision
        + ", as of "
        + MINUTE.format(result.at())
        + ".";
  }
}
