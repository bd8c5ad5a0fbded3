package plumbline.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plumbline.design.Shape.Either;
import plumbline.design.Shape.Field;
import plumbline.design.Shape.Keys;
import plumbline.design.Shape.ListOf;
import plumbline.design.Shape.MapOf;
import plumbline.design.Shape.Measure;
import plumbline.design.Shape.Text;
import plumbline.design.Shape.Truth;
import plumbline.design.Shape.Whole;
import plumbline.design.Shape.Words;

/** Says in JSON Schema 2020-12 what the reader's table of shapes says. */
final class SchemaOfShape {
  private SchemaOfShape() {}

  static Map<String, Object> document(Keys design) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("$id", "urn:plumbline:design:1");
    schema.put("title", "plumbline design, format 1");
    schema.put(
        "description",
        "Shape of a design file. References between its parts are checked by the program.");
    schema.putAll(of(design));
    return schema;
  }

  private static Map<String, Object> of(Shape shape) {
    Map<String, Object> schema = new LinkedHashMap<>();
    if (shape instanceof Truth) {
      schema.put("type", "boolean");
    } else if (shape instanceof Whole whole) {
      schema.put("type", "integer");
      schema.put("minimum", whole.min());
      schema.put("maximum", whole.max());
    } else if (shape instanceof Measure measure) {
      schema.put("type", "number");
      schema.put("exclusiveMinimum", 0);
      schema.put("maximum", measure.max());
    } else if (shape instanceof Text text) {
      schema.put("type", text.numbers() ? List.of("string", "number") : "string");
      schema.put("pattern", text.pattern().pattern());
    } else if (shape instanceof Words words) {
      schema.put("enum", words.words());
    } else if (shape instanceof ListOf list) {
      list(schema, list);
    } else if (shape instanceof MapOf map) {
      map(schema, map);
    } else if (shape instanceof Keys keys) {
      keys(schema, keys);
    } else if (shape instanceof Either either) {
      schema.put("anyOf", either.options().stream().map(SchemaOfShape::of).toList());
    }
    return schema;
  }

  private static void list(Map<String, Object> schema, ListOf list) {
    schema.put("type", "array");
    schema.put("items", of(list.item()));
    if (list.min() > 0) {
      schema.put("minItems", list.min());
    }
    if (list.max() < Integer.MAX_VALUE) {
      schema.put("maxItems", list.max());
    }
  }

  private static void map(Map<String, Object> schema, MapOf map) {
    Map<String, Object> names = new LinkedHashMap<>();
    names.put("pattern", map.key().pattern().pattern());
    if (!map.markers().isEmpty()) {
      names.put("not", Map.of("enum", map.markers().stream().sorted().toList()));
    }
    schema.put("type", "object");
    schema.put("propertyNames", names);
    schema.put("additionalProperties", of(map.value()));
  }

  private static void keys(Map<String, Object> schema, Keys keys) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    for (Field field : keys.fields()) {
      Map<String, Object> property = new LinkedHashMap<>();
      property.put("description", field.about());
      property.putAll(of(field.shape()));
      properties.put(field.name(), property);
      if (field.required()) {
        required.add(field.name());
      }
    }
    schema.put("type", "object");
    schema.put("properties", properties);
    if (!required.isEmpty()) {
      schema.put("required", required);
    }
    schema.put("additionalProperties", false);
  }
}
