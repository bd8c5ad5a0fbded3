package plumbline.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.judge.Impacts;
import plumbline.judge.InFront;
import plumbline.judge.Judge;
import plumbline.judge.Spoken;
import plumbline.port.PortName;
import plumbline.promise.Effects;
import plumbline.promise.Sides;
import plumbline.result.Result;
import plumbline.rules.FabricCase;
import plumbline.rules.FabricRule;
import plumbline.rules.InputCase;
import plumbline.rules.InputRule;
import plumbline.rules.LinkCase;
import plumbline.rules.LinkRule;
import plumbline.rules.Outcome;
import plumbline.rules.Outcomes;
import plumbline.rules.PairCase;
import plumbline.rules.PairRule;
import plumbline.rules.PortCase;
import plumbline.rules.PortRule;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;
import plumbline.rules.SwitchCase;
import plumbline.rules.SwitchRule;

/**
 * The audit: asks every rule about every case and lets the judge make findings of what they say. A
 * rule that fails with a bug is named and the others go on.
 */
public final class Audit {
  private final List<Rule> rules;
  private final Predicate<RuleInfo> asked;
  private final List<Spoken> spoken = new ArrayList<>();
  private final List<String> failures = new ArrayList<>();

  private Audit(List<Rule> rules, Predicate<RuleInfo> asked) {
    this.rules = rules;
    this.asked = asked;
  }

  /** Holds effective settings against the design. */
  public static AuditOutcome run(AuditInput input) {
    return run(input, RuleCatalogue.ALL);
  }

  /**
   * The same, but only some rules are asked. Of the others those are heard that can stand in front
   * of what is asked, so that nothing is told of a port as if it were open and in the right mode.
   *
   * @param only ids of the rules that are asked; none of them means all
   */
  public static AuditOutcome run(AuditInput input, Set<String> only) {
    if (only.isEmpty()) {
      return run(input);
    }
    Set<String> wanted = new HashSet<>(only);
    wanted.removeAll(input.design().silentRules());
    return new Audit(RuleCatalogue.ALL, rule -> wanted.contains(rule.id())).outcome(input);
  }

  /** The same with the given rules only. */
  static AuditOutcome run(AuditInput input, List<Rule> rules) {
    return new Audit(rules, rule -> !input.design().silentRules().contains(rule.id()))
        .outcome(input);
  }

  private AuditOutcome outcome(AuditInput input) {
    Design design = input.design();
    input.missing().forEach(one -> ask(new InputCase.Missing(design, one.designed())));
    input
        .unread()
        .forEach(
            one -> ask(new InputCase.Unread(design, one.file(), one.designed(), one.reason())));
    Map<String, SwitchCase> switches = new LinkedHashMap<>();
    for (AuditInput.AuditedConfig config : input.configs()) {
      InputCase.Read read =
          new InputCase.Read(design, config.designed(), config.settings(), input.at());
      ask(read);
      if (read.isConfig()) {
        for (DesignSwitch known : config.designed().stream().toList()) {
          SwitchCase device = new SwitchCase(design, known, config.settings());
          ask(device);
          switches.putIfAbsent(known.name(), device);
        }
      }
    }
    Sides sides = Sides.of(design, settings(switches), rule -> isHeard(design, rule));
    askAcross(sides, switches);
    // what a rule says that is silent or not asked must not keep another one from being heard
    List<Spoken> heard = spoken.stream().filter(one -> asked.test(one.rule())).toList();
    List<Spoken> inFront =
        InFront.of(
            rules.stream().map(Rule::info).filter(asked).toList(),
            heard,
            spoken.stream().filter(one -> !asked.test(one.rule())).toList());
    Checks checks =
        new Checks(rules.stream().map(Rule::info).filter(asked).map(RuleInfo::id).toList(), heard);
    List<Finding> findings =
        Impacts.told(
            Judge.findings(InFront.noted(heard, inFront)), Effects.of(sides), sides.supposed());
    return new AuditOutcome(
        findings,
        checks.byRule(),
        checks.bySwitch(),
        Coverage.gaps(design, switches(input), rules),
        failures,
        inFront(inFront),
        Answers.of(heard));
  }

  /** Rules that are asked, and those that may stand in front of them. */
  private List<Rule> heard(Design design) {
    return rules.stream()
        .filter(rule -> !design.silentRules().contains(rule.info().id()))
        .filter(rule -> asked.test(rule.info()) || InFront.isPossible(rule.info()))
        .toList();
  }

