package plumbline.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;
import plumbline.text.Page;
import plumbline.text.Wording;

/** Lists the rules, or prints the page of one. */
@Command(
    name = "rules",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Lists all rules: id, group, the severity that a finding has at least, and what is reported."
          + " With an ID, prints the page of that rule: why it matters, its source, an example, how"
          + " to repair what it finds, how to accept it."
    })
final class RulesCommand implements Callable<Integer> {

  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "ID", arity = "0..1", description = "The rule whose page is printed.")
  private Optional<String> id;

  RulesCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    console.out().print(id.isPresent() ? page(id.get()) : list());
    return Status.DONE;
  }

  private static String list() {
    Page page = new Page(false);
    for (Rule rule : RuleCatalogue.ALL) {
      RuleInfo info = rule.info();
      page.paragraph(info.id())
          .hanging("    ", info.group() + ", at least " + info.floor() + ": " + info.summary());
    }
    return page.toString();
  }

  private String page(String wanted) {
    if (RuleCatalogue.named(wanted).isEmpty()) {
      List<String> ids = RuleCatalogue.ALL.stream().map(rule -> rule.info().id()).toList();
      List<String> begins = ids.stream().filter(id -> id.startsWith(wanted)).toList();
      throw new ParameterException(
          spec.commandLine(),
          "unknown rule "
              + Wording.quote(wanted)
              + "; "
              + (begins.isEmpty() || wanted.isEmpty()
                  ? Wording.remedy(wanted, ids, "there are no rules")
                  : "these begin so: " + Wording.alternatives(begins)));
    }
    return RulePage.of(RuleTexts.page(wanted));
  }
}
