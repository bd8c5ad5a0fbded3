package plumbline.run;

import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import plumbline.audit.Audit;
import plumbline.audit.AuditInput;
import plumbline.audit.AuditOutcome;
import plumbline.design.Design;
import plumbline.finding.Severity;
import plumbline.intake.Source;
import plumbline.result.Result;
import plumbline.result.WindowResult;
import plumbline.window.SwitchWindow;
import plumbline.window.Window;

/** One comparison of a change window from arguments to result. */
public final class WindowRun {
  private final Request request;
  private final Design design;
  private final WindowSide before;
  private final WindowSide after;
  private final Optional<WindowSide> rest;
  private final List<String> remarks = new ArrayList<>();
  private final List<String> faults = new ArrayList<>();

  private WindowRun(
      Request request, WindowSide before, WindowSide after, Optional<WindowSide> rest) {
    this.request = request;
    this.design = request.design().design();
    this.before = before;
    this.after = after;
    this.rest = rest;
  }

  /**
   * What is asked for.
   *
   * @param design the design
   * @param from the design before the change, where one is given
   * @param before configs before the window, as typed, at least one
   * @param after configs after the window, likewise
   * @param rest configs of switches that the window did not touch; may be empty
   * @param failOn the severity from which on an introduced finding is not as planned
   * @param at when the run is said to be
   */
  public record Request(
      ReadDesign design,
      Optional<ReadDesign> from,
      List<String> before,
      List<String> after,
      List<String> rest,
      Severity failOn,
      Instant at) {
    /** Copies the arguments. */
    public Request {
      before = List.copyOf(before);
      after = List.copyOf(after);
      rest = List.copyOf(rest);
    }
  }

  /** Reads both sides and compares them. */
  public static WindowResult run(Request request, InputStream standardInput, Watcher watcher) {
    try {
      return read(request, standardInput, watcher).compare(watcher);
    } finally {
      watcher.end();
    }
  }

  /** Standard input can be read once, so that the other side is read first and may name it. */
  private static WindowRun read(Request request, InputStream standardInput, Watcher watcher) {
    Reader reader = new Reader(request, standardInput, watcher);
    boolean afterFirst = request.before().contains(Source.STANDARD_INPUT);
    WindowSide first =
        reader.read(afterFirst ? request.after() : request.before(), Optional.empty());
    WindowSide second =
        reader.read(afterFirst ? request.before() : request.after(), Optional.of(first));
    Optional<WindowSide> rest =
        request.rest().isEmpty()
            ? Optional.empty()
            : Optional.of(reader.read(request.rest(), Optional.empty()));
    return new WindowRun(request, afterFirst ? second : first, afterFirst ? first : second, rest);
  }

  /** Reads sides of one run. */
  private record Reader(Request request, InputStream standardInput, Watcher watcher) {
    WindowSide read(List<String> arguments, Optional<WindowSide> other) {
      List<Path> exclusions = new ArrayList<>(request.design().exclusions());
      request.from().ifPresent(old -> exclusions.addAll(old.exclusions()));
      return WindowSide.read(
          arguments,
          request.design().design(),
          exclusions,
          other.flatMap(WindowSide::only),
          standardInput,
          watcher);
    }
  }

  private WindowResult compare(Watcher watcher) {
    scope();
    Set<String> oneSided = oneSided();
    List<SwitchWindow> switches =
        before.entries().keySet().stream()
            .filter(after.entries()::containsKey)
            .sorted()
            .map(name -> new SwitchWindow(name, before.side(name), after.side(name)))
            .toList();
    List<SwitchWindow> untouched =
        rest.stream()
            .flatMap(
                side ->
                    side.entries().keySet().stream()
                        .sorted()
                        .map(name -> SwitchWindow.untouched(name, side.side(name))))
            .toList();
    watcher.comparing(switches.size() + untouched.size());
    AuditOutcome old = audit(before);
    AuditOutcome now = audit(after);
    List<String> failures =
        Stream.of(
                old.ruleFailures().stream(),
                now.ruleFailures().stream(),
                Stream.of(before, after).flatMap(side -> side.bugs().stream()),
                rest.stream().flatMap(side -> side.bugs().stream()))
            .flatMap(lines -> lines)
            .distinct()
            .toList();
    failures.forEach(failure -> faults.add("not everything was checked: " + failure));
    Window.Outcome outcome =
        Window.compare(
            new Window.Input(
                design,
                request.from().map(ReadDesign::design),
                switches,
                untouched,
                oneSided,
                old.findings(),
                now.findings(),
                faults,
                request.failOn()));
    return new WindowResult(
        outcome.verdict(),
        outcome.reason(),
        request.from().map(one -> files(one.design())),
        result(now, outcome.notCompared(), failures),
        configs(before),
        configs(after),
        rest.map(this::configs).orElse(List.of()),
        outcome.changes(),
        outcome.lines(),
        outcome.findings(),
        outcome.notCompared(),
        remarks);
  }

