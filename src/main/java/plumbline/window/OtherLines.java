package plumbline.window;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.effective.Gateway;
import plumbline.effective.SwitchSettings;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.setting.Keys;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.LineMarks;
import plumbline.statement.MarkedText;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;

/**
 * The lines of a text that no setting that is compared speaks of, by section: what the grammar does
 * not know, blocks that are not read, and what is known and has no bearing. Kept are marks and
 * first words, never the lines.
 */
public final class OtherLines {
  /** The setting that says whether a packet filter stands on a gateway; not which. */
  static final String PACKET_FILTER = "packet-filter";

  private static final String OUTSIDE = "outside every block";

  private final Map<String, Section> sections = new LinkedHashMap<>();
  private final Map<Integer, String> ports = new HashMap<>();
  private final Map<String, Set<Long>> marks = new HashMap<>();

  private OtherLines() {}

  /**
   * A part of the text.
   *
   * @param title its header as it may be quoted
   * @param ordered whether the order of its lines counts
   * @param lines in the order of the text
   */
  record Section(String title, boolean ordered, List<Line> lines) {}

  /**
   * One line.
   *
   * @param mark tells it from others
   * @param firstWord its first word where it is not understood; else empty
   * @param harmless whether it is known to have no bearing, or the design says so
   * @param port the port whose stanza it stands in; empty text outside
   * @param speaksFor the setting of which it says more than is compared; else empty
   */
  record Line(long mark, String firstWord, boolean harmless, String port, String speaksFor) {}

  /**
   * The lines of one switch.
   *
   * @param vouched patterns of unknown statements that the design vouches for
   */
  public static OtherLines of(MarkedText marked, SwitchSettings settings, List<String> vouched) {
    OtherLines lines = new OtherLines();
    new Walk(lines, marked.marks(), settings, vouched).walk(marked.text().statements());
    return lines;
  }

  /** The sections by a key that is the same on both sides of a window. */
  Map<String, Section> sections() {
    return sections;
  }

  /** The ports in whose stanza a line stands; empty text for a line outside of all. */
  String portsOf(int line) {
    return ports.getOrDefault(line, "");
  }

  /** Whether some line of these ports, or outside of all, has the mark. */
  boolean has(String portsOfLine, long mark) {
    return marks.getOrDefault(portsOfLine, Set.of()).contains(mark);
  }

  /** One way through the statements, which knows the block that it is in. */
  private static final class Walk {
    private final OtherLines lines;
    private final LineMarks marks;
    private final Set<PortName> gateways;
    private final List<String> vouched;
    private List<PortName> ports = List.of();
    private String allPorts = List.of().toString();
    private String block = OUTSIDE;
    private long header;

    Walk(OtherLines lines, LineMarks marks, SwitchSettings settings, List<String> vouched) {
      this.lines = lines;
      this.vouched = vouched;
      this.marks = marks;
      this.gateways =
          settings.gateways().stream().map(Gateway::port).collect(Collectors.toUnmodifiableSet());
    }

    void walk(List<Statement> statements) {
      for (Statement statement : statements) {
        if (!(statement.command() instanceof Command.Layout)) {
          enter(statement);
        }
        note(statement);
        take(statement);
      }
    }

    private void note(Statement statement) {
      boolean inPort = statement.context() == Context.PORT;
      String where = inPort ? allPorts : "";
      for (int line = statement.line(); line <= statement.lastLine(); line++) {
        if (inPort) {
          lines.ports.put(line, where);
        }
        lines.marks.computeIfAbsent(where, any -> new HashSet<>()).add(marks.of(line));
      }
    }

    private void enter(Statement statement) {
      if (statement.context() != Context.TOP) {
        return;
      }
      Command command = statement.command();
      if (statement.form() == Form.SET && command instanceof SwitchCommand.Interface opened) {
        ports =
            opened.ports() instanceof PortNames.Reading.Ports named
                ? named.names().stream().distinct().toList()
                : List.of();
        allPorts = ports.toString();
      }
      block = statement.meaning().quote();
      header = marks.of(statement.line());
    }

    private void take(Statement statement) {
      Command command = statement.command();
      if (command instanceof Command.Layout layout) {
        switch (layout.kind()) {
          case BANNER -> all(statement, "banner", true, "");
          case BLOB -> all(statement, "key or certificate data", true, "");
          case BLANK, COMMENT, NOISE -> {}
        }
        return;
      }
      if (command instanceof Command.Exit || command instanceof Command.End) {
        return;
      }
      switch (statement.context()) {
        case PORT -> ofPort(statement);
        case OTHER -> all(statement, block + " #" + header, true, "");
        case TOP -> {
          if (isLeft(command)) {
            all(statement, OUTSIDE, false, "");
          }
        }
        case VLAN, VLAN_DATABASE, MST -> {
          if (isLeft(command)) {
            all(statement, block, false, "");
          }
        }
      }
    }

    private static boolean isLeft(Command command) {
      return command instanceof Command.Unknown
          || command instanceof Command.Harmless
          || command instanceof SwitchCommand.OtherBlock
          || command instanceof SwitchCommand.VlanSpreading
          || command instanceof SwitchCommand.VlanSpreadingDomain
          || command instanceof SwitchCommand.VlanSpreadingPruning;
    }

    private void ofPort(Statement statement) {
      if (ports.isEmpty()) {
        all(statement, block, false, "");
      }
      for (PortName port : ports) {
        if (isLeftOfPort(statement.command(), port)) {
          all(statement, "interface " + port, false, speaksFor(statement.command()));
        }
      }
    }

    private boolean isLeftOfPort(Command command, PortName port) {
      if (command instanceof PortCommand.Address || command instanceof PortCommand.Unnumbered) {
        return !gateways.contains(port);
      }
      if (command instanceof PortCommand.Redundancy line) {
        return !gateways.contains(port)
            || line.attribute() == PortCommand.Redundancy.Attribute.TRACK
            || line.attribute() == PortCommand.Redundancy.Attribute.OTHER;
      }
      return command instanceof Command.Unknown
          || command instanceof Command.Harmless
          || command instanceof PortCommand.Pruning
          || command instanceof PortCommand.TrunkEncapsulation
          || command instanceof PortCommand.Unmodelled
          || command instanceof PortCommand.Inherit
          || !speaksFor(command).isEmpty();
    }

    /** Storm control and packet filters are compared as being there or not. */
    private static String speaksFor(Command command) {
      if (command instanceof PortCommand.StormControl) {
        return Keys.STORM_CONTROL.name();
      }
      return command instanceof PortCommand.AccessGroup ? PACKET_FILTER : "";
    }

    private void all(Statement statement, String key, boolean ordered, String speaksFor) {
      int stop = key.lastIndexOf(" #");
      String title = stop < 0 ? key : key.substring(0, stop);
      Section section =
          lines.sections.computeIfAbsent(
              key, any -> new Section(title, ordered, new ArrayList<>()));
      String word =
          statement.command() instanceof Command.Unknown unknown ? unknown.firstWord() : "";
      String port = key.startsWith("interface ") ? key.substring("interface ".length()) : "";
      for (int line = statement.line(); line <= statement.lastLine(); line++) {
        long mark = marks.of(line);
        if (mark != 0) {
          section.lines().add(new Line(mark, word, isHarmless(statement), port, speaksFor));
        }
      }
    }

    private boolean isHarmless(Statement statement) {
      Command command = statement.command();
      return command instanceof Command.Layout
          || (command instanceof Command.Harmless && statement.context() != Context.OTHER)
          || (command instanceof Command.Unknown unknown
              && vouched.stream().anyMatch(unknown.text()::matches));
    }
  }
}
