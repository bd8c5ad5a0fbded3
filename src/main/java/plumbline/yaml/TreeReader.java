package plumbline.yaml;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.LoaderOptions;
import plumbline.text.Wording;

/**
 * Builds the tree from the token stream. The stream is read instead of bound to classes because
 * only it shows duplicate keys, anchors, aliases, tags, further documents and numbers as written.
 */
final class TreeReader {
  /** Characters that a design file may have. */
  static final int MAX_CHARACTERS = 64 * 1024 * 1024;

  /** Keys and values that a design file may have: far above any site, low enough for memory. */
  static final int MAX_NODES = 2_000_000;

  /** Lists and maps inside each other; a design needs seven. */
  static final int MAX_DEPTH = 32;

  /** Characters of a YAML file without a blank between them. */
  static final int MAX_RUN = 65_536;

  private static final int MAX_PROBLEMS = 200;
  private static final Pattern WHOLE = Pattern.compile("-?(0|[1-9][0-9]{0,17})");
  private static final Pattern DECIMAL = Pattern.compile("-?(0|[1-9][0-9]{0,17})\\.[0-9]{1,17}");
  private static final YAMLFactory YAML = yamlFactory();
  private static final JsonFactory JSON =
      JsonFactory.builder().streamReadConstraints(constraints()).build();

  private final String file;
  private final JsonParser parser;
  private final SourceLines source;
  private final boolean json;
  private final References references = new References();
  private final List<Problem> problems = new ArrayList<>();
  private int nodes;

  private TreeReader(String file, JsonParser parser, SourceLines source, boolean json) {
    this.file = file;
    this.parser = parser;
    this.source = source;
    this.json = json;
  }

  private static YAMLFactory yamlFactory() {
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(MAX_CHARACTERS);
    return YAMLFactory.builder()
        .loaderOptions(options)
        .streamReadConstraints(constraints())
        .build();
  }

  private static StreamReadConstraints constraints() {
    return StreamReadConstraints.builder()
        .maxNestingDepth(2 * MAX_DEPTH)
        .maxStringLength(MAX_CHARACTERS)
        .maxNameLength(MAX_CHARACTERS)
        .maxNumberLength(MAX_CHARACTERS)
        .build();
  }

  static PositionedTree read(String file, String decoded) {
    if (decoded.length() > MAX_CHARACTERS) {
      return broken(file, "the file is larger than 64 Mi characters; expected a design");
    }
    String text = decoded.startsWith("\uFEFF") ? decoded.substring(1) : decoded;
    SourceLines source = new SourceLines(file, text);
    boolean json = file.toLowerCase(Locale.ROOT).endsWith(".json");
    Optional<Problem> refused = source.firstForbidden();
    if (refused.isEmpty() && !json) {
      refused = source.firstEndless(MAX_RUN);
    }
    if (refused.isPresent()) {
      return new PositionedTree(Optional.empty(), List.of(refused.get()));
    }
    try (JsonParser parser = (json ? JSON : YAML).createParser(text)) {
      return new TreeReader(file, parser, source, json).read();
    } catch (IOException e) {
      // The parser reads from memory: only a fault of this program gets here.
      throw new UncheckedIOException(e);
    }
  }

  private static PositionedTree broken(String file, String message) {
    return new PositionedTree(
        Optional.empty(), List.of(new Problem(new Position(file, 1, 1), message)));
  }

  private PositionedTree read() throws IOException {
    try {
      JsonToken first = parser.nextToken();
      if (first == null) {
        return broken(file, "the file holds nothing; expected a design");
      }
      Node root = node(first, 1);
      if (parser.nextToken() != null) {
        problem(
            place(),
            json
                ? "a second value starts here; expected the end of the file"
                : "a second document starts here; expected one document in a file");
      }
      if (references.problem().isEmpty()) {
        problems.sort(null);
        return new PositionedTree(Optional.of(root), problems);
      }
    } catch (JsonProcessingException e) {
      problem(SyntaxFault.place(file, e), SyntaxFault.message(e, json));
    } catch (GivenUp e) {
      problem(e.at, e.getMessage());
    }
    references.problem().ifPresent(problems::add);
    problems.sort(null);
    return new PositionedTree(Optional.empty(), problems);
  }

