package plumbline.design;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import plumbline.effective.Dialect;
import plumbline.yaml.Node;
import plumbline.yaml.Position;
import plumbline.yaml.PositionedTree;

/**
 * Holds the reader's shapes and the published schema together. The outside check is a validator of
 * JSON Schema 2020-12 that knows nothing of the reader.
 */
class DesignShapeTest {
  private static final Path SCHEMA = Path.of("docs/schema/plumbline-design-1.schema.json");
  private static final Path EVERY_KEY = Path.of("testdata/design/every-key.yaml");
  private static final ObjectMapper MAPPER =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
  private static final Shape.Keys SHAPE = DesignShape.of(Dialect.words());

  /** Values that take the place of every value; 1.0 and 1e2 are left out, see the last test. */
  private static final List<String> WRONG =
      List.of(
          "null",
          "true",
          "0",
          "1",
          "-1",
          "5000",
          "1.5",
          "\"\"",
          "\"x\"",
          "\"two words\"",
          "\"a b c 1\"",
          "\"lapc\"",
          "\"500-599\"",
          "\"line\\nbreak\"",
          "\"break\\n\"",
          "[]",
          "[\"x\"]",
          "[1, 2]",
          "[null]",
          "[[]]",
          "{}",
          "{\"x\": 1}",
          "{\"at\": [], \"vlans\": []}",
          "{\"x y\": {}}");

  @Test
  void the_published_schema_says_exactly_what_the_table_of_shapes_says() throws IOException {
    String generated =
        MAPPER.writeValueAsString(SchemaOfShape.document(SHAPE)).replace("\r\n", "\n") + "\n";
    if (Boolean.getBoolean("golden.renew")) {
      Files.writeString(SCHEMA, generated);
    }
    assertThat(Designs.text(SCHEMA)).isEqualTo(generated);
  }

  @Test
  void the_schema_offers_a_description_for_every_key() throws IOException {
    List<String> without = new ArrayList<>();
    MAPPER
        .readTree(Designs.text(SCHEMA))
        .findValues("properties")
        .forEach(
            properties ->
                properties
                    .properties()
                    .forEach(
                        key -> {
                          if (!key.getValue().path("description").asText().endsWith(".")) {
                            without.add(key.getKey());
                          }
                        }));
    assertThat(without).isEmpty();
  }

  @Test
  void the_table_has_every_key_of_a_role_in_the_same_order() {
    assertThat(DesignShape.roleKeys().stream().map(Shape.Field::name))
        .containsExactlyElementsOf(RoleKeys.ALL.stream().map(RoleKey::name).toList());
  }

  @Test
  void the_file_with_every_key_has_every_key_of_the_table() {
    Set<String> used = new TreeSet<>();
    keysOf(tree("every-key.yaml", Designs.text(EVERY_KEY)), used);
    Set<String> known = new TreeSet<>();
    keysOf(SHAPE, known);
    assertThat(used).containsAll(known);
  }

  static Stream<String> goodFiles() {
    return Stream.of("north.yaml", "every-key.yaml");
  }

  @ParameterizedTest
  @MethodSource("goodFiles")
  void good_files_are_good_for_reader_and_schema(String name) {
    Node root = tree(name, Designs.text(Path.of("testdata/design", name)));
    assertThat(shapeMessages(root)).isEmpty();
    assertThat(schema().validate(json(root))).isEmpty();
  }

  @Test
  void reader_and_schema_agree_on_every_wrong_file() throws IOException {
    Schema schema = schema();
    List<String> disagreements = new ArrayList<>();
    try (Stream<String> names = WrongDesignsTest.files()) {
      for (String name : names.toList()) {
        String text = Designs.text(Path.of("testdata/design/bad", name));
        PositionedTree tree = PositionedTree.read(name, text);
        if (tree.root().isPresent()) {
          compare(schema, tree.root().get(), name, disagreements);
        }
      }
    }
    assertThat(disagreements).isEmpty();
  }

  @Test
  void reader_and_schema_agree_whatever_takes_the_place_of_any_value() throws IOException {
    Schema schema = schema();
    JsonNode good = json(tree("every-key.yaml", Designs.text(EVERY_KEY)));
    List<String> disagreements = new ArrayList<>();
    int[] mutants = {0, 0};
    forEachPlace(
        good,
        "",
        (parent, key, path) -> {
          JsonNode original =
              parent.isObject() ? parent.get(key) : parent.get(Integer.parseInt(key));
          for (String wrong : WRONG) {
            put(parent, key, read(wrong));
            mutants[0]++;
            if (!compare(
                schema,
                tree("mutant.json", good.toString()),
                path + " := " + wrong,
                disagreements)) {
              mutants[1]++;
            }
          }
          put(parent, key, original);
          if (parent instanceof ObjectNode map) {
            map.remove(key);
            compare(schema, tree("mutant.json", good.toString()), path + " removed", disagreements);
            map.set(key, original);
            map.put(key + "x", 1);
            compare(schema, tree("mutant.json", good.toString()), path + "x added", disagreements);
            map.remove(key + "x");
          }
        });
    assertThat(disagreements).isEmpty();
    // Both verdicts must be well represented, or agreement would say little.
    assertThat(mutants[0]).isGreaterThan(3000);
    assertThat(mutants[1]).isBetween(500, mutants[0] - 500);
  }

