package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.ListChange;
import plumbline.statement.Meaning;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Allowed;
import plumbline.syntax.Samples.Sample;
import plumbline.vlan.VlanSet;

class StatementParserTest {
  private static final StatementParser PARSER = new StatementParser();

  @Test
  void every_sample_means_what_its_line_says() {
    if (Boolean.getBoolean("golden.renew")) {
      Samples.renew(PARSER);
    }
    List<String> wrong = new ArrayList<>();
    for (Sample sample : Samples.all()) {
      String found = Samples.shown(PARSER.read(sample.context(), sample.text()));
      if (!found.equals(sample.expected())) {
        wrong.add(sample + "\n  expected " + sample.expected() + "\n  found    " + found);
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void every_kind_of_command_has_a_sample() {
    Set<Class<?>> kinds = new HashSet<>();
    collect(Command.class, kinds);
    kinds.remove(Command.Layout.class); // lines that are no statement: the reader of files makes it
    for (Sample sample : Samples.all()) {
      kinds.remove(PARSER.read(sample.context(), sample.text()).command().getClass());
    }
    assertThat(kinds).isEmpty();
  }

  private static void collect(Class<?> type, Set<Class<?>> kinds) {
    if (type.isRecord()) {
      kinds.add(type);
    } else {
      Arrays.stream(type.getPermittedSubclasses()).forEach(t -> collect(t, kinds));
    }
  }

  @Test
  void every_sample_prints_to_a_statement_that_means_the_same() {
    for (Sample sample : Samples.all()) {
      Meaning meaning = PARSER.read(sample.context(), sample.text());
      Meaning again = PARSER.read(sample.context(), PARSER.print(meaning));
      assertThat(again.command()).as(sample.toString()).isEqualTo(meaning.command());
      assertThat(again.form()).as(sample.toString()).isEqualTo(meaning.form());
    }
  }

  @Test
  void blanks_tabs_and_what_a_web_page_leaves_do_not_matter() {
    for (Sample sample : Samples.all()) {
      Meaning meaning = PARSER.read(sample.context(), sample.text());
      Meaning again = PARSER.read(sample.context(), " \t" + sample.text() + " \t <BR/>\r\n");
      assertThat(again).as(sample.toString()).isEqualTo(meaning);
    }
  }

  @Test
  void the_case_of_keywords_does_not_matter_and_that_of_names_is_kept() {
    assertThat(PARSER.read(Context.PORT, "SERVICE-POLICY Input Mark").command())
        .isEqualTo(new PortCommand.ServicePolicy(true, Optional.of("Mark")));
    for (Sample sample : Samples.all()) {
      Meaning meaning = PARSER.read(sample.context(), sample.text());
      if (!(meaning.command() instanceof Command.Unknown) && isAllKeywords(sample)) {
        String upper = sample.text().toUpperCase(Locale.ROOT);
        assertThat(PARSER.read(sample.context(), upper).command())
            .as(sample.toString())
            .isEqualTo(meaning.command());
      }
    }
  }

  private static boolean isAllKeywords(Sample sample) {
    return sample.context() != Context.OTHER
        && sample.text().matches("[a-z0-9 ,-]+")
        && !sample.text().matches(".*\\b(name|description|interface|int|track|policy) .*");
  }

  @Test
  void a_list_of_the_standard_has_its_count_of_members() {
    // IEEE Std 802.1Q YANG module ieee802-dot1q-types, typedef vid-range-type: the example list.
    Command list =
        PARSER.read(Context.PORT, "switchport trunk allowed vlan 1,10-100,250,500-1000").command();
    assertThat(((Allowed) list).vlans().size()).isEqualTo(594);
  }

  @Test
  void vlans_outside_the_range_of_the_standard_are_refused() {
    // IEEE Std 802.1Q YANG module ieee802-dot1q-types, typedef vlanid: 1..4094.
    assertThat(allowed("4094")).isEqualTo(new Allowed(ListChange.SET, VlanSet.of(4094), false));
    assertThat(allowed("4095")).isInstanceOf(Command.Unknown.class);
    assertThat(allowed("0")).isInstanceOf(Command.Unknown.class);
    assertThat(allowed("1-99999999999999999999")).isInstanceOf(Command.Unknown.class);
  }

  private static Command allowed(String list) {
    return PARSER.read(Context.PORT, "switchport trunk allowed vlan " + list).command();
  }

  @Test
  void equal_statements_share_one_meaning() {
    Meaning first = PARSER.read(Context.PORT, "switchport trunk allowed vlan 7");
    assertThat(PARSER.read(Context.PORT, "switchport trunk allowed vlan 7")).isSameAs(first);
  }

  @Test
  void the_quote_keeps_the_spelling_and_makes_blanks_single() {
    assertThat(PARSER.read(Context.PORT, "Sw  acc\tvl 10   ! desk").quote())
        .isEqualTo("Sw acc vl 10");
    assertThat(PARSER.read(Context.PORT, "ip helper-address 192.0.2.9").quote())
        .isEqualTo("ip helper-address ...");
    assertThat(PARSER.read(Context.PORT, "no frobnicate hard").quote()).isEqualTo("no frobnicate");
  }

  @Test
  void a_statement_too_long_to_be_one_is_unknown() {
    String longList = "switchport trunk allowed vlan 1" + ",2".repeat(20_000);
    assertThat(PARSER.read(Context.PORT, longList).command())
        .isEqualTo(
            new Command.Unknown("switchport", List.of("switchport", "trunk", "allowed", "vlan")));
    assertThat(PARSER.read(Context.TOP, "interface 1" + "/1".repeat(16_000)).form())
        .isEqualTo(Form.SET);
  }

  @Test
  void a_list_of_all_vlans_one_by_one_is_read() {
    StringBuilder list = new StringBuilder("1");
    for (int id = 2; id <= 4094; id++) {
      list.append(',').append(id);
    }
    assertThat(allowed(list.toString())).isEqualTo(new Allowed(ListChange.SET, VlanSet.ALL, false));
  }

  @Property(tries = 500)
  void no_text_makes_the_parser_fail(
      @ForAll Context context, @ForAll @StringLength(max = 60) String text) {
    Meaning meaning = PARSER.read(context, text);
    assertThat(PARSER.read(context, PARSER.print(meaning)).form()).isEqualTo(meaning.form());
  }

  @Property(tries = 300)
  void no_damage_to_a_statement_makes_the_parser_fail(
      @ForAll int which, @ForAll int where, @ForAll char what) {
    List<Sample> samples = Samples.all();
    Sample sample = samples.get(Math.floorMod(which, samples.size()));
    StringBuilder text = new StringBuilder(sample.text());
    text.insert(Math.floorMod(where, text.length() + 1), what);
    assertThat(PARSER.read(sample.context(), text.toString())).isNotNull();
  }
}
