package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.text.Glob;
import plumbline.text.Secrets;

/** A description that does not say what the role wants it to say. */
final class DescriptionDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "description-differs",
          Group.PORT,
          Severity.UNTIDY,
          "the description of a port does not fit the pattern of its role",
          RuleInfo.COMMON_PRACTICE,
          Set.of("description"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Members carry the role of their bundle's link and have descriptions of their own. */
  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<String>> wish = port.wish(RoleKeys.DESCRIPTION);
    if (wish.isEmpty()
        || port.isSpare()
        || port.settings().isEmpty()
        || OnBundle.isSaidOfMember(port)) {
      return;
    }
    String pattern = wish.get().value();
    String designed = "a description like " + Secrets.mask(pattern);
    Setting<String> text = port.get(Keys.DESCRIPTION);
    if (!text.isDecided()) {
      outcomes.add(port.undecided(text, designed, wish.get().at()));
    } else if (text.value().filter(found -> Glob.matches(pattern, found)).isPresent()) {
      outcomes.conforms(port.subject());
    } else if (text.value().filter(found -> found.contains(Secrets.MASK)).isPresent()) {
      outcomes.add(
          Undecided.of(
              port.subject(),
              Undecided.Cause.OWN,
              "a part of the description may be secret and was not compared",
              designed,
              port.proofs(text),
              Optional.of(wish.get().at())));
    } else {
      outcomes.add(
          Candidate.of(
              port.subject(),
              designed,
              text.value().map(found -> "description " + found).orElse("no description"),
              text.value().isPresent()
                  ? "Whoever looks for " + Words.behind(port.port()) + " finds another name here."
                  : "Nothing on the switch says that the port is for "
                      + Words.behind(port.port())
                      + ".",
              port.proofs(text),
              Optional.of(wish.get().at())));
    }
  }
}
