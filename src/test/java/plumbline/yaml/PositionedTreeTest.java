package plumbline.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Every value has its kind and its place, in YAML and in JSON. */
class PositionedTreeTest {
  private static Node.Scalar value(String yaml) {
    PositionedTree tree = PositionedTree.read("f.yaml", "key: " + yaml + "\n");
    assertThat(tree.problems()).isEmpty();
    return (Node.Scalar)
        ((Node.Entries) tree.root().orElseThrow()).get("key").orElseThrow().value();
  }

  @Test
  void words_of_older_yaml_are_text_and_only_true_and_false_are_truths() {
    for (String word :
        new String[] {"yes", "No", "on", "OFF", "y", "\"true\"", "'1'", "12:30", "500-599"}) {
      assertThat(value(word).kind()).as(word).isEqualTo(Node.Kind.TEXT);
    }
    for (String word : new String[] {"true", "False", "TRUE"}) {
      assertThat(value(word).kind()).as(word).isEqualTo(Node.Kind.TRUTH);
    }
    for (String word : new String[] {"", "~", "null"}) {
      assertThat(value(word).kind()).as(word).isEqualTo(Node.Kind.NOTHING);
    }
    assertThat(value("\"\"").kind()).isEqualTo(Node.Kind.TEXT);
    assertThat(value("''").kind()).isEqualTo(Node.Kind.TEXT);
  }

  @Test
  void numbers_keep_their_spelling() {
    assertThat(value("10").kind()).isEqualTo(Node.Kind.INTEGER);
    assertThat(value("-7").kind()).isEqualTo(Node.Kind.INTEGER);
    assertThat(value("1.75").kind()).isEqualTo(Node.Kind.DECIMAL);
    for (String odd : new String[] {"010", "0x1F", "1_000", "+5", ".inf", "9".repeat(30)}) {
      assertThat(value(odd).kind()).as(odd).isEqualTo(Node.Kind.ODD_NUMBER);
      assertThat(value(odd).text()).isEqualTo(odd);
    }
  }

  @Test
  void places_count_lines_and_characters_from_one() {
    PositionedTree tree =
        PositionedTree.read(
            "f.yaml", "\u00e9: 1\nlist: [\ud83d\ude00, 'a b', \"c d\"]\nmap:\n  key: x\n");
    Node.Entries root = (Node.Entries) tree.root().orElseThrow();
    Node.Items list = (Node.Items) root.get("list").orElseThrow().value();
    assertThat(list.at()).hasToString("f.yaml:2:7");
    assertThat(list.items().get(1).at()).hasToString("f.yaml:2:11");
    assertThat(((Node.Scalar) list.items().get(1)).at(2)).hasToString("f.yaml:2:14");
    assertThat(((Node.Scalar) list.items().get(2)).at(2)).hasToString("f.yaml:2:21");
    Node.Entry map = root.get("map").orElseThrow();
    assertThat(map.at()).hasToString("f.yaml:3:1");
    assertThat(((Node.Entries) map.value()).entries().get(0).value().at())
        .hasToString("f.yaml:4:8");
  }

  @Test
  void json_is_read_as_json_by_its_ending_in_any_case() {
    PositionedTree tree = PositionedTree.read("F.JSON", "{\"a\": [true, null, 1.5, \"b c\"]}");
    Node.Items list =
        (Node.Items) ((Node.Entries) tree.root().orElseThrow()).get("a").orElseThrow().value();
    assertThat(list.items())
        .extracting(node -> ((Node.Scalar) node).kind())
        .containsExactly(Node.Kind.TRUTH, Node.Kind.NOTHING, Node.Kind.DECIMAL, Node.Kind.TEXT);
    assertThat(((Node.Scalar) list.items().get(3)).at(2)).hasToString("F.JSON:1:28");
    assertThat(PositionedTree.read("f.json", "a: 1\n").root()).isEmpty();
  }

  @Test
  void a_key_given_twice_keeps_its_first_value() {
    PositionedTree tree = PositionedTree.read("f.yaml", "a: 1\nb: 2\na: 3\n");
    assertThat(tree.problems())
        .extracting(Problem::toString)
        .containsExactly("f.yaml:3:1: key \"a\" is given twice; first at f.yaml:1:1");
    Node.Entries root = (Node.Entries) tree.root().orElseThrow();
    assertThat(root.entries()).hasSize(2);
    assertThat(((Node.Scalar) root.get("a").orElseThrow().value()).text()).isEqualTo("1");
  }

  @Test
  void anchors_of_keys_values_lists_and_maps_are_all_seen() {
    for (String text :
        new String[] {
          "&a k: 1", "k: &a 1", "k: &a [1]", "k: &a {b: 1}", "k: &a\n  b: 1", "- &a x"
        }) {
      PositionedTree tree = PositionedTree.read("f.yaml", text + "\n");
      assertThat(tree.problems()).as(text).hasSize(1);
      assertThat(tree.problems().get(0).message()).as(text).startsWith("anchors and aliases");
    }
  }
}
