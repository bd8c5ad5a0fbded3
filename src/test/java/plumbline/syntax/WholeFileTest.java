package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.antlr.v4.runtime.BailErrorStrategy;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.junit.jupiter.api.Test;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.SwitchCommand;
import plumbline.syntax.Samples.Sample;
import plumbline.syntax.SwitchConfigParser.FileContext;
import plumbline.syntax.SwitchConfigParser.FormContext;
import plumbline.syntax.SwitchConfigParser.SectionContext;
import plumbline.syntax.SwitchConfigParser.UnknownContext;

/** The grammar's rule for whole files as an oracle: it must agree with reading line by line. */
class WholeFileTest {
  private static final StatementParser PARSER = new StatementParser();
  private static final Expander EXPANDER = new Expander(new Keywords());
  private static final String UNKNOWN = "unknown";

  private static final Map<Context, String> HEADERS =
      Map.of(
          Context.PORT, "interface GigabitEthernet1/0/1",
          Context.VLAN, "vlan 10",
          Context.VLAN_DATABASE, "vlan database",
          Context.MST, "spanning-tree mst configuration",
          Context.OTHER, "line vty 0 4");

  /** Lines of one config, cut already: the text of each and the context it stands in. */
  private final StringBuilder file = new StringBuilder();

  private final List<String> expected = new ArrayList<>();

  @Test
  void every_sample_in_its_block_means_in_the_file_what_it_means_alone() {
    for (Context context : List.of(Context.MST, Context.VLAN, Context.VLAN_DATABASE)) {
      addBlock(context, 1);
    }
    addBlock(Context.PORT, 40);
    addBlock(Context.OTHER, 1);
    for (Sample sample : Samples.all()) {
      if (sample.context() == Context.TOP) {
        add(Context.TOP, sample.text());
      }
    }
    assertThat(wholeFile()).containsExactlyElementsOf(expected);
    assertThat(expected).hasSizeGreaterThan(600);
  }

  @Test
  void a_config_of_several_blocks_means_as_a_file_what_its_lines_mean() {
    String config =
        """
        hostname NORTH-SW1
        vlan 210
         name LIGHTS-OUT
        vlan 220,231
        spanning-tree mst configuration
         name FERRIES
         revision 3
         instance 1 vlan 210,220
        interface Port-channel1
         description uplink to name server vlan 20
         switchport trunk native vlan 999
         switchport trunk allowed vlan 210,220
         switchport trunk allowed vlan add 231
         switchport mode trunk
        interface GigabitEthernet1/0/1
        interface Vlan210
         ip address 192.0.2.1 255.255.255.0
         no shutdown
        router ospf 1
         network 192.0.2.0 0.0.0.255 area 0
        frobnicate all vlan 20
        line vty 0 4
         login
        end
        """;
    Context open = Context.TOP;
    for (String line : config.lines().toList()) {
      Context context = line.startsWith(" ") ? open : Context.TOP;
      add(context, line.strip());
      open = context == Context.TOP ? opened(line) : open;
    }
    assertThat(wholeFile()).containsExactlyElementsOf(expected);
  }

  private static Context opened(String header) {
    Command command = PARSER.read(Context.TOP, header).command();
    if (command instanceof SwitchCommand.Interface) {
      return Context.PORT;
    }
    if (command instanceof SwitchCommand.Vlans) {
      return Context.VLAN;
    }
    return command instanceof SwitchCommand.RegionBlock ? Context.MST : Context.OTHER;
  }

  private void addBlock(Context context, int linesEach) {
    int count = 0;
    for (Sample sample : Samples.all()) {
      if (sample.context() == context) {
        if (count++ % linesEach == 0) {
          add(Context.TOP, HEADERS.get(context));
        }
        add(context, sample.text());
      }
    }
  }

  /** Adds one line in the normal form that the rule for whole files asks for. */
  private void add(Context context, String text) {
    String prefix = context == Context.TOP ? "\n" : "\n ";
    if (context == Context.OTHER) {
      file.append(prefix).append(text);
      expected.add(UNKNOWN);
      return;
    }
    Expander.Expansion expansion = EXPANDER.expand(context, Expander.clean(text));
    file.append(prefix).append(expansion.fits() ? expansion.text() : Expander.clean(text));
    Meaning meaning = PARSER.read(context, text);
    expected.add(meaning.command() instanceof Command.Unknown ? UNKNOWN : Samples.shown(meaning));
  }

  private List<String> wholeFile() {
    SwitchConfigLexer lexer = new SwitchConfigLexer(CharStreams.fromString(file.toString()));
    lexer.removeErrorListeners();
    SwitchConfigParser parser = new SwitchConfigParser(new CommonTokenStream(lexer));
    parser.removeErrorListeners();
    parser.setErrorHandler(new BailErrorStrategy());
    FileContext tree = parser.file();
    assertThat(parser.getCurrentToken().getType()).isEqualTo(Token.EOF);
    List<String> found = new ArrayList<>();
    for (SectionContext section : tree.section()) {
      for (ParseTree child : section.children) {
        if (child instanceof ParserRuleContext line) {
          found.add(meaning(line));
        }
      }
    }
    return found;
  }

  private static String meaning(ParserRuleContext line) {
    Operands operands = new Operands(Form.SET);
    Optional<Command> command = Optional.empty();
    if (line.children.stream().noneMatch(ParserRuleContext.class::isInstance)) {
      command = Optional.of(StatementBuilder.command(line, operands));
    }
    for (ParseTree part : line.children) {
      if (part instanceof UnknownContext) {
        return UNKNOWN;
      }
      if (part instanceof FormContext form) {
        operands = new Operands(form.NO() != null ? Form.NO : Form.DEFAULT);
      } else if (part instanceof ParserRuleContext rule && command.isEmpty()) {
        boolean wrapped =
            line.getRuleIndex() != SwitchConfigParser.RULE_portHeader
                && line.getRuleIndex() != SwitchConfigParser.RULE_vlanHeader
                && line.getRuleIndex() != SwitchConfigParser.RULE_otherBlock;
        command = Optional.of(StatementBuilder.command(wrapped ? rule : line, operands));
      }
    }
    return operands.isUnfit()
        ? UNKNOWN
        : operands.form() + " " + command.map(Command::toString).orElseThrow();
  }
}
