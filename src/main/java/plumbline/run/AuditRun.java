package plumbline.run;

import java.io.InputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import plumbline.audit.Audit;
import plumbline.audit.AuditInput;
import plumbline.audit.AuditOutcome;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Severity;
import plumbline.history.Earlier;
import plumbline.port.PortName;
import plumbline.result.Result;
import plumbline.rules.ConfigAge;
import plumbline.rules.RuleCatalogue;
import plumbline.waiver.WaiverFile;

/** One audit from arguments to result. */
public final class AuditRun {
  /** The rule about the age of configs. */
  private static final String AGE = "config-stale";

  private AuditRun() {}

  /**
   * What is asked for.
   *
   * @param design the design
   * @param configs files, folders or {@code -}, as typed, at least one
   * @param failOn the severity from which on a finding counts as drift
   * @param at when the run is said to be
   * @param rules ids of the only rules that are asked; none where all are
   * @param switches names of the only switches that are audited; none where the configs decide
   * @param waivers accepted differences, where there are such
   * @param earlier earlier runs that it is compared with, where a history is kept
   */
  public record Request(
      ReadDesign design,
      List<String> configs,
      Severity failOn,
      Instant at,
      Set<String> rules,
      Set<String> switches,
      Optional<WaiverFile> waivers,
      Optional<Earlier> earlier) {
    /** Copies the arguments. */
    public Request {
      configs = List.copyOf(configs);
      rules = Set.copyOf(rules);
      switches = Set.copyOf(switches);
    }

    /** A run that is compared with nothing. */
    public Request(
        ReadDesign design,
        List<String> configs,
        Severity failOn,
        Instant at,
        Set<String> rules,
        Set<String> switches) {
      this(design, configs, failOn, at, rules, switches, Optional.empty(), Optional.empty());
    }
  }

  /** Reads the configs and audits them, while nobody watches. */
  public static Result run(Request request, InputStream standardInput) {
    return run(request, standardInput, Watcher.NONE);
  }

  /** Reads the configs and audits them. */
  public static Result run(Request request, InputStream standardInput, Watcher watcher) {
    try {
      return watched(request, standardInput, watcher);
    } finally {
      watcher.end();
    }
  }

  private static Result watched(Request request, InputStream standardInput, Watcher watcher) {
    Design design = request.design().design();
    ConfigReading reading =
        ConfigReading.of(request.configs(), request.design().exclusions(), standardInput);
    Function<SwitchSettings, Optional<DesignSwitch>> switchOf = owner(request, reading.hasFolder());
    List<ConfigFile> files = reading.read(switchOf, design.harmless(), watcher);
    Scope scope = Scope.of(design, files, reading.hasFolder(), request.switches(), switchOf);
    watcher.comparing(scope.entries().size());
    AuditOutcome outcome =
        Audit.run(
            new AuditInput(
                design,
                scope.entries().stream().map(Scope.Entry::config).toList(),
                scope.missing(),
                scope.unread(),
                request.at()),
            request.rules());
    return result(
        request,
        files,
        scope,
        outcome,
        Following.of(request, new Audited(request, reading.hasFolder(), scope, outcome)));
  }

  /** A single text that does not say whose it is, is of the single switch that was asked for. */
  private static Function<SwitchSettings, Optional<DesignSwitch>> owner(
      Request request, boolean folder) {
    Design design = request.design().design();
    boolean single = !folder && request.configs().size() == 1 && request.switches().size() == 1;
    return settings ->
        single && settings.hostname().value().isEmpty()
            ? request.switches().stream().map(design.switches()::get).findFirst()
            : Scope.switchOf(design, settings);
  }

  /** Switches whose texts leave open how old they are, where that was asked. */
  private static List<String> ageUnknown(Request request, Scope scope) {
    Design design = request.design().design();
    boolean asked =
        !design.silentRules().contains(AGE)
            && (request.rules().isEmpty() || request.rules().contains(AGE));
    return scope.entries().stream()
        .filter(entry -> asked && design.maxAgeDays().isPresent())
        .filter(entry -> entry.config().designed().isPresent())
        .filter(
            entry ->
                !ConfigAge.isTold(
                    entry.config().settings().times(),
                    request.at(),
                    design.maxAgeDays().get().value()))
        .map(Scope.Entry::name)
        .sorted()
        .toList();
  }

  private static Result result(
      Request request,
      List<ConfigFile> files,
      Scope scope,
      AuditOutcome outcome,
      Following following) {
    Design design = request.design().design();
    List<String> failures = new ArrayList<>(outcome.ruleFailures());
    files.stream()
        .flatMap(file -> file instanceof ConfigFile.Unread failed ? Stream.of(failed) : Stream.of())
        .filter(ConfigFile.Unread::bug)
        .forEach(failed -> failures.add(failed.line()));
    return new Result(
        request.at(),
        design.site(),
        design.revision(),
        design.files().stream()
            .map(file -> new Result.InputFile(file.file(), file.sha256()))
            .toList(),
        scope.entries().stream().map(entry -> config(design, entry)).toList(),
        List.copyOf(design.silentRules()),
        Verdicts.of(
            following,
            !outcome.ruleFailures().isEmpty(),
            request.failOn(),
            !scope.notAudited().isEmpty() || !outcome.inFront().isEmpty()),
        following.findings(),
        following.checks(),
        outcome.switchChecks(),
        scope.notAudited(),
        scope.notInScope(),
        outcome.notChecked(),
        ageUnknown(request, scope),
        Stream.of(
                request.design().skipped().stream(),
                files.stream()
                    .flatMap(
                        file ->
                            file instanceof ConfigFile.Skipped left
                                ? Stream.of(left.line())
                                : Stream.of()),
                scope.leftOut().stream())
            .flatMap(lines -> lines)
            .toList(),
        failures,
        narrowed(request, outcome),
        following.followUp());
  }

  private static Result.Narrowed narrowed(Request request, AuditOutcome outcome) {
    Design design = request.design().design();
    List<String> rules =
        request.rules().stream()
            .filter(rule -> !design.silentRules().contains(rule))
            .sorted()
            .toList();
    long unasked =
        RuleCatalogue.ALL.stream()
            .map(rule -> rule.info().id())
            .filter(rule -> !design.silentRules().contains(rule) && !rules.contains(rule))
            .count();
    return new Result.Narrowed(
        rules,
        rules.isEmpty() ? 0 : (int) unasked,
        request.switches().stream().sorted().toList(),
        outcome.inFront());
  }

  /** How reports name a config. */
  static Result.ConfigFile config(Design design, Scope.Entry entry) {
    SwitchSettings settings = entry.config().settings();
    return new Result.ConfigFile(
        entry.file().file(),
        entry.name(),
        entry.config().designed().isPresent(),
        entry.file().sha256(),
        settings.lines(),
        settings.dialect().word(),
        settings.dialectReason(),
        settings.unknownStatements(),
        (int) settings.ports().keySet().stream().filter(AuditRun::isPort).count(),
        entry.config().designed().map(one -> design.portsOf(one.name()).size()).orElse(0));
  }

  private static boolean isPort(PortName port) {
    return port.sub().isEmpty() && (port.kind().isPhysical() || port.kind().isBundle());
  }
}
