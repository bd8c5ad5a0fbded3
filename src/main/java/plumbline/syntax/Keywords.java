package plumbline.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.ActionTransition;
import org.antlr.v4.runtime.atn.LexerActionType;
import org.antlr.v4.runtime.atn.NotSetTransition;
import org.antlr.v4.runtime.atn.RuleStopState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.atn.WildcardTransition;
import plumbline.statement.Context;

/**
 * Which keywords and operands can stand at each place of a statement, read off the generated
 * parser's transition network: nobody keeps a list of keywords beside the grammar. Places are
 * computed when first reached and then shared; there are few, for the grammar has no recursion.
 */
final class Keywords {
  private static final ATN PARSER = SwitchConfigParser._ATN;
  private static final String RARE = "rare";

  private final Map<Context, Node> starts = new EnumMap<>(Context.class);
  private final Map<Set<Config>, Node> nodes = new ConcurrentHashMap<>();
  private final Set<Integer> freeTextKeywords = new HashSet<>();

  Keywords() {
    starts.put(Context.TOP, startOf(SwitchConfigParser.RULE_topStatement));
    starts.put(Context.PORT, startOf(SwitchConfigParser.RULE_portStatement));
    starts.put(Context.VLAN, startOf(SwitchConfigParser.RULE_vlanStatement));
    starts.put(Context.VLAN_DATABASE, startOf(SwitchConfigParser.RULE_vlanDatabaseStatement));
    starts.put(Context.MST, startOf(SwitchConfigParser.RULE_mstStatement));
    for (int rule = 0; rule < SwitchConfigLexer._ATN.ruleToStartState.length; rule++) {
      if (switchesMode(SwitchConfigLexer._ATN.ruleToStartState[rule])) {
        freeTextKeywords.add(SwitchConfigLexer._ATN.ruleToTokenType[rule]);
      }
    }
  }

  /**
   * The place before a statement.
   *
   * @throws IllegalArgumentException for the context that has no grammar
   */
  Node start(Context context) {
    return Optional.ofNullable(starts.get(context))
        .orElseThrow(() -> new IllegalArgumentException("no grammar for " + context));
  }

  /** A keyword in full. */
  String literal(int type) {
    String quoted = SwitchConfigLexer.VOCABULARY.getLiteralName(type);
    return quoted.substring(1, quoted.length() - 1);
  }

  /** Says whether the rest of the line behind this keyword is free text. */
  boolean opensFreeText(int type) {
    return freeTextKeywords.contains(type);
  }

  /** Says whether a lexer rule ends in a switch to another mode. */
  private static boolean switchesMode(ATNState start) {
    Deque<ATNState> open = new ArrayDeque<>(List.of(start));
    Set<ATNState> seen = new HashSet<>();
    while (!open.isEmpty()) {
      ATNState state = open.pop();
      if (!seen.add(state)) {
        continue;
      }
      for (Transition transition : state.getTransitions()) {
        if (transition instanceof ActionTransition action
            && action.actionIndex >= 0
            && SwitchConfigLexer._ATN.lexerActions[action.actionIndex].getActionType()
                == LexerActionType.PUSH_MODE) {
          return true;
        }
        if (!(transition.target instanceof RuleStopState)) {
          open.push(transition.target);
        }
      }
    }
    return false;
  }

  private Node startOf(int rule) {
    return node(Set.of(new Config(PARSER.ruleToStartState[rule], Stack.EMPTY)));
  }

  private Node node(Set<Config> kernel) {
    return nodes.computeIfAbsent(kernel, Node::new);
  }

  /** States to return to when the open rules end. */
  private record Stack(Optional<ATNState> top, Optional<Stack> below) {
    static final Stack EMPTY = new Stack(Optional.empty(), Optional.empty());
  }

  /** A state of the network with the rules that are open there. */
  private record Config(ATNState state, Stack stack) {}

  /** A transition that takes a token, with the rules that are open there. */
  private record Edge(Transition transition, Stack stack) {}

  /** A place in a statement. */
  final class Node {
    private final List<Edge> edges = new ArrayList<>();
    private final NavigableMap<String, Integer> common = new TreeMap<>();
    private final NavigableMap<String, Integer> rare = new TreeMap<>();
    private final Map<Integer, Node> following = new ConcurrentHashMap<>();
    private boolean end;

