package plumbline.syntax;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.antlr.v4.runtime.BailErrorStrategy;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.atn.PredictionMode;
import org.antlr.v4.runtime.misc.ParseCancellationException;
import plumbline.port.PortNames;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.statement.SwitchCommand;
import plumbline.text.HiddenText;
import plumbline.text.Secrets;

/**
 * Reads single statements. Each distinct text of a context goes through the grammar once; its
 * meaning is then shared. Safe for use by several threads.
 *
 * <p>How the grammar is used: {@link Expander} writes keywords in full, led by {@link Keywords},
 * which reads off the generated parser what can stand where; the generated parser takes the result;
 * the builders of this package, one for each block of the grammar, make commands of its trees;
 * {@link Printer} is their inverse. A statement that the grammar does not take, or that has an
 * operand missing or out of range, is unknown: never guessed.
 */
public final class StatementParser implements StatementSource {
  /** Longer texts are rare and not worth keeping. */
  private static final int LONGEST_SHARED = 4_096;

  /** Longer than a list of all VLANs one by one: no statement, but data. */
  private static final int LONGEST_STATEMENT = 32_768;

  /** As much of it as can hold the keywords that say what it was about. */
  private static final int LONGEST_LEAD = 400;

  private static final String STAND_IN = " x";
  private static final Set<String> EXITS = Set.of("exit", "quit");

  private final Keywords allKeywords = new Keywords();
  private final Expander expander = new Expander(allKeywords);
  private final Map<Context, Map<String, Meaning>> shared = new EnumMap<>(Context.class);

  /** The meanings of first words, as spelled, that govern free text. */
  private final Map<Context, Map<String, Meaning>> models = new EnumMap<>(Context.class);

  /** A parser without any statement read yet. */
  public StatementParser() {
    for (Context context : Context.values()) {
      models.put(context, new ConcurrentHashMap<>());
      shared.put(context, new ConcurrentHashMap<>());
    }
  }

  /**
   * What one statement says.
   *
   * @param text the statement without prompt and line end; blanks and case are free
   * @return never fails: what the grammar does not take is {@link Command.Unknown}
   */
  @Override
  public Meaning read(Context context, String text) {
    Meaning known = shared.get(context).get(text);
    if (known != null) {
      return known;
    }
    Optional<Meaning> freeText = withFreeText(context, text);
    if (freeText.isPresent()) {
      return freeText.get();
    }
    String statement = Expander.clean(text);
    if (context == Context.OTHER) {
      return other(statement);
    }
    if (statement.length() > LONGEST_STATEMENT) {
      return unknown(expander.expand(context, statement.substring(0, LONGEST_LEAD)), statement);
    }
    Expander.Expansion expansion = expander.expand(context, statement);
    Optional<Meaning> named = expansion.fits() ? named(context, expansion) : Optional.empty();
    return named.orElseGet(() -> share(context, text, parse(context, expansion, statement)));
  }

  private Meaning share(Context context, String text, Meaning meaning) {
    if (text.length() > LONGEST_SHARED) {
      return meaning;
    }
    Meaning earlier = shared.get(context).putIfAbsent(text, meaning);
    return earlier == null ? meaning : earlier;
  }

  /**
   * The meaning of a line whose first word, spelled so before, governs free text: such lines make
   * up most of what is not shared.
   */
  private Optional<Meaning> withFreeText(Context context, String text) {
    int blank = text.indexOf(' ');
    if (blank <= 0 || text.charAt(text.length() - 1) == '>') {
      return Optional.empty();
    }
    String word = text.substring(0, blank);
    Meaning model = models.get(context).get(word);
    if (model == null || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
      return Optional.empty();
    }
    String rest = text.substring(blank + 1).strip();
    return rest.isEmpty() || rest.equals("?")
        ? Optional.empty()
        : withText(model, word + " ", rest);
  }

  private static Optional<Meaning> withText(Meaning model, String before, String rest) {
    String operand = Operands.unquote(rest);
    // A switch may be called after a community hall: its one word hides nothing but a key's form.
    boolean plain =
        model.command() instanceof SwitchCommand.Hostname
            && operand.indexOf(' ') < 0
            && operand.indexOf('=') < 0
            && !Secrets.looksSecret(operand);
    String shown = plain ? operand : Secrets.mask(operand);
    // The keywords announce no secret, so that what is masked is masked with and without them.
    String quote = before + (plain || operand.equals(rest) ? shown : Secrets.mask(rest));
    return withText(model.command(), Optional.of(shown))
        .map(command -> new Meaning(model.form(), command, quote));
  }

  /**
   * The meaning of a keyword with free text behind it. Such texts are many and nearly all distinct:
   * the grammar sees the keyword with a stand-in once, and the text takes the stand-in's place.
   */
  private Optional<Meaning> named(Context context, Expander.Expansion expansion) {
    if (expansion.freeText().isEmpty()) {
      return Optional.empty();
    }
    String keyword = form(expansion).prefix() + expansion.keywords().get(0);
    Meaning model =
        Optional.ofNullable(shared.get(context).get(keyword + STAND_IN))
            .orElseGet(() -> share(context, keyword + STAND_IN, model(context, keyword)));
    String rest = expansion.freeText().orElseThrow();
    String before = expansion.source().substring(0, expansion.source().length() - rest.length());
    Optional<Meaning> meaning = withText(model, before, rest);
    if (meaning.isPresent() && expansion.prefix().isEmpty()) {
      models.get(context).putIfAbsent(before.stripTrailing(), model);
    }
    return meaning;
  }

