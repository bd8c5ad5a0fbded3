package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import plumbline.audit.AuditOutcome;
import plumbline.audit.RuleCaseRun;
import plumbline.design.Design;
import plumbline.design.DesignReader;
import plumbline.design.DesignSource;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.effective.Dialect;
import plumbline.result.Result;
import plumbline.rules.RuleCatalogue;

/**
 * With everything right, silence: one site of four switches for each dialect, printed as such
 * switches print (common practice, no source); the data-centre site has a fifth, of the campus
 * dialect, whose bundle ends on both switches of a multi-chassis pair. Together the designs use
 * every key that a role can have.
 */
class ConformingSitesTest {
  private static final Path SITES = Path.of("testdata/sites");
  private static final int SWITCHES = 4;

  @TempDir private Path folder;

  @ParameterizedTest
  @EnumSource(Dialect.class)
  void a_site_as_its_design_says_conforms_without_one_finding(Dialect dialect) throws IOException {
    Path report = folder.resolve("report.json");
    Run run = audit(SITES.resolve(dialect.word()), report);
    assertThat(run.out()).startsWith("CONFORMS: ");
    assertThat(run.err()).isEmpty();
    assertThat(run.status()).isZero();
    String json = Files.readString(report);
    assertThat(json)
        .contains("\"result\": \"conforms\",\n    \"breaks\": 0,\n    \"weakens\": 0,\n")
        .contains("\"unverified\": 0,\n    \"untidy\": 0,\n", "\"findings\": []");
    assertThat(json.lines().filter(line -> line.strip().equals(word(dialect)))).hasSize(SWITCHES);
  }

  @ParameterizedTest
  @EnumSource(Dialect.class)
  void no_rule_leaves_anything_of_it_undecided(Dialect dialect) throws IOException {
    AuditOutcome outcome = RuleCaseRun.run(SITES.resolve(dialect.word()));
    assertThat(RuleCaseRun.print(outcome.findings())).isEmpty();
    assertThat(outcome.ruleFailures()).isEmpty();
    assertThat(outcome.checks())
        .filteredOn(count -> count.differs() > 0 || count.undecided() > 0)
        .extracting(Result.RuleCount::rule)
        .isEmpty();
  }

  /** Guards against a site whose ports nobody looks at. */
  @ParameterizedTest
  @EnumSource(Dialect.class)
  void each_config_with_its_native_vlans_taken_out_drifts(Dialect dialect) throws IOException {
    Path site = SITES.resolve(dialect.word());
    for (Path broken : configs(site)) {
      for (Path file : configs(site)) {
        String text = Files.readString(file);
        String kept =
            text.lines()
                .filter(line -> !line.contains("trunk native vlan") && !line.contains("native 999"))
                .collect(Collectors.joining("\n", "", "\n"));
        assertThat(kept).isNotEqualTo(text);
        Files.writeString(folder.resolve(file.getFileName()), file.equals(broken) ? kept : text);
      }
      Files.copy(
          site.resolve("design.yaml"),
          folder.resolve("design.yaml"),
          java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      Run run = audit(folder, folder.resolve("report.json"));
      Files.delete(folder.resolve("report.json"));
      assertThat(run.status()).as(broken.toString()).isEqualTo(1);
      assertThat(run.out()).contains("native-vlan-differs");
    }
  }

  @Test
  void the_four_designs_use_every_key_of_a_role() throws IOException {
    Set<String> used = new TreeSet<>();
    for (Dialect dialect : Dialect.values()) {
      Path file = SITES.resolve(dialect.word()).resolve("design.yaml");
      Design design =
          DesignReader.read(
                  List.of(new DesignSource("design.yaml", "0", Files.readString(file))),
                  RuleCatalogue.names(),
                  Dialect.words())
              .design()
              .orElseThrow();
      design.switches().keySet().stream()
          .flatMap(name -> design.portsOf(name).stream())
          .flatMap(port -> port.role().wishes().keySet().stream())
          .map(RoleKey::name)
          .forEach(used::add);
    }
    assertThat(used)
        .isEqualTo(RoleKeys.ALL.stream().map(RoleKey::name).collect(Collectors.toSet()));
  }

  private static Run audit(Path site, Path report) {
    return Run.of(
        "audit",
        site.resolve("design.yaml").toString(),
        site.toString(),
        "--as-of",
        "2026-11-25",
        "--report",
        report.toString());
  }

  private static String word(Dialect dialect) {
    return "\"dialect\": \"" + dialect.word() + "\",";
  }

  private static List<Path> configs(Path site) throws IOException {
    try (Stream<Path> files = Files.list(site)) {
      return files.filter(file -> file.toString().endsWith(".cfg")).sorted().toList();
    }
  }
}
