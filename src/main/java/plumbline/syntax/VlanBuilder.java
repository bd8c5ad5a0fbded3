package plumbline.syntax;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plumbline.statement.Command;
import plumbline.statement.PortCommand;
import plumbline.statement.SwitchCommand;
import plumbline.syntax.SwitchConfigParser.DatabaseDetailContext;
import plumbline.syntax.SwitchConfigParser.DatabaseHarmlessContext;
import plumbline.syntax.SwitchConfigParser.DatabaseSessionContext;
import plumbline.syntax.SwitchConfigParser.DatabaseSpreadingContext;
import plumbline.syntax.SwitchConfigParser.DatabaseVlansContext;
import plumbline.syntax.SwitchConfigParser.VlanDatabaseHeaderContext;
import plumbline.syntax.SwitchConfigParser.VlanHarmlessContext;
import plumbline.syntax.SwitchConfigParser.VlanHeaderContext;
import plumbline.syntax.SwitchConfigParser.VlanLineContext;
import plumbline.syntax.SwitchConfigParser.VlanMembersContext;
import plumbline.syntax.SwitchConfigParser.VlanNameContext;
import plumbline.syntax.SwitchConfigParser.VlanSessionContext;
import plumbline.syntax.SwitchConfigParser.VlanShutdownContext;
import plumbline.syntax.SwitchConfigParser.VlanStanzaFilterContext;
import plumbline.syntax.SwitchConfigParser.VlanStateContext;
import plumbline.syntax.SwitchConfigParser.VlansContext;

/** Makes commands of the VLAN stanzas and of the block that lists VLANs one a line. */
final class VlanBuilder extends SwitchConfigParserBaseVisitor<Command> {
  /** What may follow a name on its line in the block that lists VLANs. */
  private static final Pattern NAMED =
      Pattern.compile(
          "(?i)(?<name>.*?)(?<details>(?:\\s+(?:state|media|said|mtu)\\s+[a-z0-9]+)*)\\s*");

  private static final Pattern SUSPEND = Pattern.compile("(?i).*\\sstate\\s+sus[a-z]*\\b.*");

  private final Operands operands;

  VlanBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitVlanHeader(VlanHeaderContext line) {
    return new SwitchCommand.Vlans(operands.vlans(line.vlans()));
  }

  @Override
  public Command visitVlanDatabaseHeader(VlanDatabaseHeaderContext line) {
    return new SwitchCommand.VlanDatabaseBlock();
  }

  @Override
  public Command visitVlanName(VlanNameContext line) {
    return new SwitchCommand.VlanName(operands.text(line.text()));
  }

  @Override
  public Command visitVlanState(VlanStateContext line) {
    Optional<Boolean> active =
        line.ACTIVE() == null && line.SUSPEND() == null
            ? Optional.empty()
            : Optional.of(line.ACTIVE() != null);
    return new SwitchCommand.VlanState(operands.needed(active));
  }

  @Override
  public Command visitVlanShutdown(VlanShutdownContext line) {
    return new SwitchCommand.VlanShutdown();
  }

  @Override
  public Command visitVlanStanzaFilter(VlanStanzaFilterContext line) {
    return new SwitchCommand.VlanStanzaFilter(operands.needed(Operands.words(line.tail())));
  }

  @Override
  public Command visitVlanHarmless(VlanHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitVlanMembers(VlanMembersContext line) {
    return new PortCommand.Unmodelled(Operands.source(line.vlanUnmodelled()));
  }

  @Override
  public Command visitVlanSession(VlanSessionContext line) {
    return StatementBuilder.session(line.sessionCommand(), operands);
  }

  @Override
  public Command visitVlanLine(VlanLineContext line) {
    return declared(line.vlans(), line.databaseDetail());
  }

  @Override
  public Command visitDatabaseVlans(DatabaseVlansContext line) {
    return declared(line.vlans(), line.databaseDetail());
  }

  private Command declared(VlansContext vlans, List<DatabaseDetailContext> details) {
    Optional<String> name = Optional.empty();
    boolean suspended = false;
    for (DatabaseDetailContext detail : details) {
      suspended |= detail.SUSPEND() != null;
      if (detail.text() != null) {
        Matcher named = NAMED.matcher(detail.text().getText());
        if (named.matches()) {
          name = operands.name(named.group("name"));
          suspended |= SUSPEND.matcher(named.group("details")).matches();
        }
      }
    }
    return new SwitchCommand.DatabaseVlans(operands.vlans(vlans), name, suspended);
  }

  @Override
  public Command visitDatabaseSpreading(DatabaseSpreadingContext line) {
    return new SwitchBuilder(operands).visit(line.vlanSpreading());
  }

  @Override
  public Command visitDatabaseSession(DatabaseSessionContext line) {
    return StatementBuilder.session(line.sessionCommand(), operands);
  }

  @Override
  public Command visitDatabaseHarmless(DatabaseHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }
}
