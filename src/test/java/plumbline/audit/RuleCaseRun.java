package plumbline.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignReader;
import plumbline.design.DesignReading;
import plumbline.design.DesignSource;
import plumbline.design.DesignSwitch;
import plumbline.effective.Dialect;
import plumbline.effective.EffectiveSettings;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Finding;
import plumbline.finding.Proof;
import plumbline.rules.RuleCatalogue;
import plumbline.setting.Evidence;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Runs a folder of a design and configs through reader, settings and audit. */
public final class RuleCaseRun {
  /** When all these audits are said to be. */
  public static final Instant AT = Instant.parse("2026-11-25T02:10:00Z");

  private static final StatementParser PARSER = new StatementParser();

  private RuleCaseRun() {}

  /**
   * Audits all configs of a folder against its {@code design.yaml}; the whole design is in scope.
   */
  public static AuditOutcome run(Path folder) throws IOException {
    return run(folder, UnaryOperator.identity());
  }

  /** The same with another design made of it. */
  static AuditOutcome run(Path folder, UnaryOperator<Design> change) throws IOException {
    AuditInput input = input(folder, change);
    AuditOutcome outcome = Audit.run(input);
    Path waivers = folder.resolve(WaivedCase.FILE);
    return Files.exists(waivers)
        ? WaivedCase.of(Files.readString(waivers), input, outcome)
        : outcome;
  }

  /** What is audited of such a folder. */
  static AuditInput input(Path folder, UnaryOperator<Design> change) throws IOException {
    Design design = change.apply(design(Files.readString(folder.resolve("design.yaml"))));
    List<AuditInput.AuditedConfig> configs = new ArrayList<>();
    List<AuditInput.UnreadConfig> unread = new ArrayList<>();
    Set<DesignSwitch> seen = new LinkedHashSet<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(RuleCaseRun::isConfig).sorted().toList()) {
        String name = file.getFileName().toString();
        String stem = name.substring(0, name.lastIndexOf('.'));
        String text = Files.readString(file);
        if (text.isEmpty()) {
          Optional<DesignSwitch> designed = named(design, stem);
          designed.ifPresent(seen::add);
          unread.add(new AuditInput.UnreadConfig(name, designed, "empty file"));
        }
        for (AuditInput.AuditedConfig config :
            text.isEmpty() ? List.<AuditInput.AuditedConfig>of() : settings(design, name, text)) {
          config.designed().ifPresent(seen::add);
          configs.add(config);
        }
      }
    }
    List<AuditInput.MissingConfig> missing =
        design.switches().values().stream()
            .filter(known -> !seen.contains(known))
            .map(AuditInput.MissingConfig::new)
            .toList();
    return new AuditInput(design, configs, missing, unread, AT);
  }

  /** Audits one text against a design; only its switches are in scope. */
  public static AuditOutcome run(String design, String config) {
    Design read = design(design);
    return Audit.run(
        new AuditInput(read, settings(read, "north-sw1.cfg", config), List.of(), List.of(), AT));
  }

  /** Whether a file of a case is a config. */
  public static boolean isConfig(Path file) {
    String name = file.getFileName().toString();
    return !List.of("design.yaml", WaivedCase.FILE, "expected.txt").contains(name);
  }

  static Design design(String text) {
    DesignReading reading =
        DesignReader.read(
            List.of(new DesignSource("design.yaml", "0".repeat(64), text)),
            RuleCatalogue.names(),
            Dialect.words());
    return reading
        .design()
        .orElseThrow(() -> new IllegalArgumentException(reading.problems().toString()));
  }

  private static List<AuditInput.AuditedConfig> settings(Design design, String file, String text) {
    List<AuditInput.AuditedConfig> configs = new ArrayList<>();
    String stem = file.substring(0, file.lastIndexOf('.'));
    for (SwitchText device : new ConfigReader(PARSER).read(file, stem, text)) {
      SwitchSettings settings =
          EffectiveSettings.of(device.vouching(design.harmless()), Optional.empty());
      configs.add(new AuditInput.AuditedConfig(named(design, settings.name()), settings));
    }
    return configs;
  }

  private static Optional<DesignSwitch> named(Design design, String name) {
    return design.switches().values().stream()
        .filter(known -> known.hostname().equalsIgnoreCase(name))
        .findFirst();
  }

  /** Findings as rule pages show them. */
  public static String print(List<Finding> findings) {
    StringBuilder text = new StringBuilder();
    for (Finding finding : findings) {
      text.append(text.isEmpty() ? "" : "\n")
          .append(finding.severity())
          .append("  ")
          .append(finding.place().map(Object::toString).orElse("the network"))
          .append(finding.subject().isEmpty() ? "" : ", " + finding.subject())
          .append('\n');
      line(text, "found", finding.found());
      line(text, "designed", finding.designed());
      line(text, "so", finding.consequence());
      finding.others().forEach(other -> line(text, "also at", other.toString()));
      finding.evidence().forEach(proof -> line(text, "config", print(proof)));
      finding.design().ifPresent(at -> line(text, "design", at.file() + ":" + at.line()));
      line(text, "rule", finding.rule());
    }
    return text.toString();
  }

  private static void line(StringBuilder text, String label, String words) {
    text.append("  ").append(label).append(" ".repeat(10 - label.length())).append(words);
    text.append('\n');
  }

  private static String print(Proof proof) {
    if (proof.evidence() instanceof Evidence.Line line) {
      return (proof.file().orElseThrow() + ":" + line.line() + ": " + line.text()).stripTrailing();
    }
    String name = ((Evidence.Default) proof.evidence()).name();
    return proof.file().map(file -> file + ": " + name).orElse("default, " + name);
  }
}