  private Meaning model(Context context, String keyword) {
    String statement = keyword + STAND_IN;
    return parse(context, expander.expand(context, statement), statement);
  }

  private static Optional<Command> withText(Command model, Optional<String> text) {
    if (model instanceof PortCommand.Description) {
      return Optional.of(new PortCommand.Description(text));
    }
    if (model instanceof PortCommand.InterfaceVlanName) {
      return Optional.of(new PortCommand.InterfaceVlanName(text));
    }
    if (model instanceof SwitchCommand.VlanName) {
      return Optional.of(new SwitchCommand.VlanName(text));
    }
    if (model instanceof SwitchCommand.Hostname) {
      return Optional.of(new SwitchCommand.Hostname(text));
    }
    return Optional.empty();
  }

  /**
   * Says whether a statement that begins with this word can be known in this context: the filter in
   * front of {@link #read}, computed from the grammar. True for every prefix of a keyword that can
   * begin a statement, and of {@code no} and {@code default}, in any case.
   */
  @Override
  public boolean mayStart(Context context, String firstWord) {
    String word = Expander.clean(firstWord).toLowerCase(Locale.ROOT);
    if (context == Context.OTHER) {
      return EXITS.contains(word) || word.equals("end");
    }
    return !word.isEmpty() && allKeywords.start(context).begins(word);
  }

  @Override
  public boolean isAbbreviated(Context context, String text) {
    if (context == Context.OTHER) {
      return false;
    }
    return expander.expand(context, Expander.clean(text)).abbreviated();
  }

  @Override
  public String inFull(Context context, String text) {
    return expander.inFull(context, Expander.clean(text));
  }

  /**
   * The canonical text of a meaning, keywords in full: reading it again in the same context gives
   * an equal form and command.
   */
  public String print(Meaning meaning) {
    return Printer.print(meaning);
  }

  private static Meaning parse(Context context, Expander.Expansion expansion, String statement) {
    return tree(context, expansion)
        .flatMap(StatementBuilder::build)
        .map(built -> new Meaning(built.form(), built.command(), quote(built.command(), expansion)))
        .orElseGet(() -> unknown(expansion, statement));
  }

  /** Inside a block that nobody reads, only its end is of interest. */
  private static Meaning other(String statement) {
    int end = statement.indexOf(' ');
    String word = Secrets.mask(end < 0 ? statement : statement.substring(0, end));
    String lower = word.toLowerCase(Locale.ROOT);
    if (EXITS.contains(lower)) {
      return new Meaning(Form.SET, new Command.Exit(), word);
    }
    if (lower.equals("end")) {
      return new Meaning(Form.SET, new Command.End(), word);
    }
    return new Meaning(Form.SET, new Command.Harmless(lower), lower);
  }

  private static Meaning unknown(Expander.Expansion expansion, String statement) {
    String firstWord = Secrets.mask(expansion.firstWord());
    return new Meaning(
        form(expansion),
        new Command.Unknown(
            firstWord, expansion.keywords(), expansion.candidates(), HiddenText.of(statement)),
        (form(expansion).prefix() + firstWord).strip());
  }

  private static Form form(Expander.Expansion expansion) {
    return switch (expansion.prefix()) {
      case "no" -> Form.NO;
      case "default" -> Form.DEFAULT;
      default -> Form.SET;
    };
  }

  /**
   * The statement as reports may show it. What has no bearing may hold anything, so that only its
   * keywords are shown.
   */
  private static String quote(Command command, Expander.Expansion expansion) {
    if (command instanceof Command.Harmless || command instanceof SwitchCommand.OtherBlock) {
      return expansion.shown();
    }
    if (command instanceof Redundancy line && line.attribute() == Redundancy.Attribute.OTHER) {
      return Printer.print(new Meaning(form(expansion), line, ""));
    }
    if (command instanceof SwitchCommand.Interface header
        && header.ports() instanceof PortNames.Reading.Ports) {
      return expansion.source();
    }
    return Secrets.mask(expansion.source());
  }

  private static Optional<ParserRuleContext> tree(Context context, Expander.Expansion expansion) {
    if (!expansion.fits()) {
      return Optional.empty();
    }
    SwitchConfigLexer lexer = new SwitchConfigLexer(CharStreams.fromString(expansion.text()));
    lexer.removeErrorListeners();
    SwitchConfigParser parser = new SwitchConfigParser(new CommonTokenStream(lexer));
    parser.removeErrorListeners();
    parser.setErrorHandler(new BailErrorStrategy());
    // Prediction without the surrounding rules is fast and nearly always right; else once more.
    return entry(parser, context, PredictionMode.SLL)
        .or(() -> entry(parser, context, PredictionMode.LL));
  }

  private static Optional<ParserRuleContext> entry(
      SwitchConfigParser parser, Context context, PredictionMode mode) {
    parser.reset();
    parser.getInterpreter().setPredictionMode(mode);
    try {
      return Optional.of(entry(parser, context));
    } catch (ParseCancellationException | StackOverflowError e) {
      return Optional.empty();
    }
  }

  private static ParserRuleContext entry(SwitchConfigParser parser, Context context) {
    return switch (context) {
      case TOP -> parser.topStatement();
      case PORT -> parser.portStatement();
      case VLAN -> parser.vlanStatement();
      case VLAN_DATABASE -> parser.vlanDatabaseStatement();
      case MST -> parser.mstStatement();
      case OTHER -> throw new IllegalArgumentException("no grammar for " + context);
    };
  }
}
