package plumbline.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import plumbline.effective.Dialect;

/** Holds {@code docs/design.md} to what the reader does. */
class DesignManualTest {
  private static final String MANUAL = Designs.text(Path.of("docs/design.md"));
  private static final Pattern ROW = Pattern.compile("^\\| `([a-z-]+)` \\| (.*) \\| (.*) \\|$");

  @Test
  void every_key_stands_in_the_table_of_its_map_and_no_other_does() {
    Map<String, List<String>> expected = new LinkedHashMap<>();
    collect(DesignShape.of(Dialect.words()), expected);
    assertThat(documented()).isEqualTo(expected);
  }

  @Test
  void a_needed_key_is_said_to_be_needed_and_no_other_is() {
    Map<String, List<String>> needed = new LinkedHashMap<>();
    rows(
        (noun, row) -> {
          if (row.group(3).contains("needed")) {
            needed.computeIfAbsent(noun, key -> new ArrayList<>()).add(row.group(1));
          }
        });
    Map<String, List<String>> expected = new LinkedHashMap<>();
    required(DesignShape.of(Dialect.words()), expected);
    assertThat(needed).isEqualTo(expected);
  }

  @Test
  void every_word_that_a_key_takes_is_in_its_row() {
    List<String> missing = new ArrayList<>();
    Map<String, Shape.Keys> shapes = new LinkedHashMap<>();
    shapes(DesignShape.of(Dialect.words()), shapes);
    rows(
        (noun, row) -> {
          List<String> words = new ArrayList<>();
          words(shapes.get(noun).field(row.group(1)).orElseThrow().shape(), words);
          words.stream()
              .filter(word -> !row.group(2).contains("`" + word + "`"))
              .forEach(word -> missing.add(noun + " " + row.group(1) + " " + word));
        });
    assertThat(missing).isEmpty();
  }

  @Test
  void the_smallest_design_of_the_manual_loads_and_means_what_the_text_says() {
    Matcher block = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(MANUAL);
    assertThat(block.find()).isTrue();
    DesignReading reading = Designs.read("design.yaml", block.group(1));
    assertThat(Designs.messages(reading)).isEmpty();
    DesignPort port = reading.design().orElseThrow().portsOf("north-sw1").get(0);
    assertThat(port.port()).hasToString("GigabitEthernet1/0/1");
    assertThat(port.role().value(RoleKeys.TAGGED))
        .hasValueSatisfying(tagged -> assertThat(tagged).hasToString("220,231"));
  }

  @Test
  void the_bundle_of_the_manual_that_ends_on_a_pair_is_one_port_of_two_links() {
    List<String> blocks =
        Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL)
            .matcher(MANUAL)
            .results()
            .map(block -> block.group(1))
            .toList();
    assertThat(blocks).hasSize(2);
    DesignReading reading = Designs.read("design.yaml", blocks.get(1));
    assertThat(Designs.messages(reading)).isEmpty();
    Design design = reading.design().orElseThrow();
    List<DesignPort> ports = design.portsOf("acc");
    assertThat(ports)
        .extracting(port -> port.port() + ": " + port.subject())
        .containsExactlyInAnyOrder(
            "Port-channel11: link to core-a Port-channel11 and core-b Port-channel11",
            "TenGigabitEthernet1/1/1: member of link to core-a Port-channel11",
            "TenGigabitEthernet1/1/2: member of link to core-b Port-channel11");
    DesignPort shared =
        ports.stream().filter(port -> port.port().kind().isBundle()).findFirst().orElseThrow();
    assertThat(MANUAL).contains("`" + shared.subject() + "`");
    assertThat(design.links())
        .filteredOn(link -> link.second().filter(shared::equals).isPresent())
        .extracting(link -> link.membersBeside(shared).get(0).port().toString())
        .containsExactly("TenGigabitEthernet1/1/1", "TenGigabitEthernet1/1/2");
  }

  @Test
  void the_error_of_the_manual_is_the_error_of_the_reader() {
    Matcher block = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(MANUAL);
    assertThat(block.find()).isTrue();
    String wrong = block.group(1).replace("role: host-uplink", "role: host-uplnk");
    Matcher shown = Pattern.compile("```text\n(.*?)\n```", Pattern.DOTALL).matcher(MANUAL);
    assertThat(shown.find()).isTrue();
    assertThat(Designs.messages(Designs.read("design.yaml", wrong)))
        .containsExactly(shown.group(1));
  }

  private interface Row {
    void at(String noun, Matcher row);
  }

  private static void rows(Row visit) {
    String noun = "";
    for (String line : MANUAL.lines().toList()) {
      if (line.startsWith("#")) {
        noun = line.replaceFirst("^#+ (Keys of |Top of the file: )?", "");
      }
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        visit.at(noun, row);
      }
    }
  }

  private static Map<String, List<String>> documented() {
    Map<String, List<String>> tables = new LinkedHashMap<>();
    rows((noun, row) -> tables.computeIfAbsent(noun, key -> new ArrayList<>()).add(row.group(1)));
    return tables;
  }

  private static void shapes(Shape shape, Map<String, Shape.Keys> found) {
    if (shape instanceof Shape.Keys keys) {
      found.put(keys.noun(), keys);
      keys.fields().forEach(field -> shapes(field.shape(), found));
    } else if (shape instanceof Shape.MapOf map) {
      shapes(map.value(), found);
    } else if (shape instanceof Shape.ListOf list) {
      shapes(list.item(), found);
    } else if (shape instanceof Shape.Either either) {
      either.options().forEach(option -> shapes(option, found));
    }
  }

  /** The own keys of each map; role keys that it takes besides are documented with the role. */
  private static void collect(Shape design, Map<String, List<String>> found) {
    Map<String, Shape.Keys> shapes = new LinkedHashMap<>();
    shapes(design, shapes);
    shapes.forEach(
        (noun, keys) -> {
          boolean isRole = noun.equals("a role");
          List<String> names =
              keys.fields().stream()
                  .filter(field -> isRole || !DesignShape.roleKeys().contains(field))
                  .map(Shape.Field::name)
                  .toList();
          found.put(noun, names);
        });
  }

  private static void required(Shape design, Map<String, List<String>> found) {
    Map<String, Shape.Keys> shapes = new LinkedHashMap<>();
    shapes(design, shapes);
    shapes.forEach(
        (noun, keys) -> {
          List<String> names =
              keys.fields().stream().filter(Shape.Field::required).map(Shape.Field::name).toList();
          if (!names.isEmpty()) {
            found.put(noun, names);
          }
        });
  }

  private static void words(Shape shape, List<String> words) {
    if (shape instanceof Shape.Words some) {
      words.addAll(some.words());
    } else if (shape instanceof Shape.ListOf list) {
      words(list.item(), words);
    } else if (shape instanceof Shape.Either either) {
      either.options().forEach(option -> words(option, words));
    }
  }
}
