package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.setting.Evidence;
import plumbline.text.Display;

/** Findings as results of a SARIF run. */
final class SarifResult {
  /** Hierarchical, with a version, as SARIF 3.27.16 wants names of fingerprints. */
  private static final String FINGERPRINT = "plumbline/findingId/v1";

  private final JsonGenerator json;
  private final SarifArtifacts artifacts;
  private final SarifRules rules;

  SarifResult(JsonGenerator json, SarifArtifacts artifacts, SarifRules rules) {
    this.json = json;
    this.artifacts = artifacts;
    this.rules = rules;
  }

  /** Writes one finding. */
  void write(Finding finding) throws IOException {
    json.writeStartObject();
    json.writeStringField("ruleId", finding.rule());
    if (rules.index(finding.rule()).isPresent()) {
      json.writeNumberField("ruleIndex", rules.index(finding.rule()).get());
    }
    json.writeStringField("level", SarifRules.level(finding.severity()));
    SarifText.message(json, "message", message(finding));
    List<Spot> spots = spots(finding);
    location(finding, spots);
    if (spots.size() > 1) {
      json.writeArrayFieldStart("relatedLocations");
      for (Spot spot : spots.subList(1, spots.size())) {
        json.writeStartObject();
        physical(spot);
        SarifText.message(json, "message", spot.words());
        json.writeEndObject();
      }
      json.writeEndArray();
    }
    json.writeObjectFieldStart("fingerprints");
    json.writeStringField(FINGERPRINT, finding.id());
    json.writeEndObject();
    properties(finding);
    json.writeEndObject();
  }

  private static String message(Finding finding) {
    return new Alike(List.of(finding)).heading()
        + (finding.switchName().isEmpty() ? "" : " on " + finding.switchName())
        + ": found "
        + finding.found()
        + "; designed "
        + finding.designed()
        + ". "
        + finding.consequence();
  }

  /** The lines that it rests on, and where the design says so: the first is where it is shown. */
  private static List<Spot> spots(Finding finding) {
    List<Spot> spots = new ArrayList<>();
    for (Proof proof : finding.evidence()) {
      if (proof.evidence() instanceof Evidence.Line line && proof.file().isPresent()) {
        spots.add(
            new Spot(proof.file().get(), line.line(), Optional.of(line.text()), "in the config"));
      }
    }
    finding
        .design()
        .ifPresent(
            at -> spots.add(new Spot(at.file(), at.line(), Optional.empty(), "in the design")));
    return spots;
  }

  private void location(Finding finding, List<Spot> spots) throws IOException {
    if (spots.isEmpty() && finding.place().isEmpty()) {
      return;
    }
    json.writeArrayFieldStart("locations");
    json.writeStartObject();
    if (!spots.isEmpty()) {
      physical(spots.get(0));
    }
    if (finding.place().isPresent()) {
      Place place = finding.place().get();
      json.writeArrayFieldStart("logicalLocations");
      json.writeStartObject();
      json.writeStringField("name", place.port().orElse(place.switchName()));
      json.writeStringField(
          "fullyQualifiedName",
          place.switchName() + place.port().map(port -> "/" + port).orElse(""));
      json.writeStringField("kind", place.port().isPresent() ? "port" : "switch");
      json.writeEndObject();
      json.writeEndArray();
    }
    json.writeEndObject();
    json.writeEndArray();
  }

  private void physical(Spot spot) throws IOException {
    json.writeObjectFieldStart("physicalLocation");
    artifacts.reference(json, spot.file());
    json.writeObjectFieldStart("region");
    json.writeNumberField("startLine", spot.line());
    if (spot.text().isPresent()) {
      json.writeObjectFieldStart("snippet");
      json.writeStringField("text", Display.clean(spot.text().get()));
      json.writeEndObject();
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private void properties(Finding finding) throws IOException {
    json.writeObjectFieldStart("properties");
    json.writeStringField("severity", finding.severity().toString());
    json.writeStringField("subject", finding.subject());
    json.writeStringField("found", finding.found());
    json.writeStringField("designed", finding.designed());
    json.writeStringField("consequence", finding.consequence());
    json.writeArrayFieldStart("vlans");
    for (int vlan : finding.vlans().ids().toArray()) {
      json.writeNumber(vlan);
    }
    json.writeEndArray();
    strings("others", finding.others().stream().map(Place::toString).toList());
    strings(
        "defaults",
        finding.evidence().stream()
            .flatMap(
                proof ->
                    proof.evidence() instanceof Evidence.Default standard
                        ? Optional.of(standard.name()).stream()
                        : Optional.<String>empty().stream())
            .toList());
    json.writeEndObject();
  }

  private void strings(String name, List<String> values) throws IOException {
    json.writeArrayFieldStart(name);
    for (String value : values) {
      json.writeString(value);
    }
    json.writeEndArray();
  }

  /**
   * A line of a file.
   *
   * @param file as typed
   * @param line 1-based
   * @param text what may be quoted of it
   * @param words what it is to the finding
   */
  private record Spot(String file, int line, Optional<String> text, String words) {}
}
