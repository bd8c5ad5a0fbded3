package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import plumbline.finding.Finding;
import plumbline.result.Result;
import plumbline.result.Verdict;
import plumbline.text.Json;

/** The report in SARIF 2.1.0: one run, a result for each finding. */
public final class SarifReport {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

  private final JsonGenerator json;
  private final Result result;
  private final SarifArtifacts artifacts;
  private final SarifRules rules;

  private SarifReport(JsonGenerator json, Result result, List<RuleText> rules) {
    this.json = json;
    this.result = result;
    this.artifacts = SarifArtifacts.of(result);
    this.rules = new SarifRules(named(result, rules));
  }

  /**
   * Writes the report.
   *
   * @param version the program's own version
   * @param rules every rule of the program, sorted by id
   * @return indented JSON that ends in a line feed
   */
  public static String of(Result result, String version, List<RuleText> rules) {
    return Json.write(json -> new SarifReport(json, result, rules).write(version));
  }

  /** The rules that the run asked, those that the design switches off, and those of findings. */
  private static List<RuleText> named(Result result, List<RuleText> rules) {
    Set<String> ids = new TreeSet<>(result.silentRules());
    result.checks().forEach(count -> ids.add(count.rule()));
    result.findings().forEach(finding -> ids.add(finding.rule()));
    return rules.stream().filter(rule -> ids.contains(rule.id())).toList();
  }

  private void write(String version) throws IOException {
    json.writeStartObject();
    json.writeStringField("$schema", SCHEMA);
    json.writeStringField("version", "2.1.0");
    json.writeArrayFieldStart("runs");
    json.writeStartObject();
    json.writeObjectFieldStart("tool");
    json.writeObjectFieldStart("driver");
    json.writeStringField("name", "plumbline");
    json.writeStringField("version", version);
    rules.write(json);
    json.writeEndObject();
    json.writeEndObject();
    json.writeStringField("language", "en");
    // SARIF 3.14.27: must be there, though no region here has a column
    json.writeStringField("columnKind", "utf16CodeUnits");
    invocation();
    artifacts.write(json);
    json.writeArrayFieldStart("results");
    SarifResult one = new SarifResult(json, artifacts, rules);
    for (Finding finding : result.findings()) {
      one.write(finding);
    }
    json.writeEndArray();
    properties();
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
  }

  private void invocation() throws IOException {
    json.writeArrayFieldStart("invocations");
    json.writeStartObject();
    json.writeBooleanField(
        "executionSuccessful", result.ruleFailures().isEmpty() && result.notAudited().isEmpty());
    json.writeStringField("endTimeUtc", ReportForm.moment(result.at()));
    if (!result.silentRules().isEmpty()) {
      json.writeArrayFieldStart("ruleConfigurationOverrides");
      for (String silent : result.silentRules()) {
        json.writeStartObject();
        json.writeObjectFieldStart("descriptor");
        rules.reference(json, silent);
        json.writeEndObject();
        json.writeObjectFieldStart("configuration");
        json.writeBooleanField("enabled", false);
        json.writeEndObject();
        json.writeEndObject();
      }
      json.writeEndArray();
    }
    notifications("toolExecutionNotifications", "error", result.ruleFailures(), List.of());
    List<String> notes = new ArrayList<>(result.skipped());
    result.notInScope().forEach(name -> notes.add(name + ": of the design, outside this run"));
    notifications("toolConfigurationNotifications", "error", result.notAudited(), notes);
    json.writeEndObject();
    json.writeEndArray();
  }

  private void notifications(String name, String level, List<String> lines, List<String> notes)
      throws IOException {
    if (lines.isEmpty() && notes.isEmpty()) {
      return;
    }
    json.writeArrayFieldStart(name);
    for (String line : lines) {
      notification(level, line);
    }
    for (String note : notes) {
      notification("note", note);
    }
    json.writeEndArray();
  }

  private void notification(String level, String line) throws IOException {
    json.writeStartObject();
    json.writeStringField("level", level);
    SarifText.message(json, "message", line);
    json.writeEndObject();
  }

  private void properties() throws IOException {
    Verdict verdict = result.verdict();
    json.writeObjectFieldStart("properties");
    json.writeStringField("verdict", verdict.result().toString());
    json.writeNumberField("breaks", verdict.breaks());
    json.writeNumberField("weakens", verdict.weakens());
    json.writeNumberField("unverified", verdict.unverified());
    json.writeNumberField("untidy", verdict.untidy());
    json.writeNumberField("waived", verdict.waived());
    json.writeNumberField("checked", verdict.checked());
    if (result.site().isPresent()) {
      json.writeStringField("site", result.site().get());
    }
    if (result.revision().isPresent()) {
      json.writeStringField("revision", result.revision().get());
    }
    json.writeEndObject();
  }
}