  @Test
  void a_whole_number_must_be_written_as_one() {
    // The schema takes 1.0 for an integer; the reader does not, so that 1.0 and 1.7 are one
    // mistake.
    Node root = tree("a.json", "{\"format\": \"plumbline-design/1\", \"max-age-days\": 1.0}");
    assertThat(shapeMessages(root)).hasSize(1);
    assertThat(schema().validate(json(root))).isEmpty();
  }

  /** Notes a disagreement; returns whether the schema holds the document for good. */
  private static boolean compare(
      Schema schema, Node root, String what, List<String> disagreements) {
    boolean good = schema.validate(json(root)).isEmpty();
    List<String> messages = shapeMessages(root);
    if (good != messages.isEmpty()) {
      disagreements.add(what + ": schema " + (good ? "good" : "bad") + ", reader " + messages);
    }
    return good;
  }

  private static List<String> shapeMessages(Node root) {
    Problems problems = new Problems();
    new ShapeCheck(problems).check(root, SHAPE, "a design", new Position("file", 1, 1));
    return problems.sorted(List.of()).stream().map(Object::toString).toList();
  }

  private static Node tree(String file, String text) {
    return PositionedTree.read(file, text).root().orElseThrow();
  }

  private static Schema schema() {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(Designs.text(SCHEMA));
  }

  private static JsonNode json(Node node) {
    if (node instanceof Node.Entries entries) {
      ObjectNode map = MAPPER.createObjectNode();
      entries.entries().forEach(entry -> map.set(entry.key(), json(entry.value())));
      return map;
    }
    if (node instanceof Node.Items items) {
      ArrayNode list = MAPPER.createArrayNode();
      items.items().forEach(item -> list.add(json(item)));
      return list;
    }
    Node.Scalar scalar = (Node.Scalar) node;
    return switch (scalar.kind()) {
      case INTEGER, DECIMAL -> read(scalar.text());
      case TRUTH -> read(scalar.text().toLowerCase(java.util.Locale.ROOT));
      case NOTHING -> MAPPER.nullNode();
      // An odd number has no value of its own, only a text.
      case TEXT, ODD_NUMBER -> MAPPER.getNodeFactory().textNode(scalar.text());
    };
  }

  private static JsonNode read(String json) {
    try {
      return MAPPER.readTree(json);
    } catch (IOException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** Something done at each value of a document. */
  private interface Visit {
    void at(JsonNode parent, String key, String path);
  }

  private static void forEachPlace(JsonNode node, String path, Visit visit) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    for (int i = 0; node.isArray() && i < node.size(); i++) {
      keys.add(Integer.toString(i));
    }
    for (String key : keys) {
      String inner = path + "/" + key;
      visit.at(node, key, inner);
      forEachPlace(node.isArray() ? node.get(Integer.parseInt(key)) : node.get(key), inner, visit);
    }
  }

  private static void put(JsonNode parent, String key, JsonNode value) {
    if (parent instanceof ObjectNode map) {
      map.set(key, value);
    } else {
      ((ArrayNode) parent).set(Integer.parseInt(key), value);
    }
  }

  private static void keysOf(Node node, Set<String> keys) {
    if (node instanceof Node.Entries entries) {
      for (Node.Entry entry : entries.entries()) {
        keys.add(entry.key());
        keysOf(entry.value(), keys);
      }
    } else if (node instanceof Node.Items items) {
      items.items().forEach(item -> keysOf(item, keys));
    }
  }

  private static void keysOf(Shape shape, Set<String> keys) {
    if (shape instanceof Shape.Keys known) {
      for (Shape.Field field : known.fields()) {
        keys.add(field.name());
        keysOf(field.shape(), keys);
      }
    } else if (shape instanceof Shape.MapOf map) {
      keysOf(map.value(), keys);
    } else if (shape instanceof Shape.ListOf list) {
      keysOf(list.item(), keys);
    } else if (shape instanceof Shape.Either either) {
      either.options().forEach(option -> keysOf(option, keys));
    }
  }
}