  private Node node(JsonToken token, int depth) throws IOException {
    Position at = place();
    if (depth > MAX_DEPTH) {
      throw new GivenUp(
          at, "lists and maps stand more than " + MAX_DEPTH + " deep here; expected a design");
    }
    count(at);
    OptionalInt mark = mark(at);
    return switch (token) {
      case START_OBJECT -> entries(at, depth);
      case START_ARRAY -> {
        List<Node> items = new ArrayList<>();
        for (JsonToken next = next(at); next != JsonToken.END_ARRAY; next = next(at)) {
          items.add(node(next, depth + 1));
        }
        yield new Node.Items(items, at);
      }
      default -> scalar(token, at, mark);
    };
  }

  private Node entries(Position at, int depth) throws IOException {
    Map<String, Node.Entry> entries = new HashMap<>();
    List<Node.Entry> order = new ArrayList<>();
    for (JsonToken next = next(at); next != JsonToken.END_OBJECT; next = next(at)) {
      Position keyAt = place();
      String key = parser.currentName();
      count(keyAt);
      mark(keyAt);
      Node.Entry entry = new Node.Entry(key, keyAt, node(next(keyAt), depth + 1));
      Node.Entry earlier = entries.putIfAbsent(key, entry);
      if (earlier == null) {
        order.add(entry);
      } else {
        problem(keyAt, "key " + Wording.quote(key) + " is given twice; first at " + earlier.at());
      }
    }
    return new Node.Entries(order, at);
  }

  private JsonToken next(Position at) throws IOException {
    JsonToken token = parser.nextToken();
    if (token == null) {
      throw new GivenUp(at, "the file ends inside this list or map");
    }
    return token;
  }

  private void count(Position at) {
    if (++nodes > MAX_NODES) {
      throw new GivenUp(at, "the file holds more than " + MAX_NODES + " keys and values");
    }
  }

  /** Notes an anchor, alias or tag at a place and returns the character there. */
  private OptionalInt mark(Position at) throws IOException {
    OptionalInt character = source.characterAt(at.line(), at.column());
    if (json || character.isEmpty()) {
      return character;
    }
    // No plain text starts with these; the stream itself hides anchors of scalars and keys.
    switch (character.getAsInt()) {
      case '&', '*' -> references.add(at);
      case '!' -> problem(at, "a tag stands here; expected the value without a tag");
      default -> {}
    }
    return character;
  }

  private Node.Scalar scalar(JsonToken token, Position at, OptionalInt mark) throws IOException {
    String text = parser.getText();
    boolean quoted = mark.isPresent() && (mark.getAsInt() == '"' || mark.getAsInt() == '\'');
    Node.Kind kind =
        switch (token) {
          case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> numberKind(text);
          // YAML 1.1 makes truths of "yes", "off" and the like, YAML 1.2 does not: they are words.
          case VALUE_TRUE, VALUE_FALSE ->
              text.equalsIgnoreCase("true") || text.equalsIgnoreCase("false")
                  ? Node.Kind.TRUTH
                  : Node.Kind.TEXT;
          case VALUE_NULL -> Node.Kind.NOTHING;
          default ->
              text.isEmpty() && mark.stream().noneMatch(c -> "\"'|>".indexOf(c) >= 0)
                  ? Node.Kind.NOTHING
                  : Node.Kind.TEXT;
        };
    return new Node.Scalar(kind, text == null ? "" : text, quoted, at);
  }

  private static Node.Kind numberKind(String text) {
    if (WHOLE.matcher(text).matches()) {
      return Node.Kind.INTEGER;
    }
    return DECIMAL.matcher(text).matches() ? Node.Kind.DECIMAL : Node.Kind.ODD_NUMBER;
  }

  private Position place() {
    JsonLocation location = parser.currentTokenLocation();
    return new Position(
        file, Math.max(1, location.getLineNr()), Math.max(1, location.getColumnNr()));
  }

  private void problem(Position at, String message) {
    if (problems.size() < MAX_PROBLEMS) {
      problems.add(new Problem(at, message));
    }
  }

  /** Ends the reading of a file that goes beyond all bounds. */
  private static final class GivenUp extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Position at;

    GivenUp(Position at, String message) {
      super(message, null, false, false);
      this.at = at;
    }
  }

  /** Anchors and aliases of one file: one problem, however many there are. */
  private static final class References {
    private Optional<Position> first = Optional.empty();
    private int count;

    void add(Position at) {
      if (first.isEmpty()) {
        first = Optional.of(at);
      }
      count++;
    }

    Optional<Problem> problem() {
      String others = count > 1 ? " (" + (count - 1) + " more in this file)" : "";
      return first.map(
          at ->
              new Problem(
                  at,
                  "anchors and aliases are not read in a design; write the value out where it is"
                      + " needed, or use \"like\" in a role"
                      + others));
    }
  }
}
