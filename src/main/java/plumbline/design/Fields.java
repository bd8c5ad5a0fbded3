package plumbline.design;

import java.util.List;
import java.util.Optional;
import plumbline.yaml.Node;

/**
 * The values of a map that have their shape; those that do not are already reported and are treated
 * as if they were not there.
 */
record Fields(Node.Entries map, ShapeCheck shapes) {
  /** The fields of a node; empty when it is no map of the right shape. */
  static Optional<Fields> of(Node node, ShapeCheck shapes) {
    return node instanceof Node.Entries entries && shapes.fits(node)
        ? Optional.of(new Fields(entries, shapes))
        : Optional.empty();
  }

  Optional<Node> node(String key) {
    return map.get(key).map(Node.Entry::value).filter(shapes::fits);
  }

  Optional<Node.Scalar> scalar(String key) {
    return node(key).flatMap(Fields::asScalar);
  }

  Optional<Wanted<String>> text(String key) {
    return scalar(key).map(scalar -> new Wanted<>(scalar.text(), scalar.at()));
  }

  Optional<Wanted<Integer>> whole(String key) {
    return scalar(key).map(scalar -> new Wanted<>(Integer.valueOf(scalar.text()), scalar.at()));
  }

  Optional<Wanted<Boolean>> truth(String key) {
    return scalar(key)
        .map(scalar -> new Wanted<>(scalar.text().equalsIgnoreCase("true"), scalar.at()));
  }

  boolean isTrue(String key) {
    return truth(key).map(Wanted::value).orElse(false);
  }

  /** The entries of a list that have their shape; none when there is no list. */
  List<Node> items(String key) {
    return node(key).map(this::itemsOf).orElse(List.of());
  }

  List<Node> itemsOf(Node node) {
    return node instanceof Node.Items items
        ? items.items().stream().filter(shapes::fits).toList()
        : List.of();
  }

  /** The single values of a list. */
  List<Node.Scalar> scalars(String key) {
    return items(key).stream().flatMap(node -> asScalar(node).stream()).toList();
  }

  Optional<Fields> fields(String key) {
    return node(key).flatMap(node -> of(node, shapes));
  }

  /** The entries of a map whose values have their shape; none when there is no map. */
  List<Node.Entry> entries(String key) {
    return node(key).map(this::entriesOf).orElse(List.of());
  }

  List<Node.Entry> entriesOf(Node node) {
    return node instanceof Node.Entries entries
        ? entries.entries().stream().filter(entry -> shapes.fits(entry.value())).toList()
        : List.of();
  }

  static Optional<Node.Scalar> asScalar(Node node) {
    return node instanceof Node.Scalar scalar ? Optional.of(scalar) : Optional.empty();
  }
}
