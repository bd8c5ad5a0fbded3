package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.design.DesignSwitch;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;

/** A file that was given and could not be read. */
final class ConfigUnreadable implements InputRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "config-unreadable",
          Group.INPUT,
          Severity.UNVERIFIED,
          "a file given as config cannot be read as one",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(InputCase input, Outcomes outcomes) {
    if (input instanceof InputCase.Read read) {
      outcomes.conforms(read.subject());
    } else if (input instanceof InputCase.Unread unread) {
      Optional<String> name = unread.designed().map(DesignSwitch::name);
      outcomes.add(
          Candidate.of(
              new Subject(name.map(Place::ofSwitch), Optional.empty(), baseName(unread.file())),
              name.map(known -> "a config of " + known).orElse("a config"),
              unread.reason(),
              name.map(known -> "Nothing is known of " + known + " from this file.")
                  .orElse("If this file is the config of a switch, that switch is not audited."),
              List.of(
                  new Proof(Optional.of(unread.file()), new Evidence.Default("the whole file"))),
              unread.designed().map(DesignSwitch::at)));
    }
  }

  /** Weekly runs read dated folders: the folder must not make the finding another one. */
  private static String baseName(String file) {
    return file.substring(file.lastIndexOf('/') + 1);
  }
}
