package plumbline.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import plumbline.yaml.Problem;

/** No text, however made, gets more out of the reader than a few clear problems. */
class HostileDesignTest {
  private static final String HEAD = "format: plumbline-design/1\n";
  private static final Duration LIMIT = Duration.ofSeconds(30);

  private static List<String> messages(String file, String text) {
    return Assertions.assertTimeoutPreemptively(
        LIMIT, () -> Designs.messages(Designs.read(file, text)));
  }

  @Test
  void fifty_megabytes_of_links_are_one_problem() {
    assertThat(
            messages(
                "d.yaml",
                HEAD + "links:\n" + "  - {ends: [a b, c d], role: x}\n".repeat(1_600_000)))
        .containsExactly("d.yaml:285716:18: the file holds more than 2000000 keys and values");
  }

  @Test
  void fifty_megabytes_in_one_word_are_one_problem() {
    assertThat(messages("d.yaml", HEAD + "site: " + "x".repeat(50_000_000)))
        .containsExactly(
            "d.yaml:2:7: a word of more than 65536 characters in a line; expected a design (JSON"
                + " without blanks needs the ending .json)");
    assertThat(messages("d.yaml", HEAD + "site: x" + " ".repeat(100_000) + "y\n"))
        .containsExactly(
            "d.yaml:2:8: more than 65536 blanks in a line; expected a design (JSON without blanks"
                + " needs the ending .json)");
  }

  @Test
  void a_number_of_fifty_megabytes_is_one_problem() {
    String json =
        "{\"format\": \"plumbline-design/1\", \"max-age-days\": " + "1".repeat(50_000_000);
    assertThat(messages("d.json", json + "}")).hasSize(1);
  }

  @Test
  void more_than_the_limit_is_refused_unread() {
    assertThat(messages("d.yaml", "\n".repeat(64 * 1024 * 1024 + 1)))
        .containsExactly("d.yaml:1:1: the file is larger than 64 Mi characters; expected a design");
  }

  @Test
  void deep_nesting_is_one_problem_in_both_languages() {
    String deep = ":33: lists and maps stand more than 32 deep here; expected a design";
    assertThat(messages("d.yaml", "[".repeat(60_000))).containsExactly("d.yaml:1" + deep);
    assertThat(messages("d.json", "[".repeat(10_000_000))).containsExactly("d.json:1" + deep);
    assertThat(messages("d.yaml", "- ".repeat(10_000_000))).hasSize(1);
    StringBuilder steps = new StringBuilder();
    for (int i = 0; i < 2000; i++) {
      steps.append(" ".repeat(i)).append("a:\n");
    }
    assertThat(messages("d.yaml", steps.toString())).containsExactly("d.yaml:33" + deep);
  }

