package plumbline.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.golden.GoldenFile;
import plumbline.golden.Schemas;
import plumbline.result.Result;

/** Sources: SARIF 2.1.0 (OASIS), by section; the schema is the one that OASIS published. */
class SarifReportTest {
  private static final List<RuleText> RULES =
      List.of(
          rule("description-differs", Severity.UNTIDY),
          rule("fast-start-missing", Severity.WEAKENS),
          rule("mode-differs", Severity.BREAKS),
          rule("never-asked", Severity.WEAKENS),
          rule("statement-unknown", Severity.UNVERIFIED),
          rule("tagged-vlan-missing", Severity.WEAKENS),
          rule("vlan-database-unknown", Severity.UNVERIFIED));

  private static RuleText rule(String id, Severity floor) {
    return new RuleText(
        id,
        "port",
        floor,
        "what " + id + " finds",
        "common practice",
        "# "
            + id
            + "\n\n## What is reported\n\nA port\nthat differs.\n\n## Why it matters\n\nIt hurts.\n\n"
            + "## Config\n\n```text\nend\n```\n\n## How to repair\n\nSet `x`.\n\n"
            + "## How to accept\n\nSay `rules: {silent: [x]}`.\n");
  }

  private static String sarif(Result result) {
    return SarifReport.of(result, "0.1.0", RULES);
  }

  private static JsonNode run(String sarif) throws IOException {
    JsonNode runs = new ObjectMapper().readTree(sarif).get("runs");
    assertThat(runs).hasSize(1);
    return runs.get(0);
  }

  @Test
  void the_report_fits_the_schema_that_oasis_published() {
    String sarif = sarif(Samples.drift());
    assertThat(Schemas.problemsOfSarif(sarif)).isEmpty();
    GoldenFile.check("report/drift.sarif", sarif);
  }

  @Test
  void reports_of_every_other_kind_of_run_fit_it_too() {
    for (Result result :
        List.of(
            Samples.conforms(),
            Samples.incomplete(),
            Samples.unchecked(),
            Samples.manyConfigs(40),
            Samples.with(Samples.drift(), Samples.nobodys("-")))) {
      assertThat(Schemas.problemsOfSarif(sarif(result))).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"level\": \"warning\"|\"level\": \"weakens\"",
        "\"startLine\": 61|\"startLine\": 0",
        "\"ruleId\": \"mode-differs\"|\"rule\": \"mode-differs\"",
        "\"version\": \"2.1.0\"|\"version\": \"2.2\"",
        "\"executionSuccessful\": false|\"executionSuccessful\": \"no\"",
        "\"columnKind\": \"utf16CodeUnits\"|\"columnKind\": \"bytes\""
      })
  void the_schema_of_the_test_refuses_what_is_no_sarif(String change) {
    String sarif = sarif(Samples.drift());
    String[] parts = change.split("\\|", -1);
    assertThat(sarif).contains(parts[0]);
    assertThat(Schemas.problemsOfSarif(sarif.replace(parts[0], parts[1]))).isNotEmpty();
  }

  /** The table of severities is a promise of ours; the words are SARIF's (3.27.10). */
  @ParameterizedTest
  @CsvSource({
    "mode-differs, error",
    "fast-start-missing, warning",
    "vlan-database-unknown, note",
    "description-differs, note"
  })
  void the_level_is_that_of_the_severity(String rule, String level) throws IOException {
    JsonNode run = run(sarif(Samples.drift()));
    List<String> levels = new ArrayList<>();
    run.get("results")
        .forEach(
            one -> {
              if (one.get("ruleId").asText().equals(rule)) {
                levels.add(one.get("level").asText());
              }
              // 3.27.9: absent means "fail", and only a failure may have such a level (3.27.10)
              assertThat(one.has("kind")).isFalse();
            });
    assertThat(levels).containsExactly(level);
  }

  @Test
  void every_result_points_at_its_rule_and_at_a_line() throws IOException {
    JsonNode run = run(sarif(Samples.drift()));
    JsonNode rules = run.at("/tool/driver/rules");
    for (JsonNode one : run.get("results")) {
      // 3.52.5: an index points at the descriptor with the same id
      assertThat(rules.get(one.get("ruleIndex").asInt()).get("id")).isEqualTo(one.get("ruleId"));
      JsonNode place = one.at("/locations/0/physicalLocation");
      // errata 01 of the schema asks for one of startLine, charOffset and byteOffset in a region
      assertThat(place.at("/region/startLine").asInt()).isPositive();
      JsonNode file = place.get("artifactLocation");
      assertThat(run.at("/artifacts/" + file.get("index").asInt() + "/location/uri"))
          .isEqualTo(file.get("uri"));
    }
    assertThat(run.at("/results/1/locations/0/physicalLocation/region/snippet/text").asText())
        .isEqualTo("interface GigabitEthernet1/0/1");
  }

