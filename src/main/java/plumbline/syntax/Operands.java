package plumbline.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.Interval;
import org.antlr.v4.runtime.tree.TerminalNode;
import plumbline.statement.Form;
import plumbline.statement.SwitchCommand.TreeScope;
import plumbline.syntax.SwitchConfigParser.TailContext;
import plumbline.syntax.SwitchConfigParser.TextContext;
import plumbline.syntax.SwitchConfigParser.TreeScopeContext;
import plumbline.syntax.SwitchConfigParser.VlansContext;
import plumbline.syntax.SwitchConfigParser.WordContext;
import plumbline.text.Secrets;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * Reads the operands of one statement and remembers whether all are there and in range: a statement
 * with an operand that is not is no statement.
 */
final class Operands {
  private static final int MAX_INSTANCE = 4094;

  private Form form;
  private boolean unfit;

  Operands(Form form) {
    this.form = form;
  }

  Form form() {
    return form;
  }

  /** Says whether an operand was missing or out of range. */
  boolean isUnfit() {
    return unfit;
  }

  boolean isSet() {
    return form == Form.SET;
  }

  /** The statement is spelled the other way round: what sets removes. */
  void invert() {
    form =
        switch (form) {
          case SET -> Form.NO;
          case NO -> Form.SET;
          case DEFAULT -> Form.DEFAULT;
        };
  }

  /** The statement puts the default back, though it does not say so. */
  void restoreDefault() {
    form = Form.DEFAULT;
  }

  /** Refuses the statement. */
  void refuse() {
    unfit = true;
  }

  /** Refuses the statement if it sets something without saying what. */
  <T> Optional<T> needed(Optional<T> operand) {
    unfit |= operand.isEmpty() && isSet();
    return operand;
  }

  /** A whole number in a range; needed in the set form. */
  Optional<Integer> number(TerminalNode node, int min, int max) {
    return longNumber(node, min, max).map(Long::intValue);
  }

  /** A whole number in a range; needed in the set form. */
  Optional<Long> longNumber(TerminalNode node, long min, long max) {
    return needed(Optional.ofNullable(node).map(number -> inRange(number.getSymbol(), min, max)));
  }

  /** A VLAN; needed in the set form. */
  Optional<VlanId> vlan(TerminalNode node) {
    return number(node, VlanId.MIN, VlanId.MAX).filter(VlanId::isValid).map(VlanId::new);
  }

  /** A list of VLANs, at least one. */
  VlanSet vlans(VlansContext list) {
    VlanSet vlans = VlanSet.NONE;
    for (var range : list.vlanRange()) {
      int first = (int) inRange(range.NUMBER(0).getSymbol(), VlanId.MIN, VlanId.MAX);
      int last =
          range.NUMBER().size() == 1
              ? first
              : (int) inRange(range.NUMBER(1).getSymbol(), VlanId.MIN, VlanId.MAX);
      if (VlanId.isValid(first) && VlanId.isValid(last) && first <= last) {
        vlans = vlans.plus(VlanSet.ofRange(first, last));
      } else {
        refuse();
      }
    }
    return vlans;
  }

  /** The trees that a spanning-tree line is about; all where it names none. */
  TreeScope scope(TreeScopeContext scope) {
    if (scope == null) {
      return TreeScope.ALL;
    }
    return scope.MST() == null
        ? new TreeScope(vlans(scope.vlans()), List.of())
        : new TreeScope(VlanSet.NONE, instances(scope.vlans()));
  }

  private List<Integer> instances(VlansContext list) {
    List<Integer> instances = new ArrayList<>();
    for (var range : list.vlanRange()) {
      int first = (int) inRange(range.NUMBER(0).getSymbol(), 0, MAX_INSTANCE);
      int last =
          range.NUMBER().size() == 1
              ? first
              : (int) inRange(range.NUMBER(1).getSymbol(), 0, MAX_INSTANCE);
      if (first > last) {
        refuse();
      }
      for (int instance = first; instance <= last && !unfit; instance++) {
        instances.add(instance);
      }
    }
    return instances.stream().distinct().sorted().toList();
  }

  /** A name; needed in the set form. */
  Optional<String> word(WordContext word) {
    return needed(Optional.ofNullable(word).map(w -> Secrets.mask(w.getText())));
  }

  /** Free text without the quotes around it, secrets masked; needed in the set form. */
  Optional<String> text(TextContext text) {
    return needed(Optional.ofNullable(text).flatMap(t -> name(t.getText())));
  }

  /** Free text without the quotes around it, secrets masked. */
  Optional<String> name(String text) {
    return Optional.of(Secrets.mask(unquote(text)));
  }

  /** An IPv4 address, with its prefix length where one is written. */
  Optional<String> address4(TerminalNode node) {
    return Optional.ofNullable(node).map(TerminalNode::getText).map(this::checked4);
  }

  private String checked4(String address) {
    String[] parts = address.split("[./]", -1);
    for (int i = 0; i < parts.length; i++) {
      if (parts[i].length() > 3 || Integer.parseInt(parts[i]) > (i < 4 ? 255 : 32)) {
        refuse();
      }
    }
    return address;
  }

  /** The keyword that an optional operand rule matched, in full; needed in the set form. */
  Optional<String> keyword(ParserRuleContext operand) {
    return needed(Optional.ofNullable(operand).map(o -> o.getStart().getText()));
  }

  /** The words of a tail as written; empty where there are none. */
  static Optional<String> words(TailContext tail) {
    return tail == null || tail.getChildCount() == 0
        ? Optional.empty()
        : Optional.of(Secrets.mask(source(tail)));
  }

  /** The text of a rule as written, blanks single. */
  static String source(ParserRuleContext rule) {
    return source(rule.getStart(), rule.getStop());
  }

  /** The text from one token to another as written, blanks single. */
  static String source(Token first, Token last) {
    return first
        .getInputStream()
        .getText(Interval.of(first.getStartIndex(), last.getStopIndex()))
        .replaceAll("[ \\t]+", " ");
  }

  /** A keyword as the name of an enumeration constant. */
  static String constant(String keyword) {
    return keyword.toUpperCase(Locale.ROOT).replace('-', '_');
  }

  /** Text without the double quotes that enclose it. */
  static String unquote(String text) {
    String trimmed = text.strip();
    return isQuoted(trimmed) ? trimmed.substring(1, trimmed.length() - 1) : trimmed;
  }

  /** Says whether double quotes enclose a text that is not empty without them. */
  static boolean isQuoted(String text) {
    return text.length() > 2 && text.startsWith("\"") && text.endsWith("\"");
  }

  private long inRange(Token token, long min, long max) {
    String digits = token.getText();
    long number = digits.length() > 18 ? Long.MAX_VALUE : Long.parseLong(digits);
    if (number < min || number > max) {
      refuse();
    }
    return number;
  }
}
