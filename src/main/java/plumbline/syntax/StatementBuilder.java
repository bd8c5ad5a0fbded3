package plumbline.syntax;

import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.syntax.SwitchConfigParser.FormContext;
import plumbline.syntax.SwitchConfigParser.SessionCommandContext;

/** Makes commands of parse trees: finds the block of the grammar that a tree belongs to. */
final class StatementBuilder {
  private StatementBuilder() {}

  /**
   * A command with its form, which the spelling may have turned round.
   *
   * @param form the form
   * @param command what it names
   */
  record Built(Form form, Command command) {}

  /**
   * The command of a tree of one of the entry rules.
   *
   * @return empty if an operand is missing or out of range
   */
  static Optional<Built> build(ParserRuleContext entry) {
    Form form = Form.SET;
    Optional<Command> command = Optional.empty();
    Operands operands = new Operands(form);
    for (var child : entry.children) {
      if (child instanceof FormContext prefix) {
        form = prefix.NO() != null ? Form.NO : Form.DEFAULT;
        operands = new Operands(form);
      } else if (child instanceof ParserRuleContext rule) {
        command = Optional.of(command(rule, operands));
      }
    }
    Form finalForm = operands.form();
    return operands.isUnfit() ? Optional.empty() : command.map(c -> new Built(finalForm, c));
  }

  /** The command of a rule: of the rule itself or of the only rule it stands for. */
  static Command command(ParserRuleContext rule, Operands operands) {
    return switch (rule.getRuleIndex()) {
      case SwitchConfigParser.RULE_topCommand, SwitchConfigParser.RULE_portCommand ->
          command((ParserRuleContext) rule.getChild(0), operands);
      case SwitchConfigParser.RULE_sessionCommand ->
          session((SessionCommandContext) rule, operands);
      case SwitchConfigParser.RULE_identity,
          SwitchConfigParser.RULE_vlanSpreading,
          SwitchConfigParser.RULE_switchWide,
          SwitchConfigParser.RULE_portHeader,
          SwitchConfigParser.RULE_otherBlock ->
          new SwitchBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_switchTree,
          SwitchConfigParser.RULE_mstHeader,
          SwitchConfigParser.RULE_mstCommand ->
          new SwitchTreeBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_vlanHeader,
          SwitchConfigParser.RULE_vlanLine,
          SwitchConfigParser.RULE_vlanCommand,
          SwitchConfigParser.RULE_vlanDatabaseHeader,
          SwitchConfigParser.RULE_vlanDatabaseCommand ->
          new VlanBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_portBasics,
          SwitchConfigParser.RULE_portSwitching,
          SwitchConfigParser.RULE_portBundle ->
          new PortBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_portTree -> new PortTreeBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_portQuality, SwitchConfigParser.RULE_portProtection ->
          new ProtectionBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_portAddress, SwitchConfigParser.RULE_portRedundancy ->
          new AddressBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_portInherit -> new InheritBuilder(operands).visit(rule);
      case SwitchConfigParser.RULE_portHarmless, SwitchConfigParser.RULE_topHarmless ->
          harmless(rule);
      default -> throw new IllegalStateException("no builder for rule " + rule.getRuleIndex());
    };
  }

  /** The command of a line that closes a block or belongs to none. */
  static Command session(SessionCommandContext line, Operands operands) {
    if (line instanceof SwitchConfigParser.SessionHarmlessContext) {
      return harmless(line);
    }
    if (!operands.isSet()) {
      operands.refuse();
    }
    return line instanceof SwitchConfigParser.EndContext ? new Command.End() : new Command.Exit();
  }

  /** A command without bearing. */
  static Command harmless(ParserRuleContext rule) {
    return new Command.Harmless(rule.getStart().getText());
  }
}
