package plumbline.report;

import java.util.List;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.text.Page;

/** Says at the end of a text report what the severities in it mean. */
final class Legend {
  private Legend() {}

  /** Writes one line for each severity that occurs, worst first; nothing where none does. */
  static void write(Page page, List<Finding> findings) {
    List<Severity> severities =
        findings.stream().map(Finding::severity).distinct().sorted().toList();
    if (!severities.isEmpty()) {
      page.gap().heading("What the severities mean");
      severities.forEach(
          severity -> {
            String mark = String.format("  %-12s", severity);
            page.hanging(mark, " ".repeat(mark.length()), meaning(severity));
          });
    }
  }

  private static String meaning(Severity severity) {
    return switch (severity) {
      case BREAKS -> "it does not work now, though the design promises it";
      case WEAKENS ->
          "it works now, but a protection is gone: the next failure, loop or mistake hurts";
      case UNVERIFIED -> "the text that was given does not tell; the finding says why";
      case UNTIDY -> "not as designed, without effect on traffic";
    };
  }
}
