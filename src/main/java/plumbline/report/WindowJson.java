package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.result.Change;
import plumbline.result.LineChange;
import plumbline.result.Result;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.result.WindowResult;
import plumbline.text.Json;

/** The report on a change window for programs: {@code plumbline-window/1}, see docs/schema. */
public final class WindowJson {
  private static final String FORMAT = "plumbline-window/1";

  private final JsonGenerator json;
  private final JsonParts parts;

  private WindowJson(JsonGenerator json) {
    this.json = json;
    this.parts = new JsonParts(json);
  }

  /**
   * Writes the report.
   *
   * @param version the program's own version
   * @return indented JSON that ends in a line feed
   */
  public static String of(WindowResult result, String version) {
    return Json.write(json -> new WindowJson(json).write(result, version));
  }

  private void write(WindowResult result, String version) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", FORMAT);
    json.writeObjectFieldStart("tool");
    json.writeStringField("name", "plumbline");
    json.writeStringField("version", version);
    json.writeEndObject();
    run(result);
    verdict(result);
    json.writeArrayFieldStart("changes");
    for (Change change : result.changes()) {
      change(change);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("lines");
    for (LineChange line : result.lines()) {
      line(line);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("findings");
    for (WindowFinding finding : result.findings()) {
      finding(finding);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void run(WindowResult result) throws IOException {
    Result audit = result.audit();
    json.writeObjectFieldStart("run");
    json.writeStringField(
        "at", DateTimeFormatter.ISO_INSTANT.format(audit.at().truncatedTo(ChronoUnit.SECONDS)));
    files("design", audit.design());
    if (result.from().isPresent()) {
      files("from", result.from().get());
    } else {
      json.writeNullField("from");
    }
    parts.text("site", audit.site());
    parts.text("revision", audit.revision());
    parts.strings("silent", audit.silentRules());
    configs("before", result.before());
    configs("after", result.after());
    configs("rest", result.rest());
    parts.strings("outside", audit.notInScope());
    parts.strings("notCompared", result.notCompared());
    parts.strings("remarks", result.remarks());
    parts.strings("failures", audit.ruleFailures());
    json.writeEndObject();
  }

  private void files(String name, List<Result.InputFile> files) throws IOException {
    json.writeArrayFieldStart(name);
    for (Result.InputFile file : files) {
      json.writeStartObject();
      json.writeStringField("file", file.file());
      json.writeStringField("sha256", file.sha256());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void configs(String name, List<Result.ConfigFile> configs) throws IOException {
    json.writeArrayFieldStart(name);
    for (Result.ConfigFile config : configs) {
      json.writeStartObject();
      json.writeStringField("file", config.file());
      json.writeStringField("switch", config.switchName());
      json.writeBooleanField("inDesign", config.inDesign());
      json.writeStringField("sha256", config.sha256());
      json.writeNumberField("lines", config.lines());
      json.writeStringField("dialect", config.dialect());
      json.writeNumberField("unknownStatements", config.unknownStatements());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void verdict(WindowResult result) throws IOException {
    json.writeObjectFieldStart("verdict");
    json.writeStringField("result", result.verdict().toString());
    json.writeStringField("reason", result.reason());
    json.writeObjectFieldStart("changes");
    for (Change.Kind kind : Change.Kind.values()) {
      json.writeNumberField(kind.toString(), result.count(kind));
    }
    json.writeEndObject();
    json.writeObjectFieldStart("findings");
    for (State state : State.values()) {
      json.writeNumberField(state.toString(), result.count(state));
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private void change(Change change) throws IOException {
    json.writeStartObject();
    json.writeStringField("switch", change.place().switchName());
    parts.text("port", change.place().port());
    json.writeStringField("setting", change.setting());
    parts.vlans("vlans", change.vlans());
    parts.text("before", change.before());
    parts.text("after", change.after());
    parts.text("designed", change.designed());
    json.writeStringField("kind", change.kind().toString());
    json.writeStringField("subject", change.subject());
    json.writeObjectFieldStart("evidence");
    parts.proofs("before", change.evidenceBefore());
    parts.proofs("after", change.evidenceAfter());
    json.writeEndObject();
    parts.design(change.design());
    json.writeEndObject();
  }

  private void line(LineChange line) throws IOException {
    json.writeStartObject();
    json.writeStringField("switch", line.switchName());
    json.writeStringField("section", line.section());
    parts.strings("firstWords", line.firstWords());
    json.writeNumberField("added", line.added());
    json.writeNumberField("removed", line.removed());
    json.writeBooleanField("reordered", line.reordered());
    json.writeBooleanField("harmless", line.harmless());
    json.writeEndObject();
  }

  private void finding(WindowFinding one) throws IOException {
    Finding finding = one.finding();
    json.writeStartObject();
    json.writeStringField("id", finding.id());
    json.writeStringField("rule", finding.rule());
    json.writeStringField("severity", finding.severity().toString());
    json.writeStringField("state", one.state().toString());
    json.writeNullField("since");
    parts.text("switch", finding.place().map(Place::switchName));
    parts.text("port", finding.place().flatMap(Place::port));
    parts.places("others", finding.others());
    parts.vlans("vlans", finding.vlans());
    parts.vlans("newVlans", one.newVlans());
    parts.vlans("clearedVlans", one.clearedVlans());
    json.writeBooleanField("notDone", one.notDone());
    json.writeStringField("subject", finding.subject());
    json.writeStringField("designed", finding.designed());
    json.writeStringField("found", finding.found());
    json.writeStringField("consequence", finding.consequence());
    parts.proofs("evidence", finding.evidence());
    parts.design(finding.design());
    parts.strings("repair", List.of());
    json.writeNullField("waiver");
    json.writeEndObject();
  }
}
