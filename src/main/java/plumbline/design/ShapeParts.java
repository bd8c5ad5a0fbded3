package plumbline.design;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import plumbline.design.Shape.Either;
import plumbline.design.Shape.Field;
import plumbline.design.Shape.Keys;
import plumbline.design.Shape.ListOf;
import plumbline.design.Shape.MapOf;
import plumbline.design.Shape.Text;
import plumbline.design.Shape.Truth;
import plumbline.design.Shape.Whole;
import plumbline.design.Shape.Words;
import plumbline.vlan.VlanId;

/** Shapes that several keys share, and short ways to write a shape down. */
final class ShapeParts {
  // The patterns stand in the schema too: only what Java and ECMA-262 read alike.
  private static final String WORD = "[^\\u0000-\\u0020\\u007f-\\u00a0]";
  private static final String CHARACTER = "[^\\u0000-\\u001f\\u007f-\\u009f]";

  static final Truth TRUTH = new Truth();
  static final Text NAME = text("a name without blanks", WORD + "{1,100}", true);
  static final Text VLAN = nameOf("VLAN");
  static final Text ROLE = nameOf("role");
  static final Text SWITCH = nameOf("switch");
  static final Text HOST_PORT = nameOf("port of this host");
  static final Text RULE = nameOf("rule");
  static final Text LINE = text("one line of text", CHARACTER + "*" + WORD + CHARACTER + "*", true);
  static final Text PORT =
      text(
          "a port such as Gi1/0/1 or a range such as Gi1/0/1-4",
          CHARACTER + "*" + WORD + CHARACTER + "*",
          true);
  static final Text CABLED_PORT =
      text(
          "a switch and a port such as \"north-sw1 Gi1/0/1\"",
          WORD + "{1,100} +" + WORD + CHARACTER + "*",
          false);
  static final Text END =
      text(
          "a switch and a port such as \"north-sw1 Gi1/0/1\", or \"outside\"",
          "outside|" + WORD + "{1,100} +" + WORD + CHARACTER + "*",
          false);
  static final Text SERVICE_MEMBER =
      text(
          "a host and a VLAN such as \"vmhost-n1 voice-a\"",
          WORD + "{1,100} +" + WORD + "{1,100}",
          false);
  static final Text REGION_NAME = text("a name of up to 32 characters", "[!-~]{1,32}", true);
  static final Text BRIDGE_ADDRESS =
      text(
          "an address such as 00:00:5e:00:53:01",
          "[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}|[0-9A-Fa-f]{4}(\\.[0-9A-Fa-f]{4}){2}",
          false);
  static final Text ADDRESS =
      text(
          "an address such as 192.0.2.1 or 2001:db8::1",
          "((25[0-5]|2[0-4][0-9]|1?[0-9]{1,2})(\\.(?!$)|$)){4}"
              + "|(?=.*:)[0-9A-Fa-f]{0,4}(:[0-9A-Fa-f]{0,4}){2,7}",
          false);
  static final Shape VLAN_RANGE =
      either(
          new Whole(VlanId.MIN, VlanId.MAX),
          text("a range of VLANs such as 500-599", "[0-9]{1,4} *- *[0-9]{1,4}", false));

  /** One cable of a bundle: its ports at both ends, or at the one end that the design has. */
  static final Shape MEMBER = either(PORT, new ListOf(PORT, 1, 2));

  private ShapeParts() {}

  private static Text nameOf(String noun) {
    return new Text("the name of a " + noun, NAME.pattern(), true);
  }

  private static Text text(String expected, String pattern, boolean numbers) {
    return new Text(expected, Pattern.compile("^(" + pattern + ")$"), numbers);
  }

  static Field field(String name, Shape shape, String about) {
    return new Field(name, shape, false, about);
  }

  static Field need(String name, Shape shape, String about) {
    return new Field(name, shape, true, about);
  }

  static Keys keys(String noun, Field... fields) {
    return new Keys(noun, List.of(fields), Set.of());
  }

  /** A map with some keys of its own and further ones. */
  static Keys keys(String noun, List<Field> own, List<Field> further) {
    return new Keys(noun, Stream.concat(own.stream(), further.stream()).toList(), Set.of());
  }

  static MapOf map(String noun, Shape value) {
    return new MapOf(noun, NAME, value, Set.of());
  }

  /** A map from MST instances (802.1Q: MSTID 1 to 4094) to values. */
  static MapOf instances(Shape value) {
    Text number =
        text(
            "an instance from 1 to 4094",
            "[1-9][0-9]{0,2}|[1-3][0-9]{3}|40[0-8][0-9]|409[0-4]",
            true);
    return new MapOf("instance", number, value, Set.of());
  }

  static ListOf list(Shape item) {
    return listOf(item, 0);
  }

  static ListOf listOf(Shape item, int min) {
    return new ListOf(item, min, Integer.MAX_VALUE);
  }

  static Words words(String... words) {
    return words(List.of(words));
  }

  static Words words(List<String> words) {
    return new Words(words);
  }

  static Either either(Shape... options) {
    return new Either(List.of(options));
  }
}
