package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.finding.Severity;

/** The rules of a SARIF run, with help from their pages. */
final class SarifRules {
  /** What the page says beside its example. */
  private static final List<String> HELP =
      List.of("Why it matters", "How to repair", "How to accept", "Source");

  private final List<RuleText> rules;
  private final Map<String, Integer> places = new LinkedHashMap<>();

  SarifRules(List<RuleText> rules) {
    this.rules = List.copyOf(rules);
    rules.forEach(rule -> places.put(rule.id(), places.size()));
  }

  /** The SARIF level of a severity. */
  static String level(Severity severity) {
    return switch (severity) {
      case BREAKS -> "error";
      case WEAKENS -> "warning";
      case UNVERIFIED, UNTIDY -> "note";
    };
  }

  /** The place of a rule in the list. */
  Optional<Integer> index(String id) {
    return Optional.ofNullable(places.get(id));
  }

  /** Writes the members of an object that points at a rule. */
  void reference(JsonGenerator json, String id) throws IOException {
    json.writeStringField("id", id);
    if (index(id).isPresent()) {
      json.writeNumberField("index", index(id).get());
    }
  }

  /** Writes the list. */
  void write(JsonGenerator json) throws IOException {
    json.writeArrayFieldStart("rules");
    for (RuleText rule : rules) {
      json.writeStartObject();
      json.writeStringField("id", rule.id());
      SarifText.message(json, "shortDescription", rule.summary() + ".");
      SarifText.message(
          json, "fullDescription", rule.section("What is reported").replace('\n', ' '));
      json.writeObjectFieldStart("defaultConfiguration");
      json.writeStringField("level", level(rule.floor()));
      json.writeEndObject();
      SarifText.both(json, "help", help(rule));
      json.writeObjectFieldStart("properties");
      json.writeStringField("group", rule.group());
      json.writeStringField("floor", rule.floor().toString());
      json.writeStringField("source", rule.source());
      json.writeEndObject();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static String help(RuleText rule) {
    StringBuilder text = new StringBuilder();
    for (String title : HELP) {
      String body = rule.section(title);
      if (!body.isEmpty()) {
        text.append("## ").append(title).append("\n\n").append(body).append("\n\n");
      }
    }
    return text.isEmpty() ? rule.summary() + "." : text.toString().stripTrailing();
  }
}
