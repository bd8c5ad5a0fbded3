package plumbline.run;

import java.io.InputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import plumbline.audit.Audit;
import plumbline.audit.AuditInput;
import plumbline.audit.AuditOutcome;
import plumbline.design.Design;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.result.Result;

/** One audit from arguments to result. */
public final class AuditRun {
  private AuditRun() {}

  /**
   * What is asked for.
   *
   * @param design the design
   * @param configs files, folders or {@code -}, as typed, at least one
   * @param failOn the severity from which on a finding counts as drift
   * @param at when the run is said to be
   */
  public record Request(ReadDesign design, List<String> configs, Severity failOn, Instant at) {
    /** Copies the arguments. */
    public Request {
      configs = List.copyOf(configs);
    }
  }

  /** Reads the configs and audits them. */
  public static Result run(Request request, InputStream standardInput) {
    Design design = request.design().design();
    ConfigReading reading =
        ConfigReading.of(request.configs(), request.design().paths(), standardInput);
    List<ConfigFile> files =
        reading.read(settings -> Scope.switchOf(design, settings), design.harmless());
    Scope scope = Scope.of(design, files, reading.hasFolder());
    AuditOutcome outcome =
        Audit.run(
            new AuditInput(
                design,
                scope.entries().stream().map(Scope.Entry::config).toList(),
                scope.missing(),
                scope.unread()));
    return result(request, files, scope, outcome);
  }

  private static Result result(
      Request request, List<ConfigFile> files, Scope scope, AuditOutcome outcome) {
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
        Verdicts.of(outcome, request.failOn(), !scope.notAudited().isEmpty()),
        outcome.findings(),
        outcome.checks(),
        scope.notAudited(),
        scope.notInScope(),
        outcome.notChecked(),
        files.stream()
            .flatMap(
                file ->
                    file instanceof ConfigFile.Skipped left ? Stream.of(left.line()) : Stream.of())
            .toList(),
        failures);
  }

  private static Result.ConfigFile config(Design design, Scope.Entry entry) {
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
