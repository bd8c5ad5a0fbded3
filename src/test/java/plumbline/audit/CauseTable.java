package plumbline.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads the tables of {@code testdata/pairs}: single causes as edits of a base site, and pairs of
 * causes; the head of {@code causes.txt} describes the form.
 */
final class CauseTable {
  private CauseTable() {}

  /**
   * A finding that a row expects.
   *
   * @param text severity, rule and place
   * @param words what its consequence must hold
   */
  record Expected(String text, List<String> words) {}

  /**
   * A row.
   *
   * @param name what it is called, or the names of two causes
   * @param edits what is done to the base site
   * @param expected the findings, and no other
   */
  record Row(String name, List<ConfigEdit> edits, List<Expected> expected) {}

  /** The single causes by name, in the order of the file. */
  static Map<String, Row> causes(Path file) throws IOException {
    Map<String, Row> rows = new LinkedHashMap<>();
    for (List<String> lines : blocks(file)) {
      String name = lines.get(0).replaceFirst("^cause ([^:]+): .*$", "$1");
      put(rows, new Row(name, edits(lines), expected(lines)));
    }
    return rows;
  }

  /** The pairs, each with the edits of both of its causes. */
  static Map<String, Row> pairs(Path file, Map<String, Row> causes) throws IOException {
    Map<String, Row> rows = new LinkedHashMap<>();
    for (List<String> lines : blocks(file)) {
      String name = lines.get(0).replaceFirst("^pair ", "");
      List<String> two = Arrays.asList(name.split(", "));
      if (two.size() != 2 || !causes.keySet().containsAll(two)) {
        throw new IllegalArgumentException("not two causes: " + name);
      }
      List<ConfigEdit> edits = new ArrayList<>();
      two.forEach(cause -> edits.addAll(causes.get(cause).edits()));
      put(rows, new Row(name, edits, expected(lines)));
    }
    return rows;
  }

  private static void put(Map<String, Row> rows, Row row) {
    if (row.expected().isEmpty() || rows.put(row.name(), row) != null) {
      throw new IllegalArgumentException("no finding, or given twice: " + row.name());
    }
  }

  /** A row starts at the margin, what belongs to it is indented. */
  private static List<List<String>> blocks(Path file) throws IOException {
    List<List<String>> blocks = new ArrayList<>();
    for (String line : Files.readAllLines(file)) {
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      if (!line.startsWith("  ")) {
        blocks.add(new ArrayList<>());
      }
      blocks.get(blocks.size() - 1).add(line.startsWith("  ") ? line.substring(2) : line);
    }
    return blocks;
  }

  private static List<Expected> expected(List<String> lines) {
    List<Expected> expected = new ArrayList<>();
    for (String line : lines) {
      if (line.startsWith("= ")) {
        expected.add(new Expected(line.substring(2), new ArrayList<>()));
      } else if (line.startsWith("> ")) {
        expected.get(expected.size() - 1).words().add(line.substring(2));
      }
    }
    return expected;
  }

  private static List<ConfigEdit> edits(List<String> lines) {
    List<ConfigEdit> edits = new ArrayList<>();
    String file = "north-sw1.cfg";
    String block = ConfigEdit.TOP;
    for (String line : lines.subList(1, lines.size())) {
      if (line.startsWith("in ")) {
        file = line.substring(3);
      } else if (line.startsWith("at ")) {
        block = line.substring(3);
      } else if (!line.startsWith("= ") && !line.startsWith("> ")) {
        edits.add(new ConfigEdit(file, block, line));
      }
    }
    return edits;
  }
}
