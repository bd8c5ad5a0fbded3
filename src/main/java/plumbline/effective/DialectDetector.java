package plumbline.effective;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.port.PortNames.Reading;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;
import plumbline.vlan.VlanId;

/** Tells a text's dialect by what only one of them writes (common practice, no source). */
final class DialectDetector {
  private static final Pattern TWO_WORDS =
      Pattern.compile("(?<kind>\\p{Alpha}[\\p{Alpha}-]*)\\s+[0-9].*");
  private static final Pattern PORT_TYPE =
      Pattern.compile("(no |default )?sp\\S* port ty.*", Pattern.CASE_INSENSITIVE);

  private DialectDetector() {}

  /**
   * The dialect and the reason, a clause.
   *
   * @param dialect which
   * @param reason why
   */
  record Detected(Dialect dialect, String reason) {}

  /** One mark of a dialect; the first that a text bears decides. */
  private record Mark(Dialect dialect, String reason, Predicate<Statement> on) {}

  private static final List<Mark> MARKS =
      List.of(
          new Mark(Dialect.DATA_CENTRE, "`feature` lines", line -> begins(line, "feature")),
          new Mark(
              Dialect.DATA_CENTRE,
              "the management port is called mgmt0",
              line -> opens(line, DialectDetector::isManagementZero)),
          new Mark(
              Dialect.TWO_WORD,
              "port lines that set VLAN and mode at once",
              line -> setsMode(line.command())),
          new Mark(
              Dialect.TWO_WORD,
              "ports that are numbers only",
              line -> opens(line, port -> port.kind() == PortKind.NUMBERED)),
          new Mark(
              Dialect.TWO_WORD,
              "bundles called lag",
              line -> opens(line, port -> port.kind() == PortKind.LAG)),
          new Mark(
              Dialect.CAMPUS,
              "trunk negotiation or encapsulation lines",
              line -> isCampus(line.command())),
          new Mark(
              Dialect.DATA_CENTRE,
              "`spanning-tree port type` lines",
              line ->
                  line.command() instanceof PortCommand.FastStart
                      && PORT_TYPE.matcher(line.meaning().quote()).matches()),
          new Mark(
              Dialect.LEAF_SPINE,
              "ports called Ethernet with one number",
              line ->
                  opens(
                      line,
                      port -> port.kind() == PortKind.ETHERNET && port.numbers().size() == 1)));

  /** Detects the dialect; one that a design names is taken as it is. */
  static Detected detect(SwitchText text, Optional<Dialect> override) {
    if (override.isPresent()) {
      return new Detected(override.get(), "the design names it");
    }
    for (Mark mark : MARKS) {
      Optional<Statement> bearer = text.statements().stream().filter(mark.on()).findFirst();
      if (bearer.isPresent()) {
        return new Detected(mark.dialect(), mark.reason() + ", line " + bearer.get().line());
      }
    }
    if (!text.script() && writesTwoWords(text)) {
      return new Detected(Dialect.TWO_WORD, "port names of two words throughout");
    }
    if (!text.script() && namesNoSpeed(text)) {
      Optional<Statement> list =
          text.statements().stream().filter(DialectDetector::listsVlanOne).findFirst();
      if (list.isPresent()) {
        return new Detected(
            Dialect.DATA_CENTRE, "a VLAN list that names VLAN 1, line " + list.get().line());
      }
      if (countsSlotsFromOne(text)
          && text.statements().stream().noneMatch(DialectDetector::isNoDataCentreLine)) {
        return new Detected(
            Dialect.DATA_CENTRE, "ports called Ethernet throughout, in slots from 1 on");
      }
    }
    return new Detected(Dialect.CAMPUS, "no line that only another dialect writes");
  }

  private static boolean begins(Statement line, String keyword) {
    return (line.command() instanceof Command.Harmless harmless
            && harmless.keyword().equals(keyword))
        || (line.command() instanceof Command.Unknown unknown
            && unknown.firstWord().equals(keyword));
  }

  private static boolean opens(Statement line, Predicate<PortName> isSo) {
    return line.command() instanceof SwitchCommand.Interface header
        && header.ports() instanceof Reading.Ports named
        && named.names().stream().anyMatch(isSo);
  }

  private static boolean isManagementZero(PortName port) {
    return port.kind() == PortKind.MANAGEMENT && port.numbers().equals(List.of(0));
  }

  private static boolean setsMode(Command command) {
    return (command instanceof PortCommand.AccessVlan access && access.setsMode())
        || (command instanceof PortCommand.NativeVlan vlan && vlan.setsMode())
        || (command instanceof PortCommand.Allowed allowed && allowed.setsMode());
  }

  private static boolean isCampus(Command command) {
    return command instanceof PortCommand.Nonegotiate
        || command instanceof PortCommand.TrunkEncapsulation
        || (command instanceof PortCommand.Mode mode
            && mode.kind()
                .filter(
                    kind ->
                        kind == PortCommand.Mode.Kind.DYNAMIC_AUTO
                            || kind == PortCommand.Mode.Kind.DYNAMIC_DESIRABLE)
                .isPresent());
  }

  private static boolean writesTwoWords(SwitchText text) {
    List<Statement> headers =
        text.statements().stream()
            .filter(line -> opens(line, port -> port.kind().isPhysical()))
            .toList();
    return !headers.isEmpty() && headers.stream().allMatch(DialectDetector::isTwoWords);
  }

  private static List<PortName> cabledPorts(SwitchText text) {
    return text.statements().stream()
        .map(Statement::command)
        .flatMap(
            command ->
                command instanceof SwitchCommand.Interface header
                        && header.ports() instanceof Reading.Ports named
                    ? named.names().stream()
                    : Stream.empty())
        .filter(port -> port.kind().isPhysical() && port.kind() != PortKind.MANAGEMENT)
        .toList();
  }

  private static boolean namesNoSpeed(SwitchText text) {
    return cabledPorts(text).stream().allMatch(port -> port.kind() == PortKind.ETHERNET);
  }

  /** Other dumps leave VLAN 1 out of the list or give it a stanza of its own. */
  private static boolean listsVlanOne(Statement line) {
    return line.form() == Form.SET
        && line.command() instanceof SwitchCommand.Vlans list
        && list.vlans().contains(VlanId.DEFAULT)
        && list.vlans().size() > 1;
  }

  /**
   * Data-centre dumps say {@code port type} of edge ports and {@code port-channel} of bundles;
   * leaf-spine dumps whose ports are all split in lanes write neither so.
   */
  private static boolean isNoDataCentreLine(Statement line) {
    return (line.command() instanceof PortCommand.FastStart
            && !PORT_TYPE.matcher(line.meaning().quote()).matches())
        || (line.command() instanceof SwitchCommand.Interface header
            && (header.operand().startsWith("Port-")
                || opens(line, port -> port.kind() == PortKind.MANAGEMENT)));
  }

  /** Emulated campus switches call their ports so too, but count slots and ports from 0. */
  private static boolean countsSlotsFromOne(SwitchText text) {
    List<PortName> ports = cabledPorts(text);
    return !ports.isEmpty()
        && ports.stream()
            .allMatch(port -> port.numbers().size() > 1 && !port.numbers().contains(0));
  }

  /** A kind in full, a blank and a number: an abbreviation is typed by hand, not printed. */
  private static boolean isTwoWords(Statement header) {
    Matcher words = TWO_WORDS.matcher(((SwitchCommand.Interface) header.command()).operand());
    return words.matches()
        && opens(header, port -> port.kind().fullName().equalsIgnoreCase(words.group("kind")));
  }
}
