package plumbline.report;

import java.util.ArrayList;
import java.util.List;
import plumbline.finding.Proof;
import plumbline.setting.Evidence;

/** Phrases that several parts of a text report share. */
final class Words {
  /** How many lines of evidence a text report shows for one finding. */
  private static final int MOST_EVIDENCE = 12;

  /** How many names a text report lists in a row. */
  private static final int MOST_NAMES = 12;

  private Words() {}

  /** Number and noun: {@code 1 check}, {@code 2 checks}, {@code 3 switches}. */
  static String count(long number, String noun) {
    if (number == 1) {
      return "1 " + noun;
    }
    return number + " " + noun + (noun.endsWith("ch") ? "es" : "s");
  }

  /** Names in one line; what is more than a dozen is counted. */
  static String names(List<String> names) {
    int more = names.size() - MOST_NAMES;
    return more <= 0
        ? String.join(", ", names)
        : String.join(", ", names.subList(0, MOST_NAMES)) + " and " + more + " more";
  }

  /** Each proof in one line: {@code file:line: quoted text}, or the default's name. */
  static List<String> evidence(List<Proof> proofs) {
    List<String> lines = new ArrayList<>();
    for (Proof proof : proofs) {
      if (lines.size() == MOST_EVIDENCE) {
        lines.add(
            "and "
                + Words.count(proofs.size() - MOST_EVIDENCE, "more line")
                + ", all of them in a --report FILE.json");
        break;
      }
      lines.add(evidence(proof));
    }
    return lines;
  }

  private static String evidence(Proof proof) {
    if (proof.evidence() instanceof Evidence.Line line) {
      return proof.file().orElse("") + ":" + line.line() + ": " + line.text();
    }
    String name = ((Evidence.Default) proof.evidence()).name();
    return proof.file().map(file -> file + ": " + name).orElse("default, " + name);
  }
}
