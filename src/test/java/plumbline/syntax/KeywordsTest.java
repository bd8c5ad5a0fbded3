package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.StringLength;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.NotSetTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.junit.jupiter.api.Test;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.statement.PortCommand;
import plumbline.statement.SwitchText;
import plumbline.syntax.Samples.Sample;

class KeywordsTest {
  private static final StatementParser PARSER = new StatementParser();
  private static final Keywords KEYWORDS = new Keywords();
  private static final List<Context> READ =
      List.of(Context.TOP, Context.PORT, Context.VLAN, Context.VLAN_DATABASE, Context.MST);

  @Test
  void samples_cut_to_their_shortest_prefixes_mean_the_same() {
    int cut = 0;
    for (Sample sample : Samples.all()) {
      Meaning meaning = PARSER.read(sample.context(), sample.text());
      if (sample.context() == Context.OTHER || meaning.command() instanceof Command.Unknown) {
        continue;
      }
      String abbreviated = abbreviate(sample);
      Meaning again = PARSER.read(sample.context(), abbreviated);
      assertThat(again.form()).as(abbreviated).isEqualTo(meaning.form());
      assertThat(again.command()).as(abbreviated).isEqualTo(meaning.command());
      cut += sample.text().length() - abbreviated.length();
    }
    assertThat(cut).isGreaterThan(2000);
  }

  /** The statement with every keyword cut to the shortest prefix that its place allows. */
  private static String abbreviate(Sample sample) {
    Expander expander = new Expander(KEYWORDS);
    Expander.Expansion full = expander.expand(sample.context(), Expander.clean(sample.text()));
    Keywords.Node node = KEYWORDS.start(sample.context());
    List<String> words = new ArrayList<>();
    List<String> source = List.of(full.text().split(" ", -1));
    for (int i = 0; i < source.size(); i++) {
      String word = source.get(i);
      int type = node.keyword(word.toLowerCase(Locale.ROOT));
      if (type == Token.INVALID_TYPE || !node.keywords().contains(word)) {
        words.addAll(source.subList(i, source.size()));
        break;
      }
      words.add(shortest(node, word, type));
      node = node.after(type);
      if (KEYWORDS.opensFreeText(type)) {
        words.addAll(source.subList(i + 1, source.size()));
        break;
      }
    }
    return String.join(" ", words);
  }

  private static String shortest(Keywords.Node node, String word, int type) {
    for (int length = 1; length < word.length(); length++) {
      if (node.keyword(word.substring(0, length)) == type) {
        return word.substring(0, length);
      }
    }
    return word;
  }

  @Test
  void abbreviations_of_the_trade_are_known() {
    // Common practice, no source.
    same(Context.PORT, "sw acc vl 10", "switchport access vlan 10");
    same(Context.PORT, "sw m a", "switchport mode access");
    same(Context.PORT, "sw mo tr", "switchport mode trunk");
    same(Context.PORT, "sw tr al vl add 5", "switchport trunk allowed vlan add 5");
    same(Context.PORT, "sw tr nat vl 5", "switchport trunk native vlan 5");
    same(Context.PORT, "sw tr enc dot1q", "switchport trunk encapsulation dot1q");
    same(Context.PORT, "sw voi vl 5", "switchport voice vlan 5");
    same(Context.PORT, "sw none", "switchport nonegotiate");
    same(Context.PORT, "no sw", "no switchport");
    same(Context.PORT, "shut", "shutdown");
    same(Context.PORT, "no shut", "no shutdown");
    same(Context.PORT, "no sh", "no shutdown");
    same(Context.PORT, "ip add 192.0.2.1 255.255.255.0", "ip address 192.0.2.1 255.255.255.0");
    same(Context.PORT, "desc uplink", "description uplink");
    same(Context.PORT, "span portf", "spanning-tree portfast");
    same(Context.PORT, "span bpdug en", "spanning-tree bpduguard enable");
    same(Context.PORT, "channel-g 1 mod act", "channel-group 1 mode active");
    same(Context.PORT, "encap dot 10", "encapsulation dot1q 10");
    same(Context.PORT, "dup full", "duplex full");
    same(Context.TOP, "int gi1/0/1", "interface gi1/0/1");
    same(Context.TOP, "int ran gi1/0/1-2", "interface range gi1/0/1-2");
    same(Context.TOP, "def int gi1/0/1", "default interface gi1/0/1");
    same(Context.TOP, "host A", "hostname A");
    same(Context.TOP, "vl 10", "vlan 10");
    same(Context.TOP, "span mode rap", "spanning-tree mode rapid-pvst");
    same(Context.TOP, "span vl 10 pri 4096", "spanning-tree vlan 10 priority 4096");
    same(Context.TOP, "vtp mo tr", "vtp mode transparent");
    same(Context.TOP, "ip routi", "ip routing");
    same(Context.TOP, "conf t", "configure terminal");
    same(Context.TOP, "wr", "write");
    same(Context.VLAN, "na X", "name X");
    same(Context.MST, "inst 1 vl 10", "instance 1 vlan 10");
  }

  private static void same(Context context, String spelled, String full) {
    Meaning meaning = PARSER.read(context, full);
    assertThat(meaning.command()).as(full).isNotInstanceOf(Command.Unknown.class);
    assertThat(PARSER.read(context, spelled).command()).as(spelled).isEqualTo(meaning.command());
    assertThat(PARSER.read(context, spelled).form()).as(spelled).isEqualTo(meaning.form());
  }

