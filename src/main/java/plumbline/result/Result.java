package plumbline.result;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Place;

/**
 * Everything that reports of a run say.
 *
 * @param at when the run was, UTC
 * @param site the design's site
 * @param revision the design's revision
 * @param design the design's files
 * @param configs the configs that were read, in the order given, folders sorted
 * @param silentRules rules that the design switches off, sorted
 * @param verdict the verdict and its counts
 * @param findings all findings that count, by switch, port (numeric), rule, id
 * @param checks how many subjects each rule checked, by rule id, sorted
 * @param switchChecks the same on each switch, by name of the switch and rule id
 * @param notAudited one line for each input that had to be audited and could not be
 * @param notInScope switches of the design that this run leaves out, sorted
 * @param notChecked what the design asks of the others and no rule checks, sorted by key
 * @param ageUnknown switches whose texts do not tell how old they are, where the design sets an age
 *     and the rule about it is asked; sorted
 * @param skipped one line for each file in a folder that is left out because it is no config
 * @param ruleFailures one line for each rule that failed with a bug
 * @param narrowed what the user narrowed the run to
 * @param followUp how the findings stand against earlier runs and against waivers
 */
public record Result(
    Instant at,
    Optional<String> site,
    Optional<String> revision,
    List<InputFile> design,
    List<ConfigFile> configs,
    List<String> silentRules,
    Verdict verdict,
    List<Finding> findings,
    List<RuleCount> checks,
    List<SwitchCount> switchChecks,
    List<String> notAudited,
    List<String> notInScope,
    List<NotChecked> notChecked,
    List<String> ageUnknown,
    List<String> skipped,
    List<String> ruleFailures,
    Narrowed narrowed,
    FollowUp followUp) {
  /** Copies the lists. */
  public Result {
    design = List.copyOf(design);
    configs = List.copyOf(configs);
    silentRules = List.copyOf(silentRules);
    findings = List.copyOf(findings);
    checks = List.copyOf(checks);
    switchChecks = List.copyOf(switchChecks);
    notAudited = List.copyOf(notAudited);
    notInScope = List.copyOf(notInScope);
    notChecked = List.copyOf(notChecked);
    ageUnknown = List.copyOf(ageUnknown);
    skipped = List.copyOf(skipped);
    ruleFailures = List.copyOf(ruleFailures);
  }

  /** The result of a run that is compared with nothing. */
  public Result(
      Instant at,
      Optional<String> site,
      Optional<String> revision,
      List<InputFile> design,
      List<ConfigFile> configs,
      List<String> silentRules,
      Verdict verdict,
      List<Finding> findings,
      List<RuleCount> checks,
      List<SwitchCount> switchChecks,
      List<String> notAudited,
      List<String> notInScope,
      List<NotChecked> notChecked,
      List<String> ageUnknown,
      List<String> skipped,
      List<String> ruleFailures,
      Narrowed narrowed) {
    this(
        at,
        site,
        revision,
        design,
        configs,
        silentRules,
        verdict,
        findings,
        checks,
        switchChecks,
        notAudited,
        notInScope,
        notChecked,
        ageUnknown,
        skipped,
        ruleFailures,
        narrowed,
        FollowUp.NONE);
  }

  /**
   * A file of the design.
   *
   * @param file as typed
   * @param sha256 lower-case hexadecimal
   */
  public record InputFile(String file, String sha256) {}

  /**
   * A config that was read; a file with several switches has several entries.
   *
   * @param file as typed
   * @param switchName the design's name of the switch, or the config's where the design has none
   * @param inDesign whether the design has the switch; one that it has not is not audited
   * @param sha256 lower-case hexadecimal, of the whole file
   * @param lines the number of lines of this switch
   * @param dialect the table of defaults that applies, with the reason in {@code dialectReason}
   * @param dialectReason why that one
   * @param unknownStatements how many statements the grammar does not know
   * @param ports how many ports and bundles the text opens, VLAN interfaces and the like aside
   * @param portsDesigned how many ports and bundles of the switch the design covers
   */
  public record ConfigFile(
      String file,
      String switchName,
      boolean inDesign,
      String sha256,
      int lines,
      String dialect,
      String dialectReason,
      int unknownStatements,
      int ports,
      int portsDesigned) {}

  /**
   * Something that the design asks and that no rule of this version checks.
   *
   * @param key as the design spells it, behind its section where it is no key of a role
   * @param uses how often the design asks it
   * @param of what asks it, singular: {@code port}
   */
  public record NotChecked(String key, int uses, String of) {}

  /**
   * What the user narrowed a run to.
   *
   * @param rules ids of the only rules that were asked, sorted; empty where all were
   * @param unasked how many rules were not asked for that reason
   * @param switches names of the only switches in scope, sorted; empty where no name was given
   * @param inFront what rules that were not asked find at ports that the others were asked about
   */
  public record Narrowed(
      List<String> rules, int unasked, List<String> switches, List<InFront> inFront) {
    /** A run of all rules, about all switches that its inputs are about. */
    public static final Narrowed NOT = new Narrowed(List.of(), 0, List.of(), List.of());

    /** Copies the lists. */
    public Narrowed {
      rules = List.copyOf(rules);
      switches = List.copyOf(switches);
      inFront = List.copyOf(inFront);
    }

    /** How many ports have such a finding. */
    public long portsInDoubt() {
      return inFront.stream().flatMap(one -> one.places().stream()).distinct().count();
    }
  }

  /**
   * A rule that was not asked and differs at ports in such a way that it bears on what was asked.
   *
   * @param rule its id
   * @param places the ports, by switch and in the order of their names
   */
  public record InFront(String rule, List<Place> places) {
    /** Copies the places. */
    public InFront {
      places = List.copyOf(places);
    }
  }

  /**
   * How often a rule was asked.
   *
   * @param rule its id
   * @param conforms subjects that conform
   * @param differs subjects that differ, whether reported or explained by another finding
   * @param undecided subjects that the text cannot decide
   */
  public record RuleCount(String rule, int conforms, int differs, int undecided) {}

  /**
   * How often a rule was asked about one switch, its ports and what begins at them: a pair or a
   * link counts at its first end.
   *
   * @param switchName name of the switch; empty for what is at no switch
   * @param count the counts there
   */
  public record SwitchCount(String switchName, RuleCount count) {}
}
