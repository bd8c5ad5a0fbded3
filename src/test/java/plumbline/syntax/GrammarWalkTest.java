package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Meaning;

/** Statements made by walking the grammar at random: forms that no table of samples thought of. */
class GrammarWalkTest {
  private static final StatementParser PARSER = new StatementParser();
  private static final Keywords KEYWORDS = new Keywords();
  private static final List<Context> READ =
      List.of(Context.TOP, Context.PORT, Context.VLAN, Context.VLAN_DATABASE, Context.MST);

  private static final List<Operand> OPERANDS =
      List.of(
          new Operand(SwitchConfigLexer.NUMBER, "7"),
          new Operand(SwitchConfigLexer.COMMA, ","),
          new Operand(SwitchConfigLexer.DASH, "-"),
          new Operand(SwitchConfigLexer.ADDRESS4, "192.0.2.7"),
          new Operand(SwitchConfigLexer.ADDRESS6, "2001:db8::7"),
          new Operand(SwitchConfigLexer.WORD, "Gi1/0/7"));

  private static final int LONGEST = 60;

  /** A spelling of an operand of a type. */
  private record Operand(int type, String text) {}

  @Property(tries = 3000)
  void a_walked_statement_means_the_same_printed_in_capitals_and_with_comments(@ForAll long seed) {
    Random random = new Random(seed);
    Context context = READ.get(random.nextInt(READ.size()));
    List<String> words = walk(context, random);
    String text = String.join(" ", words);
    Meaning meaning = PARSER.read(context, text);
    Meaning printed = PARSER.read(context, PARSER.print(meaning));
    assertThat(printed.command()).as(text).isEqualTo(meaning.command());
    assertThat(printed.form()).as(text).isEqualTo(meaning.form());
    String commented = text + "  ! next";
    if (!hasFreeText(words)) {
      assertThat(PARSER.read(context, commented)).as(commented).isEqualTo(meaning);
    }
    String capitals = capitals(context, words);
    assertThat(PARSER.read(context, capitals).command().toString())
        .as(capitals)
        .isEqualToIgnoringCase(meaning.command().toString());
  }

  /** The statement with its leading keywords in capitals: later words may be names. */
  private static String capitals(Context context, List<String> words) {
    List<String> spelled = new ArrayList<>(words);
    Keywords.Node node = KEYWORDS.start(context);
    for (int i = 0; i < spelled.size() && node.keywords().contains(words.get(i)); i++) {
      spelled.set(i, words.get(i).toUpperCase(Locale.ROOT));
      node = node.after(node.keyword(words.get(i)));
    }
    return String.join(" ", spelled);
  }

  @Property(tries = 2000)
  void a_walked_statement_is_unknown_only_for_an_operand_that_is_missing_or_wrong(
      @ForAll long seed) {
    Random random = new Random(seed);
    Context context = READ.get(random.nextInt(READ.size()));
    String text = "no " + String.join(" ", dropPrefix(walk(context, random)));
    Meaning meaning = PARSER.read(context, text);
    if (meaning.command() instanceof Command.Unknown unknown) {
      // In this form no operand is needed, and those of the walk are in range: what remains is
      // the end of a block, which nobody can undo, and words that name no port or speed.
      assertThat(text)
          .as(unknown.toString())
          .containsAnyOf("exit", "quit", "end", "speed", "interface");
    }
  }

  private static List<String> dropPrefix(List<String> words) {
    String first = words.get(0).toLowerCase(Locale.ROOT);
    return first.equals("no") || first.equals("default") ? words.subList(1, words.size()) : words;
  }

  private static boolean hasFreeText(List<String> words) {
    return words.stream()
        .anyMatch(Set.of("description", "name", "hostname", "switchname", "domain")::contains);
  }

  private static List<String> walk(Context context, Random random) {
    List<String> words = new ArrayList<>();
    Keywords.Node node = KEYWORDS.start(context);
    while (words.size() < LONGEST) {
      if (node.canEnd() && random.nextInt(3) == 0) {
        break;
      }
      List<String> keywords = node.keywords().stream().sorted().toList();
      List<Operand> operands = new ArrayList<>();
      for (Operand operand : OPERANDS) {
        if (node.takes(operand.type())) {
          operands.add(operand);
        }
      }
      int choices = keywords.size() + operands.size();
      if (choices == 0) {
        break;
      }
      int choice = random.nextInt(choices);
      int type;
      if (choice < keywords.size()) {
        String word = keywords.get(choice);
        type = node.keyword(word);
        words.add(word);
      } else {
        Operand operand = operands.get(choice - keywords.size());
        type = operand.type();
        words.add(operand.text());
      }
      node = node.after(type);
      if (KEYWORDS.opensFreeText(type) && node.takes(SwitchConfigLexer.TEXT)) {
        if (random.nextBoolean() || !node.canEnd()) {
          words.add("free text");
          node = node.after(SwitchConfigLexer.TEXT);
        } else {
          break;
        }
      }
    }
    return words.isEmpty() ? List.of("exit") : words;
  }
}
