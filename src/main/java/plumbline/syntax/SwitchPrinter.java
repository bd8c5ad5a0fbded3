package plumbline.syntax;

import static java.util.Map.entry;
import static plumbline.syntax.PortPrinter.keyword;
import static plumbline.syntax.PortPrinter.operand;
import static plumbline.syntax.PortPrinter.scope;
import static plumbline.syntax.PortPrinter.text;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchCommand.SystemMtu;

/** Writes the commands of the whole switch, without their form, in the order of the grammar. */
final class SwitchPrinter {
  private static final Map<Class<? extends SwitchCommand>, Function<SwitchCommand, String>>
      PRINTERS =
          Map.ofEntries(
              on(SwitchCommand.Hostname.class, c -> "hostname" + text(c.name())),
              on(SwitchCommand.Interface.class, c -> "interface " + c.operand()),
              on(SwitchCommand.Vlans.class, c -> "vlan " + c.vlans()),
              on(SwitchCommand.VlanDatabaseBlock.class, c -> "vlan database"),
              on(SwitchCommand.DatabaseVlans.class, SwitchPrinter::databaseVlans),
              on(SwitchCommand.VlanName.class, c -> "name" + text(c.name())),
              on(
                  SwitchCommand.VlanState.class,
                  c -> "state" + operand(c.active().map(on -> on ? "active" : "suspend"))),
              on(SwitchCommand.VlanShutdown.class, c -> "shutdown"),
              on(
                  SwitchCommand.VlanSpreading.class,
                  c -> "vtp mode" + operand(c.mode().map(m -> keyword(m)))),
              on(SwitchCommand.VlanSpreadingDomain.class, c -> "vtp domain" + text(c.name())),
              on(SwitchCommand.VlanSpreadingPruning.class, c -> "vtp pruning"),
              on(SwitchCommand.NativeTaggingDefault.class, c -> "vlan dot1q tag native"),
              on(
                  SwitchCommand.VlanFilter.class,
                  c ->
                      "vlan filter"
                          + operand(c.map())
                          + operand(c.vlans().map(list -> "vlan-list " + list))),
              on(
                  SwitchCommand.VlanStanzaFilter.class,
                  c -> "ip access-group" + operand(c.operands())),
              on(SwitchCommand.TreeMode.class, c -> "spanning-tree mode" + operand(c.mode())),
              on(SwitchCommand.TreeEnable.class, c -> "spanning-tree"),
              on(SwitchCommand.TreeOfVlans.class, c -> "spanning-tree vlan " + c.vlans()),
              on(
                  SwitchCommand.TreePriority.class,
                  c -> "spanning-tree" + scope(c.scope()) + " priority" + operand(c.priority())),
              on(
                  SwitchCommand.TreeRoot.class,
                  c ->
                      "spanning-tree"
                          + scope(c.scope())
                          + " root "
                          + (c.primary() ? "primary" : "secondary")),
              on(
                  SwitchCommand.PathCost.class,
                  c ->
                      "spanning-tree pathcost method"
                          + operand(c.isLong().map(isLong -> isLong ? "long" : "short"))),
              on(SwitchCommand.RegionBlock.class, c -> "spanning-tree mst configuration"),
              on(
                  SwitchCommand.FastStartDefault.class,
                  c -> "spanning-tree portfast " + keyword(c.kind()) + " default"),
              on(
                  SwitchCommand.BpduGuardDefault.class,
                  c -> "spanning-tree portfast bpduguard default"),
              on(
                  SwitchCommand.BpduFilterDefault.class,
                  c -> "spanning-tree portfast bpdufilter default"),
              on(SwitchCommand.LoopGuardDefault.class, c -> "spanning-tree loopguard default"),
              on(SwitchCommand.UdldDefault.class, c -> "udld enable"),
              on(SwitchCommand.QosEnable.class, c -> "mls qos"),
              on(SwitchCommand.SystemMtu.class, SwitchPrinter::systemMtu),
              on(SwitchCommand.IpRouting.class, c -> "ip routing"),
              on(SwitchCommand.SwitchedDefault.class, c -> "system default switchport"),
              on(SwitchCommand.ShutDefault.class, c -> "system default switchport shutdown"),
              on(SwitchCommand.RegionName.class, c -> "name" + text(c.name())),
              on(SwitchCommand.RegionRevision.class, c -> "revision" + operand(c.revision())),
              on(
                  SwitchCommand.RegionInstance.class,
                  c -> "instance " + c.instance() + operand(c.vlans().map(v -> "vlan " + v))));

  private SwitchPrinter() {}

  private static <T extends SwitchCommand>
      Map.Entry<Class<? extends SwitchCommand>, Function<SwitchCommand, String>> on(
          Class<T> type, Function<T, String> printer) {
    return entry(type, command -> printer.apply(type.cast(command)));
  }

  static String print(SwitchCommand command) {
    return PRINTERS.get(command.getClass()).apply(command);
  }

  private static String databaseVlans(SwitchCommand.DatabaseVlans line) {
    return "vlan "
        + line.vlans()
        + (line.suspended() ? " state suspend" : " state active")
        + operand(line.name().map(name -> "name" + text(Optional.of(name))));
  }

  private static String systemMtu(SystemMtu line) {
    String kind = line.kind() == SystemMtu.Kind.ALL ? "" : " " + keyword(line.kind());
    return "system mtu" + kind + operand(line.octets());
  }
}
