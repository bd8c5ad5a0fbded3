package plumbline.syntax;

import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.PortCommand.FastStart;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.syntax.SwitchConfigParser.BpduFilterDefaultContext;
import plumbline.syntax.SwitchConfigParser.BpduGuardDefaultContext;
import plumbline.syntax.SwitchConfigParser.FastStartOfAllContext;
import plumbline.syntax.SwitchConfigParser.LoopGuardDefaultContext;
import plumbline.syntax.SwitchConfigParser.MstHarmlessContext;
import plumbline.syntax.SwitchConfigParser.MstHeaderContext;
import plumbline.syntax.SwitchConfigParser.MstInstanceContext;
import plumbline.syntax.SwitchConfigParser.MstNameContext;
import plumbline.syntax.SwitchConfigParser.MstRevisionContext;
import plumbline.syntax.SwitchConfigParser.MstSessionContext;
import plumbline.syntax.SwitchConfigParser.PathCostContext;
import plumbline.syntax.SwitchConfigParser.RegionNameContext;
import plumbline.syntax.SwitchConfigParser.RegionRevisionContext;
import plumbline.syntax.SwitchConfigParser.TreeEnableContext;
import plumbline.syntax.SwitchConfigParser.TreeHarmlessContext;
import plumbline.syntax.SwitchConfigParser.TreeOfVlansContext;
import plumbline.syntax.SwitchConfigParser.TreePriorityContext;
import plumbline.syntax.SwitchConfigParser.TreeProtocolContext;
import plumbline.syntax.SwitchConfigParser.TreeRootContext;

/** Makes commands of the spanning-tree lines of the whole switch and of its region block. */
final class SwitchTreeBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private static final int MAX_PRIORITY = 61440;
  private static final int MAX_REVISION = 65535;
  private static final int MAX_INSTANCE = 4094;

  private final Operands operands;

  SwitchTreeBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitTreeEnable(TreeEnableContext line) {
    return new SwitchCommand.TreeEnable();
  }

  @Override
  public Command visitTreeProtocol(TreeProtocolContext line) {
    return new TreeMode(operands.keyword(line.treeMode()).map(SwitchTreeBuilder::treeMode));
  }

  private static TreeMode.Mode treeMode(String keyword) {
    return switch (keyword) {
      case "rpvst" -> TreeMode.Mode.RAPID_PVST;
      case "mstp" -> TreeMode.Mode.MST;
      default -> TreeMode.Mode.valueOf(Operands.constant(keyword));
    };
  }

  @Override
  public Command visitTreeOfVlans(TreeOfVlansContext line) {
    return new SwitchCommand.TreeOfVlans(operands.vlans(line.vlans()));
  }

  @Override
  public Command visitTreePriority(TreePriorityContext line) {
    return new SwitchCommand.TreePriority(
        operands.scope(line.treeScope()), operands.number(line.NUMBER(), 0, MAX_PRIORITY));
  }

  @Override
  public Command visitTreeRoot(TreeRootContext line) {
    Optional<String> place = operands.keyword(line.rootPlace());
    return new SwitchCommand.TreeRoot(
        operands.scope(line.treeScope()), !place.orElse("primary").equals("secondary"));
  }

  @Override
  public Command visitPathCost(PathCostContext line) {
    return new SwitchCommand.PathCost(operands.keyword(line.costMethod()).map("long"::equals));
  }

  @Override
  public Command visitFastStartOfAll(FastStartOfAllContext line) {
    String type =
        Optional.ofNullable(line.fastStartType()).map(t -> t.getStart().getText()).orElse("edge");
    return new SwitchCommand.FastStartDefault(FastStart.Kind.valueOf(Operands.constant(type)));
  }

  @Override
  public Command visitBpduGuardDefault(BpduGuardDefaultContext line) {
    return new SwitchCommand.BpduGuardDefault();
  }

  @Override
  public Command visitBpduFilterDefault(BpduFilterDefaultContext line) {
    return new SwitchCommand.BpduFilterDefault();
  }

  @Override
  public Command visitLoopGuardDefault(LoopGuardDefaultContext line) {
    return new SwitchCommand.LoopGuardDefault();
  }

  @Override
  public Command visitRegionName(RegionNameContext line) {
    return new SwitchCommand.RegionName(operands.text(line.text()));
  }

  @Override
  public Command visitRegionRevision(RegionRevisionContext line) {
    return new SwitchCommand.RegionRevision(operands.number(line.NUMBER(), 0, MAX_REVISION));
  }

  @Override
  public Command visitTreeHarmless(TreeHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitMstHeader(MstHeaderContext line) {
    return new SwitchCommand.RegionBlock();
  }

  @Override
  public Command visitMstName(MstNameContext line) {
    return new SwitchCommand.RegionName(operands.text(line.text()));
  }

  @Override
  public Command visitMstRevision(MstRevisionContext line) {
    return new SwitchCommand.RegionRevision(operands.number(line.NUMBER(), 0, MAX_REVISION));
  }

  @Override
  public Command visitMstInstance(MstInstanceContext line) {
    int instance = operands.number(line.NUMBER(), 0, MAX_INSTANCE).orElse(0);
    return new SwitchCommand.RegionInstance(
        instance, operands.needed(Optional.ofNullable(line.vlans()).map(operands::vlans)));
  }

  @Override
  public Command visitMstHarmless(MstHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitMstSession(MstSessionContext line) {
    return StatementBuilder.session(line.sessionCommand(), operands);
  }
}
