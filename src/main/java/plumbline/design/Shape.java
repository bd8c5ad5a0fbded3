package plumbline.design;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import plumbline.text.Wording;

/**
 * What a value of a design file may look like, references aside. The reader checks files against
 * these, and the published JSON Schema is tested to say the same.
 */
sealed interface Shape {
  /** What is expected, as a noun phrase for messages. */
  String expected();

  /** True or false. */
  record Truth() implements Shape {
    @Override
    public String expected() {
      return "true or false";
    }
  }

  /**
   * A whole number.
   *
   * @param min lowest
   * @param max highest
   */
  record Whole(int min, int max) implements Shape {
    @Override
    public String expected() {
      return "a whole number from " + min + " to " + max;
    }
  }

  /**
   * A number above zero, fractions allowed.
   *
   * @param max highest
   */
  record Measure(int max) implements Shape {
    @Override
    public String expected() {
      return "a number above 0 and up to " + max;
    }
  }

  /**
   * One line of text.
   *
   * @param expected what is expected
   * @param pattern what all of it must match
   * @param numbers whether a plain number may stand for its digits
   */
  record Text(String expected, Pattern pattern, boolean numbers) implements Shape {}

  /**
   * One of some words.
   *
   * @param words the words
   */
  record Words(List<String> words) implements Shape {
    @Override
    public String expected() {
      return Wording.alternatives(words);
    }
  }

  /**
   * A list.
   *
   * @param item what each entry looks like
   * @param min fewest entries
   * @param max most entries
   */
  record ListOf(Shape item, int min, int max) implements Shape {
    @Override
    public String expected() {
      if (max < Integer.MAX_VALUE) {
        return "a list of " + (min == max ? "" : min + " or ") + max;
      }
      return min == 0 ? "a list" : "a list with at least one entry";
    }
  }

  /**
   * A map with names of the user's choice as keys.
   *
   * @param noun what a key names, such as {@code VLAN}
   * @param key what a key looks like
   * @param value what each value looks like
   * @param markers keys that it cannot have, because they mark a {@link Keys} in its place
   */
  record MapOf(String noun, Text key, Shape value, Set<String> markers) implements Shape {
    @Override
    public String expected() {
      return "a map with a key for each " + noun;
    }
  }

  /**
   * A map with fixed keys.
   *
   * @param noun what it describes, with article, such as {@code a VLAN}
   * @param fields its keys
   * @param markers keys by which it is told from a {@link MapOf} that may stand in its place
   */
  record Keys(String noun, List<Field> fields, Set<String> markers) implements Shape {
    @Override
    public String expected() {
      return fields.size() == 2 && fields.stream().noneMatch(Field::required)
          ? "a map with the keys "
              + Wording.quote(fields.get(0).name())
              + " and "
              + Wording.quote(fields.get(1).name())
          : "a map with keys such as " + Wording.quote(fields.get(0).name());
    }

    Optional<Field> field(String name) {
      return fields.stream().filter(field -> field.name().equals(name)).findFirst();
    }

    List<String> names() {
      return fields.stream().map(Field::name).toList();
    }
  }

  /**
   * One of several shapes.
   *
   * @param options the shapes
   */
  record Either(List<Shape> options) implements Shape {
    @Override
    public String expected() {
      return options.stream().map(Shape::expected).collect(Collectors.joining(" or "));
    }
  }

  /**
   * A key of a map.
   *
   * @param name the key
   * @param shape its value
   * @param required whether it must stand
   * @param about what it means, one sentence, shown by editors
   */
  record Field(String name, Shape shape, boolean required, String about) {}
}
