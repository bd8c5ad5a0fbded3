package plumbline.audit;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Affected;
import plumbline.promise.Effects;
import plumbline.promise.FailureWords;
import plumbline.promise.Sides;
import plumbline.rules.InputCase;

/** Holds what differences take against what findings tell. */
final class Told {
  private Told() {}

  /** What is taken in a folder of design and configs and told by no finding. */
  static List<Affected> untold(Path folder) throws IOException {
    AuditInput input = RuleCaseRun.input(folder, UnaryOperator.identity());
    Set<Affected> told = new HashSet<>();
    Audit.run(input).findings().forEach(finding -> told.addAll(finding.affected()));
    return taken(input).stream().filter(one -> !told.contains(one)).toList();
  }

  /** Everything that is taken. */
  static List<Affected> taken(AuditInput input) {
    Map<String, SwitchSettings> settings = new LinkedHashMap<>();
    for (AuditInput.AuditedConfig config : input.configs()) {
      boolean read =
          new InputCase.Read(input.design(), config.designed(), config.settings(), input.at())
              .isConfig();
      config
          .designed()
          .filter(any -> read)
          .ifPresent(known -> settings.putIfAbsent(known.name(), config.settings()));
    }
    Sides sides =
        Sides.of(input.design(), settings, rule -> !input.design().silentRules().contains(rule));
    FailureWords words = new FailureWords(sides.supposed());
    return Effects.of(sides).stream()
        .map(
            effect ->
                new Affected(
                    effect.who(), effect.vlan(), effect.loss(), effect.when().map(words::of)))
        .distinct()
        .toList();
  }
}