    private Node(Set<Config> kernel) {
      Deque<Config> open = new ArrayDeque<>(kernel);
      Set<Config> seen = new HashSet<>();
      while (!open.isEmpty()) {
        Config config = open.pop();
        if (seen.add(config)) {
          expand(config, open);
        }
      }
    }

    private void expand(Config config, Deque<Config> open) {
      if (config.state() instanceof RuleStopState) {
        config
            .stack()
            .top()
            .ifPresent(state -> open.push(new Config(state, config.stack().below().orElseThrow())));
        return;
      }
      for (Transition transition : config.state().getTransitions()) {
        if (transition instanceof RuleTransition rule) {
          open.push(
              new Config(
                  rule.target,
                  new Stack(Optional.of(rule.followState), Optional.of(config.stack()))));
        } else if (transition.isEpsilon()) {
          open.push(new Config(transition.target, config.stack()));
        } else {
          edges.add(new Edge(transition, config.stack()));
          learn(transition, config.state());
        }
      }
    }

    private void learn(Transition transition, ATNState from) {
      if (isOpen(transition)) {
        return;
      }
      boolean isRare = SwitchConfigParser.ruleNames[from.ruleIndex].startsWith(RARE);
      for (int type : transition.label().toArray()) {
        if (type == Token.EOF) {
          end = true;
        } else if (isKeyword(type)) {
          (isRare ? rare : common).put(literal(type), type);
        }
      }
    }

    /** Says whether the statement may end here. */
    boolean canEnd() {
      return end;
    }

    /** The keywords that can stand here, in full. */
    Set<String> keywords() {
      Set<String> all = new HashSet<>(common.keySet());
      all.addAll(rare.keySet());
      return all;
    }

    /**
     * The type of the keyword that a word, in lower case, stands for here; the invalid type if it
     * stands for none or for several.
     */
    int keyword(String word) {
      Integer exact = common.getOrDefault(word, rare.getOrDefault(word, Token.INVALID_TYPE));
      if (exact != Token.INVALID_TYPE) {
        return exact;
      }
      NavigableMap<String, Integer> candidates = beginningWith(common, word);
      if (candidates.isEmpty()) {
        candidates = beginningWith(rare, word);
      }
      return candidates.size() == 1 ? candidates.firstEntry().getValue() : Token.INVALID_TYPE;
    }

    /** Says whether a word, in lower case, begins any keyword that can stand here. */
    boolean begins(String word) {
      return !beginningWith(common, word).isEmpty() || !beginningWith(rare, word).isEmpty();
    }

    /** The keywords, in full and sorted, that a word, in lower case, begins here, if several. */
    List<String> candidates(String word) {
      NavigableSet<String> candidates = new TreeSet<>(beginningWith(common, word).keySet());
      candidates.addAll(beginningWith(rare, word).keySet());
      return candidates.size() > 1 ? List.copyOf(candidates) : List.of();
    }

    /** Says whether a token of this type can stand here. */
    boolean takes(int type) {
      return edges.stream().anyMatch(edge -> matches(edge.transition(), type));
    }

    /** Says whether the grammar names a token of this type here, not just any word. */
    boolean names(int type) {
      return edges.stream()
          .anyMatch(edge -> !isOpen(edge.transition()) && matches(edge.transition(), type));
    }

    /** The place behind a token of this type. */
    Node after(int type) {
      return following.computeIfAbsent(type, this::computeAfter);
    }

    private Node computeAfter(int type) {
      Set<Config> kernel = new HashSet<>();
      for (Edge edge : edges) {
        if (matches(edge.transition(), type)) {
          kernel.add(new Config(edge.transition().target, edge.stack()));
        }
      }
      return node(Set.copyOf(kernel));
    }
  }

  private static NavigableMap<String, Integer> beginningWith(
      NavigableMap<String, Integer> keywords, String word) {
    return keywords.subMap(word, true, word + Character.MAX_VALUE, false);
  }

  private static boolean matches(Transition transition, int type) {
    return transition.matches(type, Token.MIN_USER_TOKEN_TYPE, PARSER.maxTokenType);
  }

  /** Says whether a transition takes any word, so that it names no keyword. */
  private static boolean isOpen(Transition transition) {
    return transition instanceof NotSetTransition || transition instanceof WildcardTransition;
  }

  private boolean isKeyword(int type) {
    String quoted = SwitchConfigLexer.VOCABULARY.getLiteralName(type);
    return quoted != null && Character.isLetter(quoted.charAt(1));
  }
}
