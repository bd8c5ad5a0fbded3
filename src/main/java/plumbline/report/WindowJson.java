package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.result.Change;
import plumbline.result.LineChange;
import plumbline.result.Result;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.result.WindowResult;
import plumbline.setting.Evidence;
import plumbline.text.Json;
import plumbline.vlan.VlanSet;

/** The report on a change window for programs: {@code plumbline-window/1}, see docs/schema. */
public final class WindowJson {
  private static final String FORMAT = "plumbline-window/1";

  private final JsonGenerator json;

  private WindowJson(JsonGenerator json) {
    this.json = json;
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
    text("site", audit.site());
    text("revision", audit.revision());
    strings("silent", audit.silentRules());
    configs("before", result.before());
    configs("after", result.after());
    configs("rest", result.rest());
    strings("outside", audit.notInScope());
    strings("notCompared", result.notCompared());
    strings("remarks", result.remarks());
    strings("failures", audit.ruleFailures());
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
    text("port", change.place().port());
    json.writeStringField("setting", change.setting());
    vlans("vlans", change.vlans());
    text("before", change.before());
    text("after", change.after());
    text("designed", change.designed());
    json.writeStringField("kind", change.kind().toString());
    json.writeStringField("subject", change.subject());
    json.writeObjectFieldStart("evidence");
    proofs("before", change.evidenceBefore());
    proofs("after", change.evidenceAfter());
    json.writeEndObject();
    if (change.design().isPresent()) {
      json.writeObjectFieldStart("design");
      json.writeStringField("file", change.design().get().file());
      json.writeNumberField("line", change.design().get().line());
      json.writeEndObject();
    } else {
      json.writeNullField("design");
    }
    json.writeEndObject();
  }

  private void line(LineChange line) throws IOException {
    json.writeStartObject();
    json.writeStringField("switch", line.switchName());
    json.writeStringField("section", line.section());
    strings("firstWords", line.firstWords());
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
    text("switch", finding.place().map(Place::switchName));
    text("port", finding.place().flatMap(Place::port));
    json.writeArrayFieldStart("others");
    for (Place place : finding.others()) {
      json.writeStartObject();
      json.writeStringField("switch", place.switchName());
      text("port", place.port());
      json.writeEndObject();
    }
    json.writeEndArray();
    vlans("vlans", finding.vlans());
    vlans("newVlans", one.newVlans());
    vlans("clearedVlans", one.clearedVlans());
    json.writeBooleanField("notDone", one.notDone());
    json.writeStringField("subject", finding.subject());
    json.writeStringField("designed", finding.designed());
    json.writeStringField("found", finding.found());
    json.writeStringField("consequence", finding.consequence());
    proofs("evidence", finding.evidence());
    if (finding.design().isPresent()) {
      json.writeObjectFieldStart("design");
      json.writeStringField("file", finding.design().get().file());
      json.writeNumberField("line", finding.design().get().line());
      json.writeEndObject();
    } else {
      json.writeNullField("design");
    }
    strings("repair", List.of());
    json.writeNullField("waiver");
    json.writeEndObject();
  }

  private void proofs(String name, List<Proof> proofs) throws IOException {
    json.writeArrayFieldStart(name);
    for (Proof proof : proofs) {
      json.writeStartObject();
      if (proof.evidence() instanceof Evidence.Line line) {
        json.writeStringField("file", proof.file().orElse(""));
        json.writeNumberField("line", line.line());
        json.writeStringField("text", line.text());
      } else if (proof.evidence() instanceof Evidence.Default standard) {
        json.writeStringField("default", standard.name());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void vlans(String name, VlanSet vlans) throws IOException {
    json.writeArrayFieldStart(name);
    for (int vlan : vlans.ids().toArray()) {
      json.writeNumber(vlan);
    }
    json.writeEndArray();
  }

  private void text(String name, Optional<String> value) throws IOException {
    if (value.isPresent()) {
      json.writeStringField(name, value.get());
    } else {
      json.writeNullField(name);
    }
  }

  private void strings(String name, List<String> values) throws IOException {
    json.writeArrayFieldStart(name);
    for (String value : values) {
      json.writeString(value);
    }
    json.writeEndArray();
  }
}
