package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.design.RoleKeys;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Bundle;
import plumbline.setting.Keys;

/** A host's port that is bundled although it is half of a pair, where its role does not say. */
final class PairInBundle implements PairRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "pair-in-bundle",
          Group.PAIR,
          Severity.WEAKENS,
          "a port of a pair is in a bundle, though pairs are not bundled",
          "IEEE 802.1AX; common practice",
          Set.of("hosts.pairs"));

  private static final String DESIGNED = "neither port in a bundle";

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PairCase pair, Outcomes outcomes) {
    TwoEnds ends = pair.ends();
    List<PortCase> silent =
        ends.both(true).stream().filter(port -> port.wish(RoleKeys.BUNDLE).isEmpty()).toList();
    List<PortCase> bundled =
        silent.stream().filter(port -> port.get(Keys.BUNDLE).value().isPresent()).toList();
    Optional<PortCase> open =
        silent.stream().filter(port -> !port.get(Keys.BUNDLE).isDecided()).findFirst();
    Comparison comparison = new Comparison(ends, outcomes);
    if (!bundled.isEmpty()) {
      comparison.tell(candidate(pair, ends, bundled));
    } else if (open.isPresent()) {
      comparison.leaveOpen(open.get(), open.get().get(Keys.BUNDLE), DESIGNED, pair.pair().at());
    } else if (!silent.isEmpty()) {
      comparison.alike();
    }
    comparison.close();
  }

  private static Candidate candidate(PairCase pair, TwoEnds ends, List<PortCase> bundled) {
    List<Proof> proofs = new ArrayList<>();
    bundled.forEach(port -> proofs.addAll(port.proofs(port.get(Keys.BUNDLE))));
    String found =
        bundled.stream()
            .map(port -> BundleWords.found(port.get(Keys.BUNDLE)) + " at " + TwoEnds.name(port))
            .collect(Collectors.joining("; "));
    PortCase end = bundled.get(0);
    return Candidate.of(
            ends.subject(end),
            DESIGNED,
            found,
            consequence(pair, end, bundled.size() == 1),
            proofs,
            Optional.of(pair.pair().at()))
        .beside(ends.beside(end));
  }

  private static String consequence(PairCase pair, PortCase end, boolean only) {
    Bundle bundle = end.get(Keys.BUNDLE).value().orElseThrow();
    String said = BundleWords.unwanted(end, bundle);
    return only && bundle.mode().isLacp()
        ? said
            + " Where it is suspended, "
            + pair.host().name()
            + " has "
            + (end.equals(pair.first()) ? pair.pair().second() : pair.pair().first())
            + " alone."
        : said;
  }
}
