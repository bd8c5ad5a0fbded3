package plumbline.design;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import plumbline.design.Shape.Either;
import plumbline.design.Shape.Keys;
import plumbline.design.Shape.ListOf;
import plumbline.design.Shape.MapOf;
import plumbline.text.Nearest;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/**
 * Compares a file's tree with the shape of a design, and remembers the nodes that do not fit, so
 * that what is built on the tree can pass over them without a second problem for the same fault.
 */
final class ShapeCheck {
  private final Problems problems;
  private final Set<Node> misfits = Collections.newSetFromMap(new IdentityHashMap<>());

  ShapeCheck(Problems problems) {
    this.problems = problems;
  }

  /** Says whether this very node, its inner ones aside, has its shape. */
  boolean fits(Node node) {
    return !misfits.contains(node);
  }

  /**
   * Compares a value with a shape.
   *
   * @param node the value
   * @param shape what it must look like
   * @param label the value's name for messages, such as {@code "id"} or {@code VLAN "office"}
   * @param header where to report something that is absent from the value
   */
  void check(Node node, Shape shape, String label, Position header) {
    if (shape instanceof Either either) {
      checkEither(node, either, label, header);
    } else if (node instanceof Node.Scalar scalar) {
      ScalarCheck.fault(scalar, shape, label).ifPresent(message -> misfit(node, message));
    } else if (node instanceof Node.Items items && shape instanceof ListOf list) {
      checkList(items, list, label, header);
    } else if (node instanceof Node.Entries entries && shape instanceof Keys keys) {
      checkKeys(entries, keys, header);
    } else if (node instanceof Node.Entries entries && shape instanceof MapOf map) {
      checkMap(entries, map);
    } else {
      misfit(node, must(label, shape, node));
    }
  }

  private void checkEither(Node node, Either either, String label, Position header) {
    List<Shape> candidates =
        either.options().stream().filter(option -> isOfKind(node, option)).toList();
    boolean mapsToo = either.options().stream().anyMatch(Keys.class::isInstance);
    if (candidates.size() == 1 && !(mapsToo && candidates.get(0) instanceof Shape.Words)) {
      check(node, candidates.get(0), label, header);
    } else if (node instanceof Node.Scalar scalar) {
      boolean anyFits =
          candidates.stream().anyMatch(one -> ScalarCheck.fault(scalar, one, label).isEmpty());
      if (!anyFits) {
        misfit(node, ScalarCheck.fault(scalar, either, label).orElseThrow());
      }
    } else {
      misfit(node, must(label, either, node));
    }
  }

  /** Says whether a node is a scalar, list or map as the option is. */
  private static boolean isOfKind(Node node, Shape option) {
    if (option instanceof Either either) {
      return either.options().stream().anyMatch(inner -> isOfKind(node, inner));
    }
    if (option instanceof ListOf) {
      return node instanceof Node.Items;
    }
    if (option instanceof Keys keys) {
      return node instanceof Node.Entries entries
          && (keys.markers().isEmpty() || has(entries, keys.markers()));
    }
    if (option instanceof MapOf map) {
      return node instanceof Node.Entries entries && !has(entries, map.markers());
    }
    return node instanceof Node.Scalar;
  }

  private static boolean has(Node.Entries entries, Set<String> markers) {
    return entries.entries().stream().anyMatch(entry -> markers.contains(entry.key()));
  }

  private void checkList(Node.Items items, ListOf list, String label, Position header) {
    int size = items.items().size();
    if (size < list.min() || size > list.max()) {
      misfit(
          items,
          label
              + " must be "
              + list.expected()
              + ", found "
              + (size == 0 ? "an empty list" : "a list of " + size));
      return;
    }
    for (Node item : items.items()) {
      Position at = item instanceof Node.Scalar ? header : item.at();
      check(item, list.item(), "an entry of " + label, at);
    }
  }

  private void checkMap(Node.Entries entries, MapOf map) {
    for (Node.Entry entry : entries.entries()) {
      if (!map.key().pattern().matcher(entry.key()).matches()) {
        problems.add(
            entry.at(), "key " + Wording.quote(entry.key()) + " must be " + map.key().expected());
      }
      check(entry.value(), map.value(), map.noun() + " " + Wording.quote(entry.key()), entry.at());
    }
  }

  private void checkKeys(Node.Entries entries, Keys keys, Position header) {
    Set<String> meant = new TreeSet<>();
    List<String> open = keys.names().stream().filter(name -> entries.get(name).isEmpty()).toList();
    for (Node.Entry entry : entries.entries()) {
      Optional<Shape.Field> field = keys.field(entry.key());
      if (field.isPresent()) {
        check(entry.value(), field.get().shape(), '"' + entry.key() + '"', entry.at());
      } else {
        nearest(entry.key(), keys, open).filter(open::contains).ifPresent(meant::add);
        problems.add(entry.at(), unknownKey(entry.key(), keys, open, entries));
      }
    }
    for (Shape.Field field : keys.fields()) {
      // A key that is only misspelled is not missing as well.
      if (field.required() && open.contains(field.name()) && !meant.contains(field.name())) {
        problems.add(
            header,
            keys.noun()
                + " needs the key "
                + Wording.quote(field.name())
                + (field.shape() instanceof Shape.Words ? " with " : ", ")
                + field.shape().expected());
      }
    }
  }

  /** The key that a wrong one was meant to be, rather one that is not given yet. */
  private static Optional<String> nearest(String key, Keys keys, List<String> open) {
    Set<String> all = new LinkedHashSet<>(open);
    all.addAll(keys.names());
    return Nearest.to(key, all);
  }

  private static String unknownKey(String key, Keys keys, List<String> open, Node.Entries entries) {
    String where = "unknown key " + Wording.quote(key) + " in " + keys.noun() + "; ";
    Optional<Node.Entry> given =
        nearest(key, keys, open)
            .flatMap(
                name ->
                    entries.entries().stream().filter(one -> one.key().equals(name)).findFirst());
    return where
        + given
            .map(one -> Wording.quote(one.key()) + " is given already, at " + one.at())
            .orElseGet(
                () -> Wording.remedy(key, open.isEmpty() ? keys.names() : open, "expected no key"));
  }

  private void misfit(Node node, String message) {
    misfits.add(node);
    problems.add(node.at(), message);
  }

  private static String must(String label, Shape shape, Node node) {
    String found =
        node instanceof Node.Items
            ? "a list"
            : node instanceof Node.Entries ? "a map" : ScalarCheck.found((Node.Scalar) node, label);
    return label + " must be " + shape.expected() + ", found " + found;
  }
}
