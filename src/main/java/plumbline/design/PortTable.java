package plumbline.design;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.port.PortNames.Reading;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** The ports that a design covers; each has one place in it. */
final class PortTable {
  private static final int MOST_PORTS = 4096;

  /** A range, with the numbers that count in it. */
  private static final Pattern RANGE =
      Pattern.compile(
          "(?<start>(?:[^,-]*[^0-9,-])?)(?<from>[0-9]{1,6})"
              + "(?<between>\\s*-\\s*(?:[^,-]*[^0-9,-])?)(?<to>[0-9]{1,6})\\s*");

  private final SwitchTable switches;
  private final Problems problems;
  private final Map<String, Map<PortName, DesignPort>> ports = new LinkedHashMap<>();

  PortTable(SwitchTable switches, Problems problems) {
    this.switches = switches;
    this.problems = problems;
  }

  /**
   * A port of a switch, as a design names it.
   *
   * @param switchName name of the switch in the design
   * @param port canonical name
   * @param at the word that names the port
   */
  record Target(String switchName, PortName port, Position at) {}

  /** Reads a switch and a port, such as {@code north-sw1 Gi1/0/18}; what is wrong is reported. */
  Optional<Target> target(Node.Scalar words) {
    String text = words.text();
    int blank = text.indexOf(' ');
    String name = text.substring(0, blank);
    String port = text.substring(blank).strip();
    Position at = words.at(text.indexOf(port, blank));
    Optional<PortName> read = one(name, port, at);
    return switches.isKnown(name, words.at())
        ? read.map(known -> new Target(name, known, at))
        : Optional.empty();
  }

  /** Reads the name of one port of a switch; what is wrong is reported. */
  Optional<PortName> one(String switchName, String text, Position at) {
    List<PortName> read = many(switchName, text, at);
    if (read.size() > 1) {
      problems.add(at, Wording.quote(text) + " names " + read.size() + " ports; expected one");
      return Optional.empty();
    }
    return read.stream().findFirst();
  }

  /** Reads the names of one or several ports of a switch; empty when something is wrong. */
  List<PortName> many(String switchName, String text, Position at) {
    Reading reading = text.length() > 1000 ? new Reading.NotAPort() : PortNames.parse(text);
    if (reading instanceof Reading.Ambiguous ambiguous) {
      problems.add(
          at,
          Wording.quote(ambiguous.word())
              + " can be several kinds of port; expected "
              + Wording.alternatives(ambiguous.kinds()));
      return List.of();
    }
    if (!(reading instanceof Reading.Ports named) || named.names().size() > MOST_PORTS) {
      problems.add(
          at,
          forwards(text)
              .map(
                  right ->
                      Wording.quote(text) + " runs backwards; expected " + Wording.quote(right))
              .orElseGet(
                  () -> Wording.quote(text) + " is no port; expected a name such as \"Gi1/0/1\""));
      return List.of();
    }
    for (PortName port : named.names()) {
      Optional<String> fault = fault(switchName, port);
      if (fault.isPresent()) {
        problems.add(at, fault.get());
        return List.of();
      }
    }
    return named.names();
  }

  /** A range with its two ends exchanged, where that makes it one. */
  private static Optional<String> forwards(String text) {
    Matcher range = RANGE.matcher(text);
    if (text.length() > 1000 || !range.matches()) {
      return Optional.empty();
    }
    String turned =
        range.group("start") + range.group("to") + range.group("between") + range.group("from");
    return Optional.of(turned).filter(one -> PortNames.parse(one) instanceof Reading.Ports);
  }

  private Optional<String> fault(String switchName, PortName port) {
    if (port.sub().isPresent()) {
      return Optional.of(
          Wording.quote(port.toString())
              + " is part of a port; expected "
              + Wording.quote(port.parent().toString()));
    }
    if (!port.kind().isPhysical() && !port.kind().isBundle()) {
      return Optional.of(
          Wording.quote(port.toString()) + " cannot be cabled; expected a port or a bundle");
    }
    DesignSwitch owner = switches.all().get(switchName);
    // Ports of stacked gear are numbered member/module/port (common practice, no source).
    if (owner != null
        && !owner.stack().isEmpty()
        && port.numbers().size() == 3
        && !owner.stack().contains(port.numbers().get(0))) {
      return Optional.of(
          Wording.quote(port.toString())
              + " is on stack member "
              + port.numbers().get(0)
              + "; the stack of "
              + Wording.quote(switchName)
              + " has "
              + Wording.alternatives(owner.stack().stream().map(String::valueOf).toList())
                  .replace(" or ", " and "));
    }
    return Optional.empty();
  }

  /** The port as the design has it so far. */
  Optional<DesignPort> covered(String switchName, PortName port) {
    return Optional.ofNullable(ports.getOrDefault(switchName, Map.of()).get(port));
  }

  /**
   * Gives ports their place in the design. A port that has one already is reported with both
   * places, a range of them in one message.
   */
  void claim(List<DesignPort> claimed) {
    claim(claimed, "");
  }

  /** The same; what may be meant by naming the ports twice ends the message. */
  void claim(List<DesignPort> claimed, String remedy) {
    Map<Position, DesignPort> firstClash = new LinkedHashMap<>();
    Map<Position, Integer> clashes = new HashMap<>();
    for (DesignPort port : claimed) {
      DesignPort earlier =
          ports
              .computeIfAbsent(port.switchName(), name -> new LinkedHashMap<>())
              .putIfAbsent(port.port(), port);
      if (earlier != null) {
        firstClash.putIfAbsent(earlier.at(), port);
        clashes.merge(earlier.at(), 1, Integer::sum);
      }
    }
    firstClash.forEach(
        (first, port) -> {
          int more = clashes.get(first) - 1;
          problems.add(
              port.at(),
              port.port()
                  + (more > 0 ? " and " + more + (more > 1 ? " more ports" : " more port") : "")
                  + " of "
                  + Wording.quote(port.switchName())
                  + (more > 0 ? " are" : " is")
                  + " used twice; first at "
                  + first
                  + remedy);
        });
  }

  Map<String, Map<PortName, DesignPort>> all() {
    return ports;
  }
}