  @Test
  void an_abbreviation_of_two_words_is_unknown_and_says_of_which() {
    assertThat(unknown("sp 100").variants())
        .containsExactly(List.of(), List.of("spanning-tree"), List.of("speed"));
    assertThat(unknown("no chan 1 mo act").candidates())
        .containsExactly("channel-group", "channel-protocol");
    assertThat(unknown("switchport a").variants())
        .containsExactly(
            List.of("switchport"),
            List.of("switchport", "acceptable-frame-type"),
            List.of("switchport", "access"),
            List.of("switchport", "autostate"));
    assertThat(unknown("frobnicate").candidates()).isEmpty();
    assertThat(unknown("switchport access vlan 0").candidates()).isEmpty();
    for (String text : List.of("sp 100", "no chan 1", "switchport a", "vrr 1", "switchport t")) {
      Meaning meaning = PARSER.read(Context.PORT, text);
      assertThat(PARSER.read(Context.PORT, PARSER.print(meaning)).command())
          .as(text)
          .isEqualTo(meaning.command());
    }
  }

  private static Command.Unknown unknown(String text) {
    return (Command.Unknown) PARSER.read(Context.PORT, text).command();
  }

  @Test
  void an_unknown_statement_hides_all_of_its_text_and_lets_it_be_matched() {
    Command.Unknown unknown = unknown("vendor-thing on hunter2");
    assertThat(unknown.text().matches("vendor-thing on *")).isTrue();
    assertThat(unknown.text().matches("vendor-thing")).isFalse();
    assertThat(unknown.toString()).contains("vendor-thing").doesNotContain("hunter2");
    SwitchText read =
        new ConfigReader(PARSER)
            .read("a", "a", "interface Gi1/0/1\n vendor-thing  On hunter2 ! desk\n")
            .get(0);
    Command inPort = read.statements().get(1).command();
    assertThat(((Command.Unknown) inPort).text().matches("vendor-thing on hunter2")).isTrue();
    assertThat(read.toString()).contains("vendor-thing").doesNotContain("hunter2");
  }

  @Test
  void an_access_vlan_that_is_no_number_is_not_modelled() {
    assertThat(PARSER.read(Context.PORT, "switchport access vlan dynamic").command())
        .isEqualTo(new PortCommand.Unmodelled("switchport access vlan dynamic"));
    assertThat(PARSER.read(Context.PORT, "switchport access vlan name OFFICE").command())
        .isEqualTo(new PortCommand.Unmodelled("switchport access vlan name"));
  }

  @Test
  void the_filter_lets_every_prefix_of_every_first_keyword_through_in_any_case() {
    for (Context context : READ) {
      Keywords.Node start = KEYWORDS.start(context);
      Set<String> first = new HashSet<>(start.keywords());
      first.addAll(start.after(SwitchConfigLexer.NO).keywords());
      assertThat(first).contains("no", "default");
      for (String word : first) {
        for (int length = 1; length <= word.length(); length++) {
          String prefix = word.substring(0, length);
          assertThat(PARSER.mayStart(context, prefix)).as(prefix).isTrue();
          assertThat(PARSER.mayStart(context, prefix.toUpperCase(Locale.ROOT))).isTrue();
        }
        assertThat(PARSER.mayStart(context, word + "~")).as(word).isFalse();
      }
    }
  }

  @Test
  void the_filter_lets_every_known_sample_through() {
    for (Sample sample : Samples.all()) {
      if (!(PARSER.read(sample.context(), sample.text()).command() instanceof Command.Unknown)
          && sample.context() != Context.OTHER) {
        String first = sample.text().split("\\s", 2)[0];
        assertThat(PARSER.mayStart(sample.context(), first)).as(sample.toString()).isTrue();
      }
    }
  }

  @Property(tries = 200)
  void what_the_filter_stops_is_unknown(
      @ForAll @AlphaChars @StringLength(min = 1, max = 4) String word) {
    for (Context context : READ) {
      if (!PARSER.mayStart(context, word)) {
        assertThat(PARSER.read(context, word).command()).isInstanceOf(Command.Unknown.class);
      }
    }
  }

  @Test
  void every_keyword_of_the_lexer_stands_in_the_parser_and_they_are_sorted() {
    Set<String> used = new TreeSet<>();
    for (ATNState state : SwitchConfigParser._ATN.states) {
      for (Transition transition : state.getTransitions()) {
        if (transition.label() != null && !(transition instanceof NotSetTransition)) {
          transition.label().toList().stream()
              .filter(type -> type > 0)
              .map(SwitchConfigLexer.VOCABULARY::getLiteralName)
              .filter(name -> name != null)
              .forEach(used::add);
        }
      }
    }
    List<String> declared = new ArrayList<>();
    for (int type = 1; type <= SwitchConfigLexer.VOCABULARY.getMaxTokenType(); type++) {
      String name = SwitchConfigLexer.VOCABULARY.getLiteralName(type);
      if (name != null && Character.isLetter(name.charAt(1))) {
        declared.add(name);
      }
    }
    assertThat(used).containsAll(declared);
    assertThat(declared).isSortedAccordingTo(Comparator.naturalOrder());
  }
}