  @Test
  void aliases_are_never_expanded() {
    StringBuilder laughs = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x]\n");
    for (char c = 'b'; c <= 'z'; c++) {
      laughs.append(c).append(": &").append(c).append(" [");
      laughs.append(("*" + (char) (c - 1) + ", ").repeat(9)).append("]\n");
    }
    assertThat(messages("d.yaml", laughs.toString()))
        .containsExactly(
            "d.yaml:1:4: anchors and aliases are not read in a design; write the value out where it"
                + " is needed, or use \"like\" in a role (250 more in this file)");
  }

  @Test
  void a_nul_or_another_hidden_character_is_named_with_its_place() {
    assertThat(messages("d.yaml", HEAD + "site: a\0b\n"))
        .containsExactly(
            "d.yaml:2:8: the character U+0000 cannot stand in a design; expected plain text");
    assertThat(messages("d.json", "{\r\n \"a\": \"\u0085\"}"))
        .containsExactly(
            "d.json:2:8: the character U+0085 cannot stand in a design; expected plain text");
    assertThat(messages("d.yaml", HEAD + "site: \ud800\n")).hasSize(1);
  }

  @Test
  void byte_order_mark_and_line_ends_change_no_place() {
    String text = HEAD + "site: x\nvlans: {a: {id: 0}}\n";
    List<String> plain = messages("d.yaml", text);
    assertThat(plain).hasSize(1);
    assertThat(messages("d.yaml", "\uFEFF" + text)).isEqualTo(plain);
    assertThat(messages("d.yaml", text.replace("\n", "\r\n"))).isEqualTo(plain);
    assertThat(messages("d.yaml", text.replace("\n", "\r"))).isEqualTo(plain);
    assertThat(messages("d.yaml", text.strip())).isEqualTo(plain);
  }

  @Test
  void a_long_chain_of_roles_does_not_exhaust_the_stack() {
    StringBuilder roles = new StringBuilder(HEAD + "roles:\n");
    for (int i = 0; i < 20_000; i++) {
      roles.append("  r").append(i).append(": {like: r").append(i + 1).append("}\n");
    }
    assertThat(messages("d.yaml", roles + "  r20000: {}\n").get(0))
        .isEqualTo("d.yaml:52:15: more than 50 roles are like one another; expected fewer");
  }

  @Test
  void many_wrong_names_among_many_right_ones_take_no_search_each() {
    StringBuilder text = new StringBuilder(HEAD + "vlans:\n");
    for (int i = 0; i < 20_000; i++) {
      text.append("  name-").append(i).append(": {id: 7}\n");
    }
    text.append("roles:\n");
    for (int i = 0; i < 20_000; i++) {
      text.append("  r").append(i).append(": {access: nome-").append(i).append("}\n");
    }
    assertThat(messages("d.yaml", text.toString())).hasSize(Problems.MOST + 1);
  }

  @Property(tries = 400)
  void no_text_makes_the_reader_throw(@ForAll String text, @ForAll boolean json) {
    assertBounded(Designs.read(json ? "d.json" : "d.yaml", text));
  }

  @Property(tries = 600)
  void no_shuffling_of_design_words_makes_the_reader_throw(
      @ForAll @From("shuffled") String text, @ForAll boolean json) {
    assertBounded(Designs.read(json ? "d.json" : "d.yaml", HEAD + text));
  }

  /** A good design with some stretch taken out, repeated, or replaced is nearly a design. */
  @Property(tries = 400)
  void no_damage_to_a_good_design_makes_the_reader_throw(
      @ForAll @From("place") int from,
      @ForAll @From("place") int to,
      @ForAll @From("shuffled") String with) {
    String good = Designs.text(java.nio.file.Path.of("testdata/design/every-key.yaml"));
    int first = Math.min(from, good.length());
    int last = Math.max(first, Math.min(to, good.length()));
    assertBounded(Designs.read("d.yaml", good.substring(0, first) + with + good.substring(last)));
  }

  @Provide
  Arbitrary<Integer> place() {
    return Arbitraries.integers().between(0, 3200);
  }

  @Provide
  Arbitrary<String> shuffled() {
    return Arbitraries.of(
            "vlans",
            "roles",
            "switches",
            "hosts",
            "links",
            "gateways",
            "services",
            "ports",
            "to",
            "role",
            "ends",
            "members",
            "at",
            "id",
            "access",
            "like",
            ": ",
            ", ",
            "{",
            "}",
            "[",
            "]",
            "\n",
            "\n  ",
            "- ",
            "sw1",
            "sw1 Gi1/0/1",
            "Po1",
            "outside",
            "a",
            "1",
            "4095",
            "null",
            "~",
            "true",
            "no",
            "'",
            "\"",
            "&a ",
            "*a",
            "!!str ",
            "#",
            "|",
            ">",
            "?",
            "%",
            "\t",
            "\\",
            "\u00e9",
            "\ud83d\ude00",
            "---",
            "...",
            "<<",
            "010",
            "1.5")
        .list()
        .ofMaxSize(30)
        .map(words -> String.join("", words));
  }

  private static void assertBounded(DesignReading reading) {
    assertThat(reading.design().isPresent()).isEqualTo(reading.problems().isEmpty());
    for (Problem problem : reading.problems()) {
      assertThat(problem.message()).isNotBlank().hasSizeLessThan(400).matches("[^\\p{Cc}]+");
    }
  }
}
