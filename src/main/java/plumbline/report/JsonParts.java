package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** Writes what several JSON reports hold in the same form. */
final class JsonParts {
  private final JsonGenerator json;

  JsonParts(JsonGenerator json) {
    this.json = json;
  }

  void places(String name, List<Place> places) throws IOException {
    json.writeArrayFieldStart(name);
    for (Place place : places) {
      json.writeStartObject();
      json.writeStringField("switch", place.switchName());
      text("port", place.port());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Where the design says so; {@code null} where it says nothing. */
  void design(Optional<Position> at) throws IOException {
    if (at.isEmpty()) {
      json.writeNullField("design");
      return;
    }
    json.writeObjectFieldStart("design");
    json.writeStringField("file", at.get().file());
    json.writeNumberField("line", at.get().line());
    json.writeEndObject();
  }

  void proofs(String name, List<Proof> proofs) throws IOException {
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

  void vlans(String name, VlanSet vlans) throws IOException {
    json.writeArrayFieldStart(name);
    for (int vlan : vlans.ids().toArray()) {
      json.writeNumber(vlan);
    }
    json.writeEndArray();
  }

  void text(String name, Optional<String> value) throws IOException {
    if (value.isPresent()) {
      json.writeStringField(name, value.get());
    } else {
      json.writeNullField(name);
    }
  }

  void strings(String name, List<String> values) throws IOException {
    json.writeArrayFieldStart(name);
    for (String value : values) {
      json.writeString(value);
    }
    json.writeEndArray();
  }
}
