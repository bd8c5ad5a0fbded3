package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchCommand.VlanSpreading;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Builds the VLAN database from the stanzas, and decides whether the text holds all of it. */
final class VlanDatabaseBuilder {
  private final Lines lines;
  private final Dialect dialect;
  private final VlanTable table = new VlanTable();
  private final List<Evidence> garbled = new ArrayList<>();
  private VlanSet doubtful = VlanSet.NONE;
  private VlanSet open = VlanSet.NONE;
  private Optional<Evidence> firstStanza = Optional.empty();
  private boolean broken;

  private VlanDatabaseBuilder(Lines lines, Dialect dialect) {
    this.lines = lines;
    this.dialect = dialect;
  }

  /** Reads the lines outside ports, and the VLAN interfaces for names. */
  static VlanDatabase build(Lines lines, SortedMap<PortName, Lines> ports, Dialect dialect) {
    VlanDatabaseBuilder builder = new VlanDatabaseBuilder(lines, dialect);
    lines.statements().forEach(builder::take);
    builder.breakOff(Integer.MAX_VALUE);
    ports.forEach(builder::nameInside);
    return builder.finish();
  }

  private void add(VlanSet vlans, Evidence stanza) {
    if (lines.isScript()) {
      table.add(
          vlans,
          Setting.unknown(SwitchTexts.SCRIPT, stanza),
          Setting.unknown(SwitchTexts.SCRIPT, stanza));
    } else {
      table.add(
          vlans,
          dialect.nothing("no VLAN name"),
          Setting.known(true, stanza, dialect.because("VLANs are active")));
    }
  }

  private void take(Statement statement) {
    Command command = statement.command();
    Context context = statement.context();
    if (context != Context.VLAN) {
      open = VlanSet.NONE;
    }
    breakOff(statement.line());
    if (command instanceof Command.Unknown unknown) {
      garbled(statement, unknown);
    } else if (command instanceof SwitchCommand.Vlans vlans) {
      declare(statement, vlans.vlans());
      open = statement.form() == Form.SET ? vlans.vlans() : VlanSet.NONE;
    } else if (command instanceof SwitchCommand.DatabaseVlans vlans) {
      declare(statement, vlans.vlans());
      if (statement.form() == Form.SET) {
        databaseLine(vlans, statement);
      }
    } else if (command instanceof SwitchCommand.VlanName name) {
      table.name(open, named(name.name(), statement));
    } else if (command instanceof SwitchCommand.VlanState state) {
      boolean active = statement.form() != Form.SET || state.active().orElse(true);
      table.state(open, decided(active, statement));
    } else if (command instanceof SwitchCommand.VlanShutdown) {
      if (statement.form() == Form.SET) {
        table.shut(open, statement.evidence());
      } else {
        table.open(open);
      }
    }
  }

  /** Some dialects write the VLAN's name inside its interface. */
  private void nameInside(PortName port, Lines inside) {
    if (port.kind() != PortKind.VLAN || !VlanId.isValid(port.lastNumber())) {
      return;
    }
    LastWord<PortCommand.InterfaceVlanName> last =
        inside.last(Matter.VLAN_NAME, PortCommand.InterfaceVlanName.class);
    if (last instanceof LastWord.Said<PortCommand.InterfaceVlanName> said && said.sets()) {
      table.name(VlanSet.of(port.lastNumber()), named(said.command().name(), said.statement()));
    }
  }

  /** The stanza that stands open where the text breaks off may lack its state line. */
  private void breakOff(int line) {
    lines
        .truncation()
        .filter(cut -> !broken && line >= cut.line())
        .ifPresent(
            cut -> {
              broken = true;
              table.state(open, Setting.unknown(SwitchTexts.breaksOff(cut)));
            });
  }

  private void garbled(Statement statement, Command.Unknown unknown) {
    if (isGarbledHeader(statement, unknown)) {
      garbled.add(statement.evidence());
      open = VlanSet.NONE;
    }
    if (statement.context() == Context.VLAN
        && unknown.variants().stream()
            .anyMatch(words -> words.contains("state") || words.contains("shutdown"))) {
      table.state(
          open,
          Setting.unknown("line " + statement.line() + " is not understood", statement.evidence()));
    }
  }

