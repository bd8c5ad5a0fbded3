package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.port.PortName;
import plumbline.port.PortNames.Reading;
import plumbline.setting.Evidence;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;

/**
 * Collects the statements of a text by port: stanzas opened again, ranges, {@code default
 * interface} and {@code no interface}; all others stay in one list.
 */
final class Stanzas {
  private static final Evidence ABOVE_PORTS =
      new Evidence.Default("lines for all ports stand above the first port, which the text holds");

  private final SwitchText text;
  private final BreakPoint cut;
  private final NavigableMap<PortName, Stanza> ports = new TreeMap<>();
  private final NavigableMap<PortName, Lines> lines = new TreeMap<>();
  private final NavigableMap<PortName, Evidence.Line> removed = new TreeMap<>();
  private final NavigableMap<PortName, String> doubts = new TreeMap<>();
  private final List<Statement> others = new ArrayList<>();
  private final List<Evidence.Line> doubtfulHeaders = new ArrayList<>();
  private List<Stanza> open = List.of();
  private List<Stanza> closed = List.of();
  private boolean exited;
  private final List<UnknownLine> unknownElsewhere = new ArrayList<>();

  private Stanzas(SwitchText text) {
    this.text = text;
    this.cut = new BreakPoint(text);
  }

  /** Collects a text's statements. */
  static Stanzas of(SwitchText text) {
    Stanzas stanzas = new Stanzas(text);
    stanzas.walk();
    stanzas.ports.forEach((name, stanza) -> stanzas.lines.put(name, stanzas.lines(stanza)));
    return stanzas;
  }

  /** What stands in one port's stanzas. */
  private static final class Stanza {
    private final Evidence.Line header;
    private final List<Statement> statements = new ArrayList<>();
    private Optional<Evidence> origin = Optional.empty();
    private Optional<String> doubt = Optional.empty();

    Stanza(Evidence.Line header) {
      this.header = header;
    }
  }

  private void walk() {
    boolean whole = true;
    for (Statement statement : text.statements()) {
      if (closes(statement)) {
        closed = open.isEmpty() ? closed : open;
        open = List.of();
      } else if (statement.command() instanceof Command.Exit) {
        exited = true;
      }
      if (whole && cut.holds(statement.line())) {
        whole = false;
        breakOff();
      }
      take(statement);
    }
    if (whole && text.truncation().isPresent()) {
      breakOff();
    }
  }

  private void breakOff() {
    if (!exited) {
      open.forEach(stanza -> stanza.doubt = text.truncation().map(SwitchTexts::breaksOff));
    }
  }

  /**
   * Says whether a statement ends the stanza above it. Lines that are not read do not, whatever
   * their depth, nor does an {@code exit} below which the port's lines go on.
   */
  private static boolean closes(Statement statement) {
    if (statement.command() instanceof Command.Layout) {
      return BreakPoint.isBanner(statement);
    }
    return statement.context() == Context.TOP || statement.command() instanceof Command.End;
  }

  private void take(Statement statement) {
    Command command = statement.command();
    if (command instanceof SwitchCommand.Interface header) {
      header(statement, header);
    } else if (statement.context() == Context.PORT) {
      ofPort(statement);
    } else if (command instanceof Command.Unknown unknown) {
      unknownElsewhere.add(new UnknownLine(statement.line(), unknown.firstWord()));
      if (isAboutSomePort(unknown)) {
        doubtfulHeaders.add(statement.evidence());
      }
      others.add(statement);
    } else if (!(command instanceof Command.Layout)) {
      others.add(statement);
    }
  }

  private void ofPort(Statement statement) {
    if (statement.command() instanceof Command.Layout) {
      return;
    }
    if (statement.command() instanceof Command.Unknown unknown && isLostHeader(unknown)) {
      putInDoubt(statement, "line " + statement.line() + " may be what is left of a header");
    } else if (open.isEmpty() && !closed.isEmpty()) {
      open = closed;
      putInDoubt(statement, "line " + statement.line() + " stands apart from its header");
    }
    exited &= statement.command() instanceof Command.Exit;
    open.forEach(stanza -> stanza.statements.add(statement));
    if (open.isEmpty() && statement.command() instanceof Command.Unknown unknown) {
      unknownElsewhere.add(new UnknownLine(statement.line(), unknown.firstWord()));
    }
  }

  /** What follows may be of this port or of one whose header is lost: neither is known. */
  private void putInDoubt(Statement statement, String why) {
    doubtfulHeaders.add(statement.evidence());
    for (Stanza stanza : open) {
      stanza.doubt = stanza.doubt.or(() -> Optional.of(why));
    }
  }

