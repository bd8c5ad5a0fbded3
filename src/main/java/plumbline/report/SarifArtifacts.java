package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import plumbline.result.Result;

/** The files of a SARIF run, each once, with their hashes. */
final class SarifArtifacts {
  private static final String STANDARD_INPUT = "-";

  private final Map<String, Artifact> files = new LinkedHashMap<>();

  private SarifArtifacts() {}

  /** The design's files, then the configs. */
  static SarifArtifacts of(Result result) {
    SarifArtifacts all = new SarifArtifacts();
    result
        .design()
        .forEach(file -> all.add(file.file(), "userSpecifiedConfiguration", file.sha256()));
    result
        .configs()
        .forEach(
            file ->
                all.add(
                    file.file(),
                    file.file().equals(STANDARD_INPUT) ? "standardStream" : "analysisTarget",
                    file.sha256()));
    return all;
  }

  private void add(String file, String role, String sha256) {
    files.putIfAbsent(file, new Artifact(files.size(), role, sha256));
  }

  /** Writes the list. */
  void write(JsonGenerator json) throws IOException {
    json.writeArrayFieldStart("artifacts");
    for (Map.Entry<String, Artifact> file : files.entrySet()) {
      json.writeStartObject();
      json.writeObjectFieldStart("location");
      json.writeStringField("uri", FileUri.of(file.getKey()));
      if (file.getKey().equals(STANDARD_INPUT)) {
        SarifText.message(json, "description", "standard input");
      }
      json.writeEndObject();
      json.writeArrayFieldStart("roles");
      json.writeString(file.getValue().role());
      json.writeEndArray();
      json.writeObjectFieldStart("hashes");
      json.writeStringField("sha-256", file.getValue().sha256());
      json.writeEndObject();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Writes an object that points at a file. */
  void reference(JsonGenerator json, String file) throws IOException {
    json.writeObjectFieldStart("artifactLocation");
    json.writeStringField("uri", FileUri.of(file));
    if (files.containsKey(file)) {
      json.writeNumberField("index", files.get(file).index());
    }
    json.writeEndObject();
  }

  /**
   * A file.
   *
   * @param index its place in the list
   * @param role what it is to the run, a word of SARIF 3.24.6
   * @param sha256 lower-case hexadecimal
   */
  private record Artifact(int index, String role, String sha256) {}
}
