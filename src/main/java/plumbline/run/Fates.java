package plumbline.run;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.audit.Answers.Answer;
import plumbline.design.Design;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.history.Decider;
import plumbline.history.PastFinding;
import plumbline.history.PastRun;
import plumbline.port.PortName;
import plumbline.result.ClearedBy;
import plumbline.rules.Group;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;
import plumbline.waiver.WaiverAudit;

/**
 * Tells what became of findings that a run has not: gone only where a rule says so, or where
 * nothing kept the rule from finding them again.
 */
final class Fates implements Decider {
  private static final String OF_WAIVERS = "waiver-";

  /** Such rules speak of what the design has no place for. */
  private static final String NEVER_IN_DESIGN = "-undeclared";

  /** The rules whose finding keeps others from speaking of the same port. */
  private static final Set<String> IN_FRONT =
      Set.of("port-absent", "port-shut", "mode-differs", "negotiation-open");

  /** What these say of a file is gone with the file, also where another one is no better. */
  private static final Set<String> OF_FILES =
      Set.of("config-missing", "config-truncated", "config-unreadable", "switch-unknown");

  /** What these say depends on more switches than a finding names. */
  private static final Set<Group> WIDE =
      Set.of(Group.PAIR, Group.LINK, Group.FABRIC, Group.SERVICE);

  private final Audited run;
  private final Map<String, Answer> answers;
  private final Map<Place, String> inFront;
  private final Optional<WaiverAudit> waivers;
  private final Optional<String> waiverFile;
  private final Set<String> design;

  Fates(Audited run, PastRun before, Optional<WaiverAudit> waivers, Optional<String> waiverFile) {
    this.run = run;
    this.answers = run.answers(before.open().keySet());
    this.waivers = waivers;
    this.waiverFile = waiverFile;
    this.inFront =
        run.outcome().findings().stream()
            .filter(one -> IN_FRONT.contains(one.rule()) && one.place().isPresent())
            .collect(
                Collectors.toMap(
                    one -> one.place().get(), Finding::rule, (first, second) -> first));
    this.design =
        run.design().files().stream()
            .map(Design.SourceFile::sha256)
            .collect(Collectors.toUnmodifiableSet());
  }

  @Override
  public Fate of(PastFinding past, PastRun before) {
    Finding finding = past.finding();
    if (run.silent().contains(finding.rule())) {
      return new Fate.Cleared(ClearedBy.SILENCED);
    }
    if (!run.asked().contains(finding.rule()) && isKnown(finding.rule())) {
      return new Fate.Unchecked("its rule was not asked");
    }
    if (finding.rule().startsWith(OF_WAIVERS)) {
      return ofWaiver(finding, before);
    }
    return switch (answers.getOrDefault(finding.id(), Answer.CONFORMS)) {
      case DIFFERS -> new Fate.Unchecked("it still differs, and another finding explains it now");
      case UNDECIDED -> new Fate.Unchecked("the text does not decide it");
      case CONFORMS ->
          answers.containsKey(finding.id()) ? cleared(finding, before) : unspoken(finding, before);
    };
  }

  @Override
  public boolean sawAll() {
    return run.isWhole() && run.asksAll();
  }

  private static boolean isKnown(String rule) {
    return RuleCatalogue.named(rule).isPresent();
  }

  private Fate ofWaiver(Finding finding, PastRun before) {
    if (waivers.isEmpty()) {
      return new Fate.Unchecked("no waivers were given");
    }
    if (!waivers.get().decided(finding.id()).orElse(true)) {
      return new Fate.Unchecked("not all that the waiver may be for was checked");
    }
    return before.waivers().equals(waiverFile)
        ? cleared(finding, before)
        : new Fate.Cleared(ClearedBy.WAIVERS);
  }

