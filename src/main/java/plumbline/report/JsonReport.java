package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import plumbline.finding.Affected;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.result.Result;
import plumbline.result.Verdict;
import plumbline.text.Json;

/** The report for programs: {@code plumbline-report/1}, see docs/schema. */
public final class JsonReport {
  private static final String FORMAT = "plumbline-report/1";

  private final JsonGenerator json;
  private final JsonParts parts;
  private final JsonFollowUp followUp;

  private JsonReport(JsonGenerator json, Result result) {
    this.json = json;
    this.parts = new JsonParts(json);
    this.followUp = new JsonFollowUp(json, result.followUp());
  }

  /**
   * Writes the report.
   *
   * @param version the program's own version
   * @return indented JSON that ends in a line feed
   */
  public static String of(Result result, String version) {
    return Json.write(json -> new JsonReport(json, result).write(result, version));
  }

  private void write(Result result, String version) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", FORMAT);
    json.writeObjectFieldStart("tool");
    json.writeStringField("name", "plumbline");
    json.writeStringField("version", version);
    json.writeEndObject();
    run(result);
    verdict(result.verdict());
    followUp.history();
    json.writeArrayFieldStart("findings");
    for (Finding finding : AllFindings.of(result)) {
      finding(finding);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void run(Result result) throws IOException {
    json.writeObjectFieldStart("run");
    json.writeStringField(
        "at", DateTimeFormatter.ISO_INSTANT.format(result.at().truncatedTo(ChronoUnit.SECONDS)));
    json.writeArrayFieldStart("design");
    for (Result.InputFile file : result.design()) {
      json.writeStartObject();
      json.writeStringField("file", file.file());
      json.writeStringField("sha256", file.sha256());
      json.writeEndObject();
    }
    json.writeEndArray();
    parts.text("site", result.site());
    parts.text("revision", result.revision());
    parts.strings("silent", result.silentRules());
    followUp.ofRun();
    narrowed(result.narrowed());
    json.writeArrayFieldStart("configs");
    for (Result.ConfigFile config : result.configs()) {
      json.writeStartObject();
      json.writeStringField("file", config.file());
      json.writeStringField("switch", config.switchName());
      json.writeBooleanField("inDesign", config.inDesign());
      json.writeStringField("sha256", config.sha256());
      json.writeNumberField("lines", config.lines());
      json.writeStringField("dialect", config.dialect());
      json.writeNumberField("unknownStatements", config.unknownStatements());
      json.writeNumberField("ports", config.ports());
      json.writeNumberField("portsDesigned", config.portsDesigned());
      json.writeEndObject();
    }
    json.writeEndArray();
    parts.strings("outside", result.notInScope());
    parts.strings("notAudited", result.notAudited());
    parts.strings("ageUnknown", result.ageUnknown());
    parts.strings("skipped", result.skipped());
    parts.strings("failures", result.ruleFailures());
    json.writeArrayFieldStart("notChecked");
    for (Result.NotChecked asked : result.notChecked()) {
      json.writeStartObject();
      json.writeStringField("key", asked.key());
      json.writeNumberField("uses", asked.uses());
      json.writeStringField("of", asked.of());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void narrowed(Result.Narrowed narrowed) throws IOException {
    namesOrNull("only", narrowed.rules());
    namesOrNull("onlySwitches", narrowed.switches());
    json.writeArrayFieldStart("inFront");
    for (Result.InFront one : narrowed.inFront()) {
      json.writeStartObject();
      json.writeStringField("rule", one.rule());
      parts.places("at", one.places());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** {@code null} where the run was not narrowed so. */
  private void namesOrNull(String name, List<String> names) throws IOException {
    if (names.isEmpty()) {
      json.writeNullField(name);
    } else {
      parts.strings(name, names);
    }
  }

  private void verdict(Verdict verdict) throws IOException {
    json.writeObjectFieldStart("verdict");
    json.writeStringField("result", verdict.result().toString());
    json.writeNumberField("breaks", verdict.breaks());
    json.writeNumberField("weakens", verdict.weakens());
    json.writeNumberField("unverified", verdict.unverified());
    json.writeNumberField("untidy", verdict.untidy());
    json.writeNumberField("waived", verdict.waived());
    json.writeNumberField("checked", verdict.checked());
    json.writeEndObject();
  }

  private void finding(Finding finding) throws IOException {
    json.writeStartObject();
    json.writeStringField("id", finding.id());
    json.writeStringField("rule", finding.rule());
    json.writeStringField("severity", finding.severity().toString());
    followUp.state(finding);
    parts.text("switch", finding.place().map(Place::switchName));
    parts.text("port", finding.place().flatMap(Place::port));
    parts.places("others", finding.others());
    parts.vlans("vlans", finding.vlans());
    followUp.newVlans(finding);
    followUp.change(finding);
    json.writeStringField("subject", finding.subject());
    json.writeStringField("designed", finding.designed());
    json.writeStringField("found", finding.found());
    json.writeStringField("consequence", finding.consequence());
    affected(finding.affected());
    parts.proofs("evidence", finding.evidence());
    parts.design(finding.design());
    parts.strings("repair", List.of());
    followUp.waiver(finding);
    json.writeEndObject();
  }

  private void affected(List<Affected> all) throws IOException {
    json.writeArrayFieldStart("affected");
    for (Affected one : all) {
      json.writeStartObject();
      json.writeStringField("who", one.who());
      if (one.vlan().isPresent()) {
        json.writeNumberField("vlan", one.vlan().get().number());
      } else {
        json.writeNullField("vlan");
      }
      json.writeStringField("loss", one.loss().toString());
      parts.text("failure", one.failure());
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}
