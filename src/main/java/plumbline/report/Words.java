package plumbline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plumbline.finding.Finding;
import plumbline.finding.Proof;
import plumbline.setting.Evidence;

/** Phrases that several parts of a text report share. */
final class Words {
  /** How many lines of evidence a text report shows for one finding. */
  private static final int MOST_EVIDENCE = 12;

  /** How many names a text report lists in a row. */
  private static final int MOST_NAMES = 12;

  private static final String BETWEEN = ", (?=line [0-9])";

  private static final Pattern LINES =
      Pattern.compile(
          "line [0-9]+ \"[^\"]*\"(?:, line [0-9]+ \"[^\"]*\"){" + MOST_EVIDENCE + ",}+");

  /** The rules whose findings without a switch are about the network, and not about a file. */
  private static final Set<String> OF_NETWORK =
      Set.of(
          "broadcast-domain-split",
          "gateway-unreachable",
          "host-single-point",
          "service-single-point");

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

  /** The same text; of more than a dozen numbered lines in a row the others are counted. */
  static String withFewLines(String text) {
    return LINES
        .matcher(text)
        .replaceAll(
            row -> {
              String[] lines = row.group().split(BETWEEN, -1);
              String first = String.join(", ", List.of(lines).subList(0, MOST_EVIDENCE));
              int more = lines.length - MOST_EVIDENCE;
              return Matcher.quoteReplacement(first + " and " + more + " more");
            });
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

  /** The heading of findings without a switch. */
  static String heading(List<Finding> findings) {
    if (findings.stream().allMatch(one -> one.rule().startsWith("waiver-"))) {
      return "The file of waivers";
    }
    boolean network = findings.stream().anyMatch(one -> OF_NETWORK.contains(one.rule()));
    boolean all = findings.stream().allMatch(one -> OF_NETWORK.contains(one.rule()));
    return network
        ? "The network as a whole" + (all ? "" : ", and no switch of the design")
        : "No switch of the design";
  }

  /** What a finding without a switch is about: a file that is nobody's, or a name. */
  static String file(Finding finding) {
    if (finding.rule().startsWith("waiver-") || OF_NETWORK.contains(finding.rule())) {
      return finding.subject();
    }
    return finding.subject().equals("-") ? "standard input" : "the file " + finding.subject();
  }
}
