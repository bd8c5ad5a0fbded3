package plumbline.syntax;

import java.util.Optional;
import org.antlr.v4.runtime.tree.TerminalNode;
import plumbline.statement.Command;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.FastStart;
import plumbline.statement.PortCommand.Guard;
import plumbline.syntax.SwitchConfigParser.BpduFilterContext;
import plumbline.syntax.SwitchConfigParser.BpduGuardContext;
import plumbline.syntax.SwitchConfigParser.CommonFastStartContext;
import plumbline.syntax.SwitchConfigParser.EdgePortContext;
import plumbline.syntax.SwitchConfigParser.FastStartContext;
import plumbline.syntax.SwitchConfigParser.GuardContext;
import plumbline.syntax.SwitchConfigParser.GuardShortContext;
import plumbline.syntax.SwitchConfigParser.PortTreeHarmlessContext;
import plumbline.syntax.SwitchConfigParser.PortfastKindContext;
import plumbline.syntax.SwitchConfigParser.ToggleContext;
import plumbline.syntax.SwitchConfigParser.TreeCostContext;
import plumbline.syntax.SwitchConfigParser.TreeLinkTypeContext;
import plumbline.syntax.SwitchConfigParser.TreeOffPortContext;
import plumbline.syntax.SwitchConfigParser.TreeOnPortContext;
import plumbline.syntax.SwitchConfigParser.TreePortPriorityContext;
import plumbline.syntax.SwitchConfigParser.TypedFastStartContext;
import plumbline.syntax.SwitchConfigParser.UdldContext;

/** Makes commands of a port's spanning-tree and link-detection lines. */
final class PortTreeBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private static final long MAX_COST = 200_000_000;
  private static final int MAX_PORT_PRIORITY = 255;

  private final Operands operands;

  PortTreeBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitTreeOnPort(TreeOnPortContext line) {
    return new PortCommand.TreeOnPort();
  }

  @Override
  public Command visitTreeOffPort(TreeOffPortContext line) {
    operands.invert();
    return new PortCommand.TreeOnPort();
  }

  @Override
  public Command visitFastStart(FastStartContext line) {
    PortfastKindContext kind = line.portfastKind();
    if (kind == null) {
      return new FastStart(
          operands.isSet() ? Optional.of(FastStart.Kind.EDGE) : Optional.empty(), false);
    }
    return new FastStart(Optional.of(kind(kind.getStart().getText(), kind.TRUNK())), false);
  }

  @Override
  public Command visitTypedFastStart(TypedFastStartContext line) {
    Optional<FastStart.Kind> kind =
        Optional.ofNullable(line.portType()).map(t -> kind(t.getStart().getText(), t.TRUNK()));
    return new FastStart(operands.needed(kind), false);
  }

  private static FastStart.Kind kind(String keyword, TerminalNode trunk) {
    return trunk != null
        ? FastStart.Kind.EDGE_TRUNK
        : FastStart.Kind.valueOf(Operands.constant(keyword));
  }

  @Override
  public Command visitEdgePort(EdgePortContext line) {
    if (line.ADMIN_NETWORK() != null) {
      return new FastStart(Optional.of(FastStart.Kind.NETWORK), true);
    }
    boolean named = line.rareEdgePort() != null ? operands.isSet() : line.ADMIN_EDGE() != null;
    return new FastStart(
        operands.needed(named ? Optional.of(FastStart.Kind.EDGE) : Optional.empty()), true);
  }

  @Override
  public Command visitCommonFastStart(CommonFastStartContext line) {
    return new FastStart(
        toggle(line.toggle()).map(on -> on ? FastStart.Kind.EDGE : FastStart.Kind.DISABLE), true);
  }

  @Override
  public Command visitBpduGuard(BpduGuardContext line) {
    return new PortCommand.BpduGuard(
        line.rareBpduGuard() != null ? shortToggle(line.toggle()) : toggle(line.toggle()));
  }

  @Override
  public Command visitBpduFilter(BpduFilterContext line) {
    return new PortCommand.BpduFilter(
        line.rareBpduFilter() != null ? shortToggle(line.toggle()) : toggle(line.toggle()));
  }

  private Optional<Boolean> toggle(ToggleContext toggle) {
    return operands.needed(Optional.ofNullable(toggle).map(t -> t.ENABLE() != null));
  }

  /** In spellings with a dash the bare word turns it on. */
  private Optional<Boolean> shortToggle(ToggleContext toggle) {
    return toggle == null && operands.isSet() ? Optional.of(true) : toggle(toggle);
  }

  @Override
  public Command visitGuard(GuardContext line) {
    TerminalNode last = (TerminalNode) line.getChild(line.getChildCount() - 1);
    Optional<Guard.Kind> kind =
        last.getSymbol().getType() == SwitchConfigParser.GUARD
            ? Optional.empty()
            : Optional.of(Guard.Kind.valueOf(Operands.constant(last.getText())));
    return new Guard(operands.needed(kind));
  }

  @Override
  public Command visitGuardShort(GuardShortContext line) {
    boolean root = line.rareGuard().getText().startsWith("root");
    return new Guard(Optional.of(root ? Guard.Kind.ROOT : Guard.Kind.LOOP));
  }

  @Override
  public Command visitTreeCost(TreeCostContext line) {
    if (line.AUTO() != null) {
      operands.restoreDefault();
    }
    return new PortCommand.TreeCost(
        operands.scope(line.treeScope()), operands.longNumber(line.NUMBER(), 1, MAX_COST));
  }

  @Override
  public Command visitTreePortPriority(TreePortPriorityContext line) {
    return new PortCommand.TreePortPriority(
        operands.scope(line.treeScope()), operands.number(line.NUMBER(), 0, MAX_PORT_PRIORITY));
  }

  @Override
  public Command visitTreeLinkType(TreeLinkTypeContext line) {
    return new PortCommand.LinkType(operands.keyword(line.linkType()));
  }

  @Override
  public Command visitPortTreeHarmless(PortTreeHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitUdld(UdldContext line) {
    return new PortCommand.Udld(line.udldMode() == null || line.udldMode().DISABLE() == null);
  }
}