  private static List<Result.InFront> inFront(List<Spoken> said) {
    SortedMap<String, List<Place>> rules = new TreeMap<>();
    said.stream()
        .sorted(Comparator.comparing(Audit::switchOf).thenComparing(Audit::portOf))
        .forEach(
            one ->
                rules
                    .computeIfAbsent(one.rule().id(), any -> new ArrayList<>())
                    .addAll(one.outcome().subject().place().stream().toList()));
    return rules.entrySet().stream()
        .map(rule -> new Result.InFront(rule.getKey(), rule.getValue()))
        .toList();
  }

  private static String switchOf(Spoken one) {
    return one.outcome().subject().switchName();
  }

  private static PortName portOf(Spoken one) {
    return one.outcome().subject().port().orElseThrow();
  }

  /** Names of the switches that the run is about, whether their configs could be read or not. */
  private static Set<String> switches(AuditInput input) {
    return Stream.of(
            input.configs().stream().flatMap(config -> config.designed().stream()),
            input.missing().stream().map(AuditInput.MissingConfig::designed),
            input.unread().stream().flatMap(failed -> failed.designed().stream()))
        .flatMap(some -> some)
        .map(DesignSwitch::name)
        .collect(Collectors.toUnmodifiableSet());
  }

  private void ask(InputCase input) {
    for (Rule rule : heard(input.design())) {
      if (rule instanceof InputRule one) {
        guarded(rule, place(input), outcomes -> one.check(input, outcomes));
      }
    }
  }

  private void ask(SwitchCase device) {
    List<PortCase> ports = device.ports();
    for (Rule rule : heard(device.design())) {
      if (rule instanceof SwitchRule one) {
        guarded(rule, device.designed().name(), outcomes -> one.check(device, outcomes));
      }
      if (rule instanceof PortRule one) {
        for (PortCase port : ports) {
          String place = device.designed().name() + " " + port.fullName();
          guarded(rule, place, outcomes -> one.check(port, outcomes));
        }
      }
    }
  }

  /** Asks of what lies between ports: pairs of hosts' ports, links, and the network as one. */
  private void askAcross(Sides sides, Map<String, SwitchCase> switches) {
    Design design = sides.found().design();
    FabricCase network = FabricCase.of(sides, switches, rule -> isHeard(design, rule));
    List<PairCase> pairs = PairCase.of(design, switches);
    List<LinkCase> links = LinkCase.of(sides.found(), switches);
    for (Rule rule : heard(design)) {
      if (rule instanceof PairRule one) {
        for (PairCase pair : pairs) {
          String place = pair.host().name() + " " + pair.pair().first();
          guarded(rule, place, outcomes -> one.check(pair, outcomes));
        }
      }
      if (rule instanceof LinkRule one) {
        for (LinkCase link : links) {
          String place = link.first().port().switchName() + " " + link.first().fullName();
          guarded(rule, place, outcomes -> one.check(link, outcomes));
        }
      }
      if (rule instanceof FabricRule one) {
        guarded(rule, "the whole network", outcomes -> one.check(network, outcomes));
      }
    }
  }

  /** Whether findings of a rule are given, so that what follows from them is told there. */
  private boolean isHeard(Design design, String rule) {
    return rules.stream().map(Rule::info).filter(asked).anyMatch(info -> info.id().equals(rule))
        && !design.silentRules().contains(rule);
  }

  private static Map<String, SwitchSettings> settings(Map<String, SwitchCase> switches) {
    Map<String, SwitchSettings> settings = new LinkedHashMap<>();
    switches.forEach((name, device) -> settings.put(name, device.settings()));
    return settings;
  }

  private static String place(InputCase input) {
    if (input instanceof InputCase.Missing missing) {
      return missing.designed().name();
    }
    return input instanceof InputCase.Unread unread
        ? unread.file()
        : ((InputCase.Read) input).name();
  }

  /** The message of an exception may hold config text; its class does not. */
  private void guarded(Rule rule, String place, Question question) {
    List<Outcome> said = new ArrayList<>();
    try {
      question.put(said::add);
    } catch (RuntimeException bug) {
      failures.add(
          "rule "
              + rule.info().id()
              + " failed at "
              + place
              + ": "
              + bug.getClass().getSimpleName());
      return;
    }
    said.forEach(outcome -> spoken.add(new Spoken(rule.info(), outcome)));
  }

  /** A rule asked about one case. */
  private interface Question {
    void put(Outcomes outcomes);
  }
}