  /** Inside a stanza the word stands for a header too: what follows belongs to no known VLAN. */
  private static boolean isGarbledHeader(Statement statement, Command.Unknown unknown) {
    if (statement.context() == Context.VLAN && unknown.understood().isEmpty()) {
      String word = unknown.firstWord().toLowerCase(Locale.ROOT);
      return word.length() > 1 && "vlan".startsWith(word);
    }
    return unknown.variants().contains(List.of("vlan"));
  }

  private void declare(Statement statement, VlanSet vlans) {
    if (lines.doubtOf(statement).isPresent()) {
      VlanSet changed = statement.form() == Form.SET ? vlans.minus(table.present()) : vlans;
      table.forget(changed);
      doubtful = doubtful.plus(changed);
      return;
    }
    if (statement.form() == Form.SET) {
      firstStanza = firstStanza.or(() -> Optional.of(statement.evidence()));
      add(vlans, statement.evidence());
    } else {
      table.remove(vlans, statement.evidence());
    }
  }

  private void databaseLine(SwitchCommand.DatabaseVlans line, Statement statement) {
    line.name()
        .ifPresent(name -> table.name(line.vlans(), Setting.known(name, statement.evidence())));
    if (line.suspended()) {
      table.state(line.vlans(), decided(false, statement));
    }
  }

  private Setting<Boolean> decided(boolean active, Statement statement) {
    return lines
        .doubtOf(statement)
        .map(why -> Setting.<Boolean>unknown(why, statement.evidence()))
        .orElseGet(() -> Setting.known(active, statement.evidence()));
  }

  private Setting<String> named(Optional<String> name, Statement statement) {
    if (statement.form() != Form.SET || name.isEmpty()) {
      return Setting.absent(statement.evidence());
    }
    return lines
        .doubtOf(statement)
        .map(why -> Setting.<String>unknown(why, statement.evidence()))
        .orElseGet(() -> Setting.known(name.get(), statement.evidence()));
  }

  private VlanDatabase finish() {
    NavigableMap<VlanId, VlanDatabase.Entry> entries = new TreeMap<>();
    entries.put(
        VlanId.DEFAULT,
        new VlanDatabase.Entry(
            VlanId.DEFAULT,
            dialect.nothing("no VLAN name"),
            dialect.fact(true, "VLAN 1 always exists")));
    table.putInto(entries);
    Reason reason = reason();
    return new VlanDatabase(
        reason.known(),
        reason.why(),
        reason.evidence(),
        entries,
        table.removed(),
        doubtful.minus(VlanSet.of(1)));
  }

  private record Reason(boolean known, String why, List<Evidence> evidence) {}

  private Reason reason() {
    LastWord<VlanSpreading> spreading = lines.last(Matter.SPREADING, VlanSpreading.class);
    Optional<String> incomplete = lines.open();
    if (incomplete.isPresent()) {
      return new Reason(false, incomplete.get(), List.of());
    }
    if (!garbled.isEmpty()) {
      return new Reason(false, "a VLAN line is not understood", garbled);
    }
    if (dialect.defaults().vlansInText()) {
      return new Reason(true, "a " + dialect + " text holds the VLAN list", List.of());
    }
    if (spreading instanceof LastWord.Open<VlanSpreading> open) {
      return new Reason(false, open.why(), open.evidence());
    }
    Optional<VlanSpreading.Mode> mode =
        spreading instanceof LastWord.Said<VlanSpreading> said && said.sets()
            ? said.command().mode()
            : Optional.empty();
    List<Evidence> line =
        spreading instanceof LastWord.Said<VlanSpreading> said
            ? List.of(said.statement().evidence())
            : List.of();
    if (mode.isPresent()) {
      return switch (mode.get()) {
        case TRANSPARENT, OFF -> new Reason(true, "the switch keeps a list of its own", line);
        case SERVER, CLIENT ->
            new Reason(false, "a server or client keeps its VLAN list outside the config", line);
      };
    }
    return firstStanza
        .map(
            stanza ->
                new Reason(
                    true,
                    "the text has VLAN stanzas and no server or client line",
                    List.of(stanza)))
        .orElse(
            new Reason(
                false, "the text has no VLAN stanza and does not say who keeps the list", line));
  }
}
