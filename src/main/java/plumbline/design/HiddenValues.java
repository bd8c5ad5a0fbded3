package plumbline.design;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plumbline.text.Secrets;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;
import plumbline.yaml.Problem;

/**
 * What stands, however deep, under keys of a design that announce a secret: no problem quotes it.
 * Such a key has strayed into the design, or names something harmless; nobody can tell which.
 */
final class HiddenValues {
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");
  private static final Pattern MEANT = Pattern.compile("; did you mean \"[^\"]*\"\\?");
  private static final String CUT = "...";

  private final List<Block> blocks = new ArrayList<>();

  private final Set<String> vocabulary = new HashSet<>();

  private HiddenValues() {}

  /**
   * The text under one such key.
   *
   * @param from where the key stands
   * @param to where the block has ended
   * @param texts keys and values in it, as messages quote them, without quotes
   */
  private record Block(Position from, Position to, List<String> texts) {
    boolean holds(Position at) {
      return at.file().equals(from.file()) && from.compareTo(at) <= 0 && at.compareTo(to) < 0;
    }

    boolean tells(String quoted) {
      String words = withoutCut(quoted);
      return texts.stream().anyMatch(text -> text.contains(words) || words.contains(text));
    }
  }

  /**
   * Finds them in the trees of a design.
   *
   * @param shape the shape of a design, whose own words are no secret
   */
  static HiddenValues of(List<Node> roots, Shape shape) {
    HiddenValues hidden = new HiddenValues();
    hidden.learn(shape);
    roots.forEach(
        root ->
            hidden.find(
                root, new Position(root.at().file(), Integer.MAX_VALUE, Integer.MAX_VALUE)));
    return hidden;
  }

  private void learn(Shape shape) {
    if (shape instanceof Shape.Words words) {
      vocabulary.addAll(words.words());
    } else if (shape instanceof Shape.ListOf list) {
      learn(list.item());
    } else if (shape instanceof Shape.MapOf map) {
      learn(map.value());
    } else if (shape instanceof Shape.Either either) {
      either.options().forEach(this::learn);
    } else if (shape instanceof Shape.Keys keys) {
      vocabulary.addAll(keys.names());
      keys.fields().forEach(field -> learn(field.shape()));
    }
  }

  private void find(Node node, Position end) {
    if (node instanceof Node.Items items) {
      for (int i = 0; i < items.items().size(); i++) {
        boolean last = i + 1 == items.items().size();
        find(items.items().get(i), last ? end : items.items().get(i + 1).at());
      }
    } else if (node instanceof Node.Entries entries) {
      for (int i = 0; i < entries.entries().size(); i++) {
        Node.Entry entry = entries.entries().get(i);
        boolean last = i + 1 == entries.entries().size();
        Position to = last ? end : entries.entries().get(i + 1).at();
        if (Secrets.announces(entry.key())) {
          List<String> texts = new ArrayList<>();
          collect(entry.value(), texts);
          blocks.add(new Block(entry.at(), to, List.copyOf(texts)));
        } else {
          find(entry.value(), to);
        }
      }
    }
  }

  private static void collect(Node node, List<String> texts) {
    if (node instanceof Node.Scalar scalar) {
      add(scalar.text(), texts);
    } else if (node instanceof Node.Items items) {
      items.items().forEach(item -> collect(item, texts));
    } else if (node instanceof Node.Entries entries) {
      for (Node.Entry entry : entries.entries()) {
        add(entry.key(), texts);
        collect(entry.value(), texts);
      }
    }
  }

  private static void add(String text, List<String> texts) {
    String quote = Wording.quote(text);
    String words = withoutCut(quote.substring(1, quote.length() - 1));
    if (!words.isBlank()) {
      texts.add(words);
    }
  }

  private static String withoutCut(String words) {
    return words.endsWith(CUT) ? words.substring(0, words.length() - CUT.length()) : words;
  }

  /** The same problems, none of which quotes what is hidden. */
  List<Problem> masked(List<Problem> problems) {
    return blocks.isEmpty() ? problems : problems.stream().map(this::masked).toList();
  }

  private Problem masked(Problem problem) {
    String message = problem.message();
    for (Block block : blocks) {
      if (block.holds(problem.at())) {
        message = masked(message, block);
      }
    }
    return new Problem(problem.at(), message);
  }

  /** What was likely meant tells of the value as well. */
  private String masked(String message, Block block) {
    String shown =
        QUOTED
            .matcher(message)
            .replaceAll(
                quoted ->
                    Matcher.quoteReplacement(
                        !vocabulary.contains(quoted.group(1)) && block.tells(quoted.group(1))
                            ? Secrets.MASK
                            : quoted.group()));
    return shown.equals(message) ? message : MEANT.matcher(shown).replaceAll("");
  }
}