  /** No rule spoke of it: either there is nothing left to speak of, or something is in the way. */
  private Fate unspoken(Finding finding, PastRun before) {
    if (run.hasFailed(finding.rule())) {
      return new Fate.Unchecked("its rule failed");
    }
    for (String name : switches(finding)) {
      Optional<String> gap = run.gap(name);
      if (gap.isPresent() && !(OF_FILES.contains(finding.rule()) && run.isInScope(name))) {
        return new Fate.Unchecked(name + " " + gap.get());
      }
      if (!run.switches().contains(name) && !run.isOfAllFiles()) {
        return new Fate.Unchecked("this run was not given all configs");
      }
    }
    if (finding.place().isEmpty() && !run.isOfAllFiles()) {
      return new Fate.Unchecked("this run was not given all configs");
    }
    if (isOfNetwork(finding) && !run.isWhole()) {
      return new Fate.Unchecked("not every switch of the design was audited");
    }
    Optional<String> front = finding.place().map(inFront::get).filter(any -> hasPort(finding));
    return front.isPresent()
        ? new Fate.Unchecked("at this port " + front.get() + " comes first now")
        : cleared(finding, before);
  }

  private static boolean hasPort(Finding finding) {
    return finding.place().flatMap(Place::port).isPresent();
  }

  private static Set<String> switches(Finding finding) {
    return Stream.concat(finding.place().stream(), finding.others().stream())
        .map(Place::switchName)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static boolean isOfNetwork(Finding finding) {
    return group(finding).filter(one -> one == Group.FABRIC || one == Group.SERVICE).isPresent();
  }

  private static Optional<Group> group(Finding finding) {
    return RuleCatalogue.named(finding.rule()).map(Rule::info).map(RuleInfo::group);
  }

  private Fate cleared(Finding finding, PastRun before) {
    return new Fate.Cleared(by(finding, before));
  }

  private ClearedBy by(Finding finding, PastRun before) {
    boolean designChanged = !before.design().equals(design);
    if (designChanged && isOutOfDesign(finding)) {
      return ClearedBy.DESIGN;
    }
    // The design still has the switch: another text was given, or at last one.
    if (OF_FILES.contains(finding.rule()) && !finding.rule().equals("switch-unknown")) {
      return ClearedBy.CONFIG;
    }
    boolean wide = finding.place().isEmpty() || group(finding).filter(WIDE::contains).isPresent();
    boolean configChanged =
        wide
            ? !before.configs().equals(run.configs())
            : switches(finding).stream()
                .anyMatch(
                    name ->
                        !run.configs()
                            .getOrDefault(name, Set.of())
                            .equals(before.configs().getOrDefault(name, Set.of())));
    // What was unchecked before may have changed in between; what had no config has one now.
    boolean isKnown =
        group(finding).equals(Optional.of(Group.INPUT))
            || before.configs().keySet().containsAll(switches(finding));
    if (!isKnown || (configChanged && designChanged)) {
      return ClearedBy.CONFIG_OR_DESIGN;
    }
    if (configChanged) {
      return ClearedBy.CONFIG;
    }
    if (designChanged) {
      return ClearedBy.DESIGN;
    }
    return before.configs().equals(run.configs()) ? ClearedBy.NEITHER : ClearedBy.CONFIG;
  }

  /** Whether the design had a place for it, and has none any more. */
  private boolean isOutOfDesign(Finding finding) {
    if (finding.place().isEmpty()
        || finding.design().isEmpty()
        || finding.rule().endsWith(NEVER_IN_DESIGN)) {
      return false;
    }
    String name = finding.switchName();
    if (!run.switches().contains(name)) {
      return true;
    }
    return finding.portOrder().filter(Fates::isPort).isPresent()
        && run.design().portsOf(name).stream()
            .noneMatch(port -> port.port().equals(finding.portOrder().get()));
  }

  private static boolean isPort(PortName port) {
    return port.sub().isEmpty() && (port.kind().isPhysical() || port.kind().isBundle());
  }
}
