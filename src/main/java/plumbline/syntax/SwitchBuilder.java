package plumbline.syntax;

import java.util.Optional;
import java.util.regex.Pattern;
import plumbline.port.PortNames;
import plumbline.statement.Command;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchCommand.SystemMtu;
import plumbline.statement.SwitchCommand.VlanSpreading;
import plumbline.syntax.SwitchConfigParser.HostnameContext;
import plumbline.syntax.SwitchConfigParser.IpRoutingContext;
import plumbline.syntax.SwitchConfigParser.NativeTaggingDefaultContext;
import plumbline.syntax.SwitchConfigParser.OtherBlockContext;
import plumbline.syntax.SwitchConfigParser.PortHeaderContext;
import plumbline.syntax.SwitchConfigParser.QosEnableContext;
import plumbline.syntax.SwitchConfigParser.RoutedDefaultContext;
import plumbline.syntax.SwitchConfigParser.ShutDefaultContext;
import plumbline.syntax.SwitchConfigParser.SpreadingDomainContext;
import plumbline.syntax.SwitchConfigParser.SpreadingHarmlessContext;
import plumbline.syntax.SwitchConfigParser.SpreadingModeContext;
import plumbline.syntax.SwitchConfigParser.SpreadingModeShortContext;
import plumbline.syntax.SwitchConfigParser.SpreadingPruningContext;
import plumbline.syntax.SwitchConfigParser.SwitchHarmlessContext;
import plumbline.syntax.SwitchConfigParser.SwitchedDefaultContext;
import plumbline.syntax.SwitchConfigParser.SystemMtuContext;
import plumbline.syntax.SwitchConfigParser.SystemMtuJumboContext;
import plumbline.syntax.SwitchConfigParser.SystemMtuRoutingContext;
import plumbline.syntax.SwitchConfigParser.UdldDefaultContext;
import plumbline.syntax.SwitchConfigParser.VlanFilterContext;
import plumbline.syntax.SwitchConfigParser.VtpModeContext;
import plumbline.text.Secrets;
import plumbline.vlan.VlanSet;

/** Makes commands of the switch-wide lines and of the headers of ports and unread blocks. */
final class SwitchBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private static final int MAX_MTU = 65535;

  /** Words behind a port's name that say how it is used, not which it is. */
  private static final Pattern USE =
      Pattern.compile("(?i)\\s+(?:multi-chassis|point-to-point|multipoint|l2transport)$");

  private static final Pattern DIGIT = Pattern.compile("[0-9]");

  private final Operands operands;

  SwitchBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitHostname(HostnameContext line) {
    return new SwitchCommand.Hostname(operands.text(line.text()));
  }

  @Override
  public Command visitSpreadingMode(SpreadingModeContext line) {
    // A line about another feature than the VLAN list says nothing of the VLAN list.
    if (line.vtpDatabase() != null && line.vtpDatabase().VLAN() == null) {
      return StatementBuilder.harmless(line);
    }
    return spreading(line.vtpMode());
  }

  @Override
  public Command visitSpreadingDomain(SpreadingDomainContext line) {
    return new SwitchCommand.VlanSpreadingDomain(operands.text(line.text()));
  }

  @Override
  public Command visitSpreadingPruning(SpreadingPruningContext line) {
    return new SwitchCommand.VlanSpreadingPruning();
  }

  @Override
  public Command visitSpreadingModeShort(SpreadingModeShortContext line) {
    return spreading(line.vtpMode());
  }

  private Command spreading(VtpModeContext mode) {
    return new VlanSpreading(
        operands.keyword(mode).map(Operands::constant).map(VlanSpreading.Mode::valueOf));
  }

  @Override
  public Command visitSpreadingHarmless(SpreadingHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitNativeTaggingDefault(NativeTaggingDefaultContext line) {
    return new SwitchCommand.NativeTaggingDefault();
  }

  @Override
  public Command visitVlanFilter(VlanFilterContext line) {
    Optional<VlanSet> vlans =
        line.vlans() != null
            ? Optional.of(operands.vlans(line.vlans()))
            : Optional.ofNullable(line.ALL()).map(all -> VlanSet.ALL);
    return new SwitchCommand.VlanFilter(operands.word(line.word()), operands.needed(vlans));
  }

  @Override
  public Command visitUdldDefault(UdldDefaultContext line) {
    return new SwitchCommand.UdldDefault();
  }

  @Override
  public Command visitSwitchHarmless(SwitchHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitQosEnable(QosEnableContext line) {
    return new SwitchCommand.QosEnable();
  }

  @Override
  public Command visitSystemMtu(SystemMtuContext line) {
    return new SystemMtu(SystemMtu.Kind.ALL, operands.number(line.NUMBER(), 1, MAX_MTU));
  }

  @Override
  public Command visitSystemMtuJumbo(SystemMtuJumboContext line) {
    return new SystemMtu(SystemMtu.Kind.JUMBO, operands.number(line.NUMBER(), 1, MAX_MTU));
  }

  @Override
  public Command visitSystemMtuRouting(SystemMtuRoutingContext line) {
    return new SystemMtu(SystemMtu.Kind.ROUTING, operands.number(line.NUMBER(), 1, MAX_MTU));
  }

  @Override
  public Command visitIpRouting(IpRoutingContext line) {
    return new SwitchCommand.IpRouting();
  }

  @Override
  public Command visitSwitchedDefault(SwitchedDefaultContext line) {
    return new SwitchCommand.SwitchedDefault();
  }

  @Override
  public Command visitShutDefault(ShutDefaultContext line) {
    return new SwitchCommand.ShutDefault();
  }

  @Override
  public Command visitRoutedDefault(RoutedDefaultContext line) {
    operands.invert();
    return new SwitchCommand.SwitchedDefault();
  }

  @Override
  public Command visitPortHeader(PortHeaderContext line) {
    String names =
        Operands.source(line.word(0).getStart(), line.word(line.word().size() - 1).getStop());
    String operand = Optional.ofNullable(line.RANGE()).map(r -> "range " + names).orElse(names);
    PortNames.Reading ports = PortNames.parse(USE.matcher(operand).replaceFirst(""));
    // The head of a table of ports begins like a block but holds no number.
    if (ports instanceof PortNames.Reading.NotAPort && !DIGIT.matcher(operand).find()) {
      operands.refuse();
    }
    // Port names may look like keys to a masker; what names ports holds no secret.
    return new SwitchCommand.Interface(
        ports instanceof PortNames.Reading.Ports ? operand : Secrets.mask(operand), ports);
  }

  @Override
  public Command visitOtherBlock(OtherBlockContext line) {
    return new SwitchCommand.OtherBlock(line.getStart().getText());
  }
}