  /** Which switches are in the window; says what is left out. */
  private void scope() {
    faults.addAll(before.faults());
    faults.addAll(after.faults());
    rest.ifPresent(side -> faults.addAll(side.faults()));
    Set<Path> real = new HashSet<>(before.realPaths().values());
    after.realPaths().entrySet().stream()
        .filter(file -> real.contains(file.getValue()))
        .findFirst()
        .ifPresent(
            file ->
                faults.add(
                    file.getKey()
                        + ": the same file is given as before and as after, so that nothing can"
                        + " differ"));
    if (before.hasFolder() != after.hasFolder()) {
      WindowSide folder = before.hasFolder() ? before : after;
      WindowSide files = before.hasFolder() ? after : before;
      int left = folder.keep(files.entries().keySet());
      if (left > 0) {
        remarks.add(
            left
                + (left == 1 ? " config" : " configs")
                + " of the folder "
                + (before.hasFolder() ? "before" : "after")
                + (left == 1 ? " is" : " are")
                + " left out: the other side is about other switches");
      }
    }
    Set<String> touched = new TreeSet<>(before.entries().keySet());
    touched.addAll(after.entries().keySet());
    touched.addAll(before.unread());
    touched.addAll(after.unread());
    rest.ifPresent(
        side -> {
          List<String> dropped = side.drop(touched);
          if (!dropped.isEmpty()) {
            remarks.add(
                "left out of --rest, for the window is about them: " + String.join(", ", dropped));
          }
        });
    Stream.of(before, after).forEach(side -> remarks.addAll(side.skipped()));
    rest.ifPresent(side -> remarks.addAll(side.skipped()));
    touched.stream()
        .filter(name -> !design.switches().containsKey(name))
        .forEach(
            name ->
                remarks.add(
                    name + ": the design does not have this switch; it is compared all the same"));
  }

  private Set<String> oneSided() {
    Set<String> names = new TreeSet<>(before.unread());
    names.addAll(after.unread());
    oneSided(names, before, after, "after");
    oneSided(names, after, before, "before");
    return names;
  }

  private void oneSided(Set<String> names, WindowSide there, WindowSide here, String missing) {
    for (String name : there.entries().keySet()) {
      if (!here.entries().containsKey(name)) {
        names.add(name);
        if (!here.unread().contains(name)) {
          faults.add(name + ": no config of this switch was given as " + missing);
        }
      }
    }
  }

  private AuditOutcome audit(WindowSide side) {
    return Audit.run(
        new AuditInput(
            design,
            Stream.concat(
                    side.entries().values().stream(),
                    rest.stream().flatMap(others -> others.entries().values().stream()))
                .map(Scope.Entry::config)
                .toList(),
            List.of(),
            List.of(),
            request.at()));
  }

  private Result result(AuditOutcome outcome, List<String> notCompared, List<String> failures) {
    Set<String> given = new TreeSet<>(after.entries().keySet());
    rest.ifPresent(side -> given.addAll(side.entries().keySet()));
    List<Result.ConfigFile> configs = new ArrayList<>(configs(after));
    rest.ifPresent(side -> configs.addAll(configs(side)));
    return new Result(
        request.at(),
        design.site(),
        design.revision(),
        files(design),
        configs,
        List.copyOf(design.silentRules()),
        Verdicts.of(outcome, request.failOn(), !notCompared.isEmpty()),
        outcome.findings(),
        outcome.checks(),
        outcome.switchChecks(),
        List.of(),
        design.switches().keySet().stream().filter(name -> !given.contains(name)).sorted().toList(),
        outcome.notChecked(),
        List.of(),
        remarks,
        failures,
        Result.Narrowed.NOT);
  }

  private static List<Result.InputFile> files(Design design) {
    return design.files().stream()
        .map(file -> new Result.InputFile(file.file(), file.sha256()))
        .toList();
  }

  private List<Result.ConfigFile> configs(WindowSide side) {
    return side.entries().values().stream().map(entry -> AuditRun.config(design, entry)).toList();
  }
}
