package plumbline.effective;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import plumbline.effective.SpanningTree.Priority;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.statement.SwitchCommand.TreeScope;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Builds the spanning tree of the whole switch from the lines outside ports. */
final class SpanningTreeBuilder {
  private static final Set<TreeMode.Mode> PER_VLAN =
      Set.of(TreeMode.Mode.PVST, TreeMode.Mode.RAPID_PVST);

  private final Lines lines;
  private final Dialect dialect;
  private final Setting<TreeMode.Mode> mode;

  /** By VLAN number, for those of {@link #vlans}: a line may name all and stand many times. */
  private final Priority[] ofVlans = new Priority[VlanId.MAX + 1];

  private VlanSet vlans = VlanSet.NONE;
  private final NavigableMap<Integer, Priority> instances = new TreeMap<>();
  private final List<Evidence> offLines = new ArrayList<>();
  private VlanSet off = VlanSet.NONE;
  private Optional<String> doubt;
  private Priority priority;

  private SpanningTreeBuilder(Lines lines, Dialect dialect) {
    this.lines = lines;
    this.dialect = dialect;
    this.mode = mode(lines, dialect);
    this.doubt = lines.open();
    this.priority = standard();
  }

  /** Reads the lines outside ports. */
  static SpanningTree build(Lines lines, Dialect dialect) {
    SpanningTreeBuilder builder = new SpanningTreeBuilder(lines, dialect);
    lines.statements().forEach(builder::take);
    return builder.finish();
  }

  private static Setting<TreeMode.Mode> mode(Lines lines, Dialect dialect) {
    Setting<TreeMode.Mode> fallback =
        dialect
            .defaults()
            .tree()
            .map(mode -> dialect.fact(mode, "spanning-tree mode " + mode))
            .orElseGet(() -> dialect.differs("the spanning-tree mode"));
    Setting<TreeMode.Mode> named =
        lines.last(Matter.TREE_MODE, TreeMode.class).operand(TreeMode::mode, fallback);
    LastWord<SwitchCommand.TreeEnable> enable =
        lines.last(Matter.TREE_MODE, SwitchCommand.TreeEnable.class);
    return enable instanceof LastWord.Said<SwitchCommand.TreeEnable> said && said.negates()
        ? said.known(TreeMode.Mode.NONE)
        : named;
  }

  private Priority standard() {
    Setting<Integer> value =
        lines.open().isPresent()
            ? Setting.unknown(lines.open().get())
            : dialect.fact(
                SpanningTree.DEFAULT_PRIORITY, "bridge priority " + SpanningTree.DEFAULT_PRIORITY);
    return new Priority(value, Priority.Asked.NUMBER);
  }

  private void take(Statement statement) {
    Command command = statement.command();
    if (command instanceof Command.Unknown unknown && Matter.TREES.doubtedBy(unknown)) {
      garbled("line " + statement.line() + " is not understood", statement);
    } else if (isAboutTrees(command) && lines.doubtOf(statement).isPresent()) {
      garbled(lines.doubtOf(statement).get(), statement);
    } else if (command instanceof SwitchCommand.TreeOfVlans trees) {
      offLines.add(statement.evidence());
      off = statement.form() == Form.NO ? off.plus(trees.vlans()) : off.minus(trees.vlans());
    } else if (command instanceof SwitchCommand.TreePriority line) {
      set(statement, line.scope(), line.priority(), Priority.Asked.NUMBER);
    } else if (command instanceof SwitchCommand.TreeRoot root) {
      set(
          statement,
          root.scope(),
          Optional.of(
              root.primary()
                  ? SpanningTree.ROOT_PRIMARY_PRIORITY
                  : SpanningTree.ROOT_SECONDARY_PRIORITY),
          root.primary() ? Priority.Asked.ROOT_PRIMARY : Priority.Asked.ROOT_SECONDARY);
    }
  }

  private static boolean isAboutTrees(Command command) {
    return command instanceof SwitchCommand.TreeOfVlans
        || command instanceof SwitchCommand.TreePriority
        || command instanceof SwitchCommand.TreeRoot;
  }

  /** A line that may be about any tree leaves all of them open, until a later line is clear. */
  private void garbled(String why, Statement statement) {
    doubt = Optional.of(why);
    offLines.add(statement.evidence());
    Priority open = new Priority(Setting.unknown(why, statement.evidence()), Priority.Asked.NUMBER);
    fill(vlans, open);
    instances.replaceAll((instance, old) -> open);
    priority = open;
  }

  private void set(
      Statement statement, TreeScope scope, Optional<Integer> number, Priority.Asked asked) {
    Evidence line = statement.evidence();
    boolean sets = statement.form() == Form.SET && number.isPresent();
    Priority value =
        sets
            ? new Priority(Setting.known(number.get(), line), asked)
            : new Priority(
                LastWord.behind(
                    line,
                    dialect.fact(
                        SpanningTree.DEFAULT_PRIORITY,
                        "bridge priority " + SpanningTree.DEFAULT_PRIORITY)),
                Priority.Asked.NUMBER);
    if (scope.equals(TreeScope.ALL)) {
      priority = value;
    }
    fill(scope.vlans(), value);
    vlans = vlans.plus(scope.vlans());
    scope.instances().forEach(instance -> instances.put(instance, value));
  }

  private void fill(VlanSet some, Priority value) {
    some.forEachRange((first, last) -> Arrays.fill(ofVlans, first, last + 1, value));
  }

  private SpanningTree finish() {
    boolean perVlan = mode.value().map(PER_VLAN::contains).orElse(true);
    boolean multiple = mode.value().map(TreeMode.Mode.MST::equals).orElse(true);
    return new SpanningTree(
        mode,
        longCosts(),
        perVlan ? offSetting() : noPerVlanTrees(),
        perVlan ? priorities() : new TreeMap<>(),
        multiple ? instances : new TreeMap<>(),
        priority,
        RegionBuilder.build(lines, dialect));
  }

  private NavigableMap<VlanId, Priority> priorities() {
    NavigableMap<VlanId, Priority> priorities = new TreeMap<>();
    vlans.ids().forEach(id -> priorities.put(new VlanId(id), ofVlans[id]));
    return priorities;
  }

  private Setting<VlanSet> offSetting() {
    if (doubt.isPresent()) {
      return new Setting.Unknown<>(doubt.get(), offLines);
    }
    return offLines.isEmpty()
        ? dialect.fact(VlanSet.NONE, "spanning tree on for every VLAN")
        : new Setting.Known<>(off, offLines);
  }

  private Setting<VlanSet> noPerVlanTrees() {
    return Setting.<VlanSet>known(
            VlanSet.NONE,
            new Evidence.Default("per-VLAN lines have no effect in mode " + mode.value().get()))
        .because(mode.evidence());
  }

  private Setting<Boolean> longCosts() {
    boolean multiple = mode.is(TreeMode.Mode.MST);
    Setting<Boolean> fallback =
        multiple
            ? Setting.<Boolean>known(
                    true, new Evidence.Default("multiple spanning tree counts in 32 bits"))
                .because(mode.evidence())
            : dialect
                .defaults()
                .longCosts()
                .map(yes -> dialect.fact(yes, "path costs of " + (yes ? "32" : "16") + " bits"))
                .orElseGet(() -> dialect.differs("the path-cost method"));
    return lines
        .last(Matter.PATH_COST, SwitchCommand.PathCost.class)
        .operand(SwitchCommand.PathCost::isLong, fallback);
  }
}
