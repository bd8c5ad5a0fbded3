package plumbline.waiver;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import plumbline.text.Nearest;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;
import plumbline.yaml.PositionedTree;
import plumbline.yaml.Problem;

/** Reads a file of waivers, YAML or JSON: {@code plumbline-waivers/1}. */
public final class WaiverReader {
  static final String FORMAT = "plumbline-waivers/1";

  private static final int MOST_PROBLEMS = 200;

  private final List<Problem> problems = new ArrayList<>();
  private final Collection<String> rules;

  private WaiverReader(Collection<String> rules) {
    this.rules = List.copyOf(rules);
  }

  /**
   * Reads a file; all that is wrong is reported at once, nothing is thrown for what it holds.
   *
   * @param file as typed, for places
   * @param sha256 of its bytes
   * @param text decoded
   * @param rules the names that rules may have
   */
  public static WaiverReading read(
      String file, String sha256, String text, Collection<String> rules) {
    return new WaiverReader(rules).read(file, sha256, PositionedTree.read(file, text));
  }

  private WaiverReading read(String file, String sha256, PositionedTree tree) {
    // The reader of YAML names what it mostly reads.
    tree.problems()
        .forEach(one -> problem(one.at(), one.message().replace("a design", "a file of waivers")));
    List<WaiverEntry> entries = tree.root().map(root -> entries(root, file)).orElse(List.of());
    problems.sort(null);
    return problems.isEmpty()
        ? new WaiverReading(Optional.of(new WaiverFile(file, sha256, entries)), List.of())
        : new WaiverReading(
            Optional.empty(), problems.stream().distinct().limit(MOST_PROBLEMS).toList());
  }

  private List<WaiverEntry> entries(Node root, String file) {
    Position start = new Position(file, 1, 1);
    if (!(root instanceof Node.Entries top)) {
      problem(start, "this is no file of waivers; expected the key \"format\" and a colon");
      return List.of();
    }
    Optional<Node> format = top.get("format").map(Node.Entry::value);
    if (format.isEmpty()) {
      problem(
          start,
          "this is no file of waivers; expected the key \"format\" with " + Wording.quote(FORMAT));
      return List.of();
    }
    if (!(format.get() instanceof Node.Scalar word) || !word.text().equals(FORMAT)) {
      problem(
          format.get().at(),
          "unknown format"
              + (format.get() instanceof Node.Scalar other ? " " + Wording.quote(other.text()) : "")
              + "; expected "
              + Wording.quote(FORMAT));
      return List.of();
    }
    List<WaiverEntry> entries = new ArrayList<>();
    for (Node.Entry entry : top.entries()) {
      if (entry.key().equals("waivers")) {
        if (entry.value() instanceof Node.Items list) {
          list.items().forEach(item -> entry(item).ifPresent(entries::add));
        } else {
          problem(entry.value().at(), "\"waivers\" must be a list, with a dash before each waiver");
        }
      } else if (!entry.key().equals("format")) {
        unknownKey(entry, "a file of waivers", List.of("format", "waivers"));
      }
    }
    if (top.get("waivers").isEmpty()) {
      problem(start, "a file of waivers needs the key \"waivers\", a list");
    }
    return entries;
  }

  private Optional<WaiverEntry> entry(Node node) {
    if (!(node instanceof Node.Entries map)) {
      problem(node.at(), "a waiver must be a map with keys such as \"rule\"");
      return Optional.empty();
    }
    for (Node.Entry entry : map.entries()) {
      if (!EntryReader.KEYS.contains(entry.key())) {
        unknownKey(
            entry,
            "a waiver",
            EntryReader.KEYS.stream().filter(key -> map.get(key).isEmpty()).toList());
      }
    }
    return new EntryReader(map, rules, this::problem).read();
  }

  private void unknownKey(Node.Entry entry, String where, List<String> valid) {
    problem(
        entry.at(),
        "unknown key "
            + Wording.quote(entry.key())
            + " in "
            + where
            + "; "
            + Nearest.to(entry.key(), valid)
                .map(near -> "did you mean " + Wording.quote(near) + "?")
                .orElse("expected " + Wording.alternatives(valid)));
  }

  private void problem(Position at, String message) {
    problems.add(new Problem(at, message));
  }

  /** A day as files write it, if it is one. */
  static Optional<LocalDate> day(String text) {
    try {
      return text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")
          ? Optional.of(LocalDate.parse(text))
          : Optional.empty();
    } catch (java.time.format.DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
