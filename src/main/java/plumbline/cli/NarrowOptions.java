package plumbline.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;
import plumbline.text.Wording;

/** The options that narrow an audit to some rules and some switches. */
final class NarrowOptions {
  @Option(
      names = "--only",
      paramLabel = "RULE",
      split = ",",
      description =
          "Ask only these rules: ids, or groups of rules such as port, with commas between"
              + " them. Can be given several times. The report says that no other was asked.")
  private List<String> only = new ArrayList<>();

  @Option(
      names = "--switch",
      paramLabel = "NAME",
      description =
          "Audit only this switch: its name in the design, or its hostname. Can be given several"
              + " times. The report names the others.")
  private List<String> switches = new ArrayList<>();

  /**
   * Ids of the rules that are asked; none where all are.
   *
   * @throws ParameterException for a word that names no rule and no group
   */
  Set<String> rules(CommandSpec spec) {
    Set<String> ids = new TreeSet<>();
    only.forEach(word -> ids.addAll(rules(spec, word.strip())));
    return ids;
  }

  private static List<String> rules(CommandSpec spec, String word) {
    List<RuleInfo> all = RuleCatalogue.ALL.stream().map(Rule::info).toList();
    List<String> meant =
        all.stream()
            .filter(rule -> rule.id().equals(word) || rule.group().toString().equals(word))
            .map(RuleInfo::id)
            .toList();
    if (!meant.isEmpty()) {
      return meant;
    }
    Set<String> valid = new LinkedHashSet<>();
    all.forEach(rule -> valid.add(rule.group().toString()));
    all.forEach(rule -> valid.add(rule.id()));
    throw new ParameterException(
        spec.commandLine(),
        "--only: "
            + Wording.quote(word)
            + " is no rule and no group of rules; "
            + Wording.remedy(word, valid, ""));
  }

  /**
   * Refuses to ask rules that the design switches off, when none other would be asked.
   *
   * @throws ParameterException naming them
   */
  void keepOne(CommandSpec spec, Set<String> asked, Design design) {
    if (!asked.isEmpty() && design.silentRules().containsAll(asked)) {
      throw new ParameterException(
          spec.commandLine(),
          "--only: the design switches off all that is asked (rules.silent): "
              + String.join(", ", asked));
    }
  }

  /**
   * Names of the switches that are audited; none where no one is named.
   *
   * @throws ParameterException for a word that names no switch of the design
   */
  Set<String> switches(CommandSpec spec, Design design) {
    Set<String> names = new TreeSet<>();
    switches.forEach(word -> names.add(named(spec, design, word)));
    return names;
  }

  /** A switch by name or hostname, letter case aside where none fits exactly. */
  private static String named(CommandSpec spec, Design design, String word) {
    String folded = word.toLowerCase(Locale.ROOT);
    return first(design, one -> one, word)
        .or(() -> first(design, name -> name.toLowerCase(Locale.ROOT), folded))
        .map(DesignSwitch::name)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "--switch: the design has no switch "
                        + Wording.quote(word)
                        + "; "
                        + Wording.remedy(word, words(design), "it has none at all")));
  }

  private static Optional<DesignSwitch> first(
      Design design, Function<String, String> form, String word) {
    return Stream.<Function<DesignSwitch, String>>of(DesignSwitch::name, DesignSwitch::hostname)
        .flatMap(
            name ->
                design.switches().values().stream()
                    .filter(one -> form.apply(name.apply(one)).equals(word)))
        .findFirst();
  }

  private static List<String> words(Design design) {
    return design.switches().values().stream()
        .flatMap(one -> Arrays.stream(new String[] {one.name(), one.hostname()}))
        .distinct()
        .toList();
  }
}
