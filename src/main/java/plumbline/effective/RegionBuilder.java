package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.vlan.VlanSet;

/** Builds the multiple-spanning-tree region from the lines of its block. */
final class RegionBuilder {
  private final NavigableMap<Integer, VlanSet> instances = new TreeMap<>();
  private final List<Evidence> said = new ArrayList<>();
  private Optional<String> doubt;

  private RegionBuilder(Lines lines) {
    this.doubt = lines.open();
  }

  /** Reads the lines outside ports; the region's own stand among them. */
  static SpanningTree.Region build(Lines lines, Dialect dialect) {
    RegionBuilder builder = new RegionBuilder(lines);
    lines.statements().forEach(statement -> builder.take(statement, lines));
    boolean undone =
        lines
            .last(Matter.REGION_NAME, SwitchCommand.RegionBlock.class)
            .decide(last -> Setting.known(!last.sets()), () -> Setting.known(false))
            .is(true);
    Setting<String> none = dialect.nothing("no region name");
    Setting<Integer> zero = dialect.fact(0, "region revision 0");
    return new SpanningTree.Region(
        undone
            ? none
            : lines
                .last(Matter.REGION_NAME, SwitchCommand.RegionName.class)
                .operand(SwitchCommand.RegionName::name, none),
        undone
            ? zero
            : lines
                .last(Matter.REGION_REVISION, SwitchCommand.RegionRevision.class)
                .operand(SwitchCommand.RegionRevision::revision, zero),
        builder.instances,
        builder.doubt,
        builder.said);
  }

  private void take(Statement statement, Lines lines) {
    Command command = statement.command();
    if (command instanceof SwitchCommand.RegionBlock && statement.form() != Form.SET) {
      instances.clear();
      said.add(statement.evidence());
    }
    if (command instanceof Command.Unknown unknown && Matter.REGION_INSTANCES.doubtedBy(unknown)) {
      doubt = Optional.of("line " + statement.line() + " is not understood");
      said.add(statement.evidence());
    }
    if (command instanceof SwitchCommand.RegionInstance line) {
      doubt = lines.doubtOf(statement).or(() -> doubt);
      change(statement, line);
      said.add(statement.evidence());
    }
  }

  /** A VLAN belongs to one instance: the last line that names it. */
  private void change(Statement statement, SwitchCommand.RegionInstance line) {
    VlanSet vlans = line.vlans().orElse(VlanSet.ALL);
    if (statement.form() == Form.SET) {
      instances.replaceAll((instance, old) -> old.minus(line.vlans().orElse(VlanSet.NONE)));
      instances.merge(line.instance(), line.vlans().orElse(VlanSet.NONE), VlanSet::plus);
    } else {
      instances.computeIfPresent(line.instance(), (instance, old) -> old.minus(vlans));
    }
    instances.values().removeIf(VlanSet::isEmpty);
    instances.remove(0);
  }
}
