package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.TreeNumbers;
import plumbline.statement.Command;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.TreeCost;
import plumbline.statement.PortCommand.TreePortPriority;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.statement.SwitchCommand.TreeScope;
import plumbline.vlan.VlanSet;

/**
 * Decides a port's path cost and port priority in each tree. A line about a tree outweighs one
 * about the port, whichever stands last (common practice, no source); per-VLAN lines have no effect
 * in multiple spanning tree, and its lines none outside it.
 */
final class TreePortRule {
  private static final Set<TreeMode.Mode> PER_VLAN =
      Set.of(TreeMode.Mode.PVST, TreeMode.Mode.RAPID_PVST);

  private final boolean perVlan;
  private final boolean multiple;

  /** The rule for the ports of a switch in this mode; in an open mode every line may count. */
  TreePortRule(Setting<TreeMode.Mode> mode) {
    this.perVlan = mode.value().map(PER_VLAN::contains).orElse(true);
    this.multiple = mode.value().map(TreeMode.Mode.MST::equals).orElse(true);
  }

  /** Puts both; needs the cost and the priority of the port itself. */
  void apply(PortDraft port) {
    port.put(
        Keys.COST_BY_TREE,
        new Matters<>(port.lines(), Matter.TREE_COSTS, TreeCost.class, TreeCost::scope)
            .numbers(TreeCost::cost, ofPort(port, Keys.STP_COST)));
    port.put(
        Keys.PORT_PRIORITY_BY_TREE,
        new Matters<>(
                port.lines(),
                Matter.TREE_PORT_PRIORITIES,
                TreePortPriority.class,
                TreePortPriority::scope)
            .numbers(
                line -> line.priority().map(Integer::longValue),
                ofPort(port, Keys.STP_PORT_PRIORITY).map(Integer::longValue)));
  }

  /** What the port's own line means for a tree that no line names. */
  private <T> Setting<T> ofPort(PortDraft port, Key<T> key) {
    Setting<T> own = port.get(key);
    return multiple && own.value().isPresent()
        ? new Setting.Unknown<>(
            "releases differ on whether a " + key + " without an instance reaches all instances",
            own.evidence())
        : own;
  }

  /** The lines about trees on one of the two matters. */
  private final class Matters<C extends Command> {
    private final Lines lines;
    private final Matter matter;
    private final Class<C> type;
    private final Function<C, TreeScope> scope;

    Matters(Lines lines, Matter matter, Class<C> type, Function<C, TreeScope> scope) {
      this.lines = lines;
      this.matter = matter;
      this.type = type;
      this.scope = scope;
    }

    Setting<TreeNumbers> numbers(Function<C, Optional<Long>> value, Setting<Long> ofPort) {
      List<TreeNumbers.Line> standing = new ArrayList<>();
      // A script that is silent on a tree may be typed on a port that has a line about it.
      Setting<Long> others = word(List.of()).operand(value, ofPort);
      for (Statement statement : lines.statements()) {
        if (isAboutTrees(statement)) {
          TreeScope trees = scope.apply(type.cast(statement.command()));
          VlanSet vlans = perVlan ? trees.vlans() : VlanSet.NONE;
          List<Integer> instances = multiple ? trees.instances() : List.of();
          if (!vlans.isEmpty() || !instances.isEmpty()) {
            standing.add(
                new TreeNumbers.Line(
                    vlans, instances, word(List.of(statement)).operand(value, ofPort)));
          }
        } else if (mayBeAboutAny(statement.command())
            && word(List.of(statement)) instanceof LastWord.Open<C> open
            && !open.silence()) {
          // It may be about any tree, until a later line is clear.
          standing.clear();
          others = new Setting.Unknown<>(open.why(), open.evidence());
        }
      }
      TreeNumbers numbers = new TreeNumbers(standing, others);
      return new Setting.Known<>(numbers, numbers.evidence());
    }

    private boolean isAboutTrees(Statement statement) {
      return type.isInstance(statement.command())
          && !scope.apply(type.cast(statement.command())).equals(TreeScope.ALL);
    }

    private boolean mayBeAboutAny(Command command) {
      return command instanceof Command.Unknown || command instanceof PortCommand.Unmodelled;
    }

    private LastWord<C> word(List<Statement> some) {
      return lines.only(some).last(matter, type, this::isAboutTrees);
    }
  }
}