  private static boolean isLostHeader(Command.Unknown unknown) {
    return SwitchingLines.mayBegin(unknown, "interface");
  }

  /** A garbled header, or a port's line under a header that is lost. */
  private static boolean isAboutSomePort(Command.Unknown unknown) {
    return SwitchingLines.mayBegin(unknown, "interface")
        || SwitchingLines.mayBegin(unknown, "switchport");
  }

  private void header(Statement statement, SwitchCommand.Interface header) {
    closed = List.of();
    exited = false;
    if (!(header.ports() instanceof Reading.Ports named)) {
      doubtfulHeaders.add(statement.evidence());
      AmbiguousHeader.meanings(header.operand()).forEach(name -> doubt(name, statement));
      return;
    }
    List<PortName> names = named.names().stream().distinct().toList();
    if (statement.form() == Form.SET) {
      open = names.stream().map(name -> reopened(name, statement)).toList();
    } else {
      names.forEach(name -> undo(name, statement));
    }
  }

  /** The lines under such a header, or their undoing, may be about a port of that name. */
  private void doubt(PortName name, Statement header) {
    String why = "the interface header in line " + header.line() + " may name this port";
    if (header.form() == Form.SET) {
      doubts.putIfAbsent(name, why);
    }
    Stanza stanza = ports.get(name);
    if (stanza != null) {
      stanza.doubt = stanza.doubt.or(() -> Optional.of(why));
    }
  }

  private Stanza reopened(PortName name, Statement statement) {
    Stanza stanza = ports.computeIfAbsent(name, key -> opened(key, statement));
    Evidence.Line gone = removed.remove(name);
    if (gone != null && stanza.origin.isEmpty()) {
      stanza.origin = Optional.of(gone);
    }
    return stanza;
  }

  private Stanza opened(PortName name, Statement statement) {
    Stanza stanza = new Stanza(statement.evidence());
    stanza.doubt = Optional.ofNullable(doubts.get(name));
    if (cut.holds(statement.line())) {
      stanza.doubt = text.truncation().map(SwitchTexts::breaksOff);
    }
    return stanza;
  }

  private void undo(PortName name, Statement statement) {
    boolean physical = name.kind().isPhysical() && name.sub().isEmpty();
    if (cut.holds(statement.line())) {
      ports.computeIfAbsent(name, key -> opened(key, statement)).doubt =
          text.truncation().map(SwitchTexts::breaksOff);
    } else if (statement.form() == Form.NO && !physical) {
      ports.remove(name);
      removed.put(name, statement.evidence());
    } else {
      Stanza stanza = ports.computeIfAbsent(name, key -> opened(key, statement));
      stanza.statements.clear();
      stanza.origin = Optional.of(statement.evidence());
    }
  }

  /** The ports that the text opens. */
  SortedMap<PortName, Lines> ports() {
    return lines;
  }

  private Lines lines(Stanza stanza) {
    Optional<Inheritance> inherited = Inheritance.of(stanza.statements);
    Optional<String> silence =
        text.script() && stanza.origin.isEmpty()
            ? Optional.of(SwitchTexts.SCRIPT)
            : inherited.map(Inheritance::why);
    return new Lines(
        stanza.statements, silence, stanza.origin, stanza.doubt, inherited, text.truncation());
  }

  /** The line that first opens a port of {@link #ports()}. */
  Evidence.Line header(PortName name) {
    return ports.get(name).header;
  }

  /** The statements outside ports, in order: the switch's own, its VLANs' and its region's. */
  Lines others() {
    Optional<String> silence =
        text.script()
            ? Optional.of(SwitchTexts.SCRIPT)
            : text.truncation().map(SwitchTexts::breaksOff);
    return new Lines(
        others, silence, Optional.empty(), Optional.empty(), Optional.empty(), text.truncation());
  }

  /**
   * The same statements, read for what holds for all ports. A text that breaks off is silent on
   * that where its dialect prints such lines above the first port and a port stands before the
   * break.
   */
  Lines globals(Dialect dialect) {
    return text.script() || !dialect.printsGlobalsFirst() || !cut.isBelowPort()
        ? others()
        : others().heard(ABOVE_PORTS);
  }

  /** Virtual ports that the text removes for good, with the line that does. */
  SortedMap<PortName, Evidence.Line> removed() {
    return removed;
  }

  /** Headers that name no clear port. */
  List<Evidence.Line> doubtfulHeaders() {
    return doubtfulHeaders;
  }

  /** Unknown statements outside the ports, in order. */
  List<UnknownLine> unknownElsewhere() {
    return unknownElsewhere;
  }
}
