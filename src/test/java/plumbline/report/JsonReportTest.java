package plumbline.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import plumbline.golden.GoldenFile;
import plumbline.golden.Schemas;

class JsonReportTest {
  private static final String SCHEMA = "plumbline-report-1.schema.json";

  @Test
  void the_report_has_the_published_shape() {
    String json = JsonReport.of(Samples.drift(), "0.1.0");
    assertThat(Schemas.problems(SCHEMA, json)).isEmpty();
    GoldenFile.check("report/drift.json", json);
  }

  @Test
  void a_report_without_findings_fits_the_schema_too() {
    assertThat(Schemas.problems(SCHEMA, JsonReport.of(Samples.conforms(), "0.1.0"))).isEmpty();
    assertThat(Schemas.problems(SCHEMA, JsonReport.of(Samples.incomplete(), "0.1.0"))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"severity\": \"breaks\"|\"severity\": \"critical\"",
        "\"loss\": \"vlan\"|\"loss\": \"cable\"",
        "\"failure\": \"north-sw2\"|\"reason\": \"north-sw2\"",
        "\"line\": 61|\"line\": 0",
        "\"waiver\": null|\"waver\": null",
        "\"format\": \"plumbline-report/1\"|\"format\": \"plumbline-report/2\"",
        "\"result\": \"drift\"|\"result\": \"bad\"",
        "\"at\": \"2026-11-25T02:10:00Z\"|\"at\": \"2026-11-25\""
      })
  void the_schema_refuses_what_is_no_report(String change) {
    String json = JsonReport.of(Samples.drift(), "0.1.0");
    String[] parts = change.split("\\|", -1);
    assertThat(json).contains(parts[0]);
    assertThat(Schemas.problems(SCHEMA, json.replace(parts[0], parts[1]))).isNotEmpty();
  }

  @Test
  void the_same_result_gives_the_same_bytes() {
    assertThat(JsonReport.of(Samples.drift(), "1"))
        .isEqualTo(JsonReport.of(Samples.drift(), "1"))
        .endsWith("}\n")
        .doesNotContain("\r");
  }

  @Test
  void control_characters_are_escaped_as_json_asks() {
    // RFC 8259 section 7: U+0000 to U+001F must be escaped
    String json = JsonReport.of(Samples.drift(), "0.1.0");
    assertThat(json).contains("\\u001B[31mFähre");
    assertThat(json.chars().filter(c -> c < 0x20 && c != '\n')).isEmpty();
  }

  @Test
  void nothing_invisible_stands_in_the_document_as_it_is() {
    String json = JsonReport.of(Samples.drift(), "0.1.0");
    assertThat(json).contains("Fähre\\u202E 渡し船");
    assertThat(json.codePoints().filter(c -> Character.getType(c) == Character.FORMAT)).isEmpty();
  }

  @Test
  void every_field_is_documented() throws IOException {
    String page = Files.readString(Path.of("docs/reports.md"));
    String section = page.substring(page.indexOf("\n## JSON"), page.indexOf("\n## CSV"));
    JsonNode schema = new ObjectMapper().readTree(Path.of("docs/schema", SCHEMA).toFile());
    List<String> fields = new ArrayList<>();
    for (String name : names(schema.at("/properties"))) {
      if (!Set.of("run", "verdict", "findings").contains(name)) {
        fields.add(name);
      }
    }
    names(schema.at("/properties/run/properties")).forEach(name -> fields.add("run." + name));
    names(schema.at("/properties/verdict/properties"))
        .forEach(name -> fields.add("verdict." + name));
    names(schema.at("/$defs/finding/properties")).forEach(name -> fields.add("findings[]." + name));
    names(schema.at("/properties/run/properties/configs/items/properties")).forEach(fields::add);
    assertThat(fields).hasSizeGreaterThan(40);
    assertThat(fields).allMatch(field -> section.contains("`" + field + "`"));
  }

  private static List<String> names(JsonNode properties) {
    List<String> names = new ArrayList<>();
    properties.fieldNames().forEachRemaining(names::add);
    return names;
  }
}