  @Test
  void rules_come_with_help_from_their_pages_and_only_those_of_the_run() throws IOException {
    JsonNode rules = run(sarif(Samples.drift())).at("/tool/driver/rules");
    assertThat(rules).extracting(rule -> rule.get("id").asText()).doesNotContain("never-asked");
    JsonNode one = rules.get(0);
    assertThat(one.at("/fullDescription/text").asText()).isEqualTo("A port that differs.");
    // 3.11.5 (from memory): braces in messages are doubled, or they are placeholders
    assertThat(one.at("/help/markdown").asText())
        .isEqualTo(
            "## Why it matters\n\nIt hurts.\n\n## How to repair\n\nSet `x`.\n\n"
                + "## How to accept\n\nSay `rules: {{silent: [x]}}`.");
    assertThat(one.at("/help/text").asText()).startsWith("Why it matters\n\nIt hurts.");
  }

  @Test
  void a_rule_that_the_design_switches_off_is_listed_as_such() throws IOException {
    JsonNode off = run(sarif(Samples.drift())).at("/invocations/0/ruleConfigurationOverrides");
    assertThat(off).hasSize(1);
    assertThat(off.at("/0/descriptor/id").asText()).isEqualTo("description-differs");
    assertThat(off.at("/0/configuration/enabled").asBoolean(true)).isFalse();
  }

  @Test
  void fingerprints_are_the_stable_ids_each_once() throws IOException {
    List<String> prints = new ArrayList<>();
    for (JsonNode one : run(sarif(Samples.drift())).get("results")) {
      prints.add(one.get("fingerprints").get("plumbline/findingId/v1").asText());
    }
    assertThat(prints)
        .doesNotHaveDuplicates()
        .isEqualTo(Samples.findings().stream().map(Finding::id).toList());
  }

  /** 3.27.24: on one result of a run, then on every one; 3.27.23: absent means not known. */
  @Test
  void without_a_history_and_waivers_nothing_is_said_of_them() throws IOException {
    for (JsonNode one : run(sarif(Samples.drift())).get("results")) {
      assertThat(one.has("baselineState")).isFalse();
      assertThat(one.has("suppressions")).isFalse();
    }
  }

  /** 3.14.27: must be there when text files were processed and there are results. */
  @Test
  void the_unit_of_columns_is_said() throws IOException {
    assertThat(run(sarif(Samples.drift())).get("columnKind").asText()).isEqualTo("utf16CodeUnits");
  }

  @Test
  void a_run_that_could_not_audit_all_was_no_success() throws IOException {
    JsonNode drift = run(sarif(Samples.drift())).at("/invocations/0");
    assertThat(drift.get("executionSuccessful").asBoolean(true)).isFalse();
    assertThat(drift.at("/toolConfigurationNotifications/0/message/text").asText())
        .startsWith("configs/core.img: holds NUL bytes");
    JsonNode bug = run(sarif(Samples.incomplete())).at("/invocations/0");
    assertThat(bug.get("executionSuccessful").asBoolean(true)).isFalse();
    assertThat(bug.at("/toolExecutionNotifications/0/level").asText()).isEqualTo("error");
    JsonNode well = run(sarif(Samples.conforms())).at("/invocations/0");
    assertThat(well.get("executionSuccessful").asBoolean(false)).isTrue();
  }

  @Test
  void no_text_of_a_config_makes_a_link_a_placeholder_or_a_steering_character() {
    assertThat(SarifText.plain("[go](https://evil.example) {0} \u001b[31mred\u202e"))
        .isEqualTo("[go] (https://evil.example) {{0}} red");
  }

  /** RFC 3986: section 2.1 for the encoding, 4.2 for the colon, 3.3 for what a path may hold. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "configs/north-sw1.cfg|configs/north-sw1.cfg",
        "a b/50%.cfg|a%20b/50%25.cfg",
        "Fähre.cfg|F%C3%A4hre.cfg",
        "a:b/c.cfg|./a:b/c.cfg",
        "a/b:c.cfg|a/b:c.cfg",
        "/srv/configs/x.cfg|file:///srv/configs/x.cfg",
        "../x?y#z.cfg|../x%3Fy%23z.cfg",
        "<script>\".cfg|%3Cscript%3E%22.cfg"
      })
  void file_names_become_uris(String file, String uri) {
    assertThat(FileUri.of(file)).isEqualTo(uri);
  }
}
