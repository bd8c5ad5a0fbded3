package plumbline.history;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.history.RunReader.NoRun;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.result.Standing;
import plumbline.result.State;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** Reads one finding of a kept run. */
final class FindingReader {
  private final JsonObjects json;
  private final Map<String, String> texts = new HashMap<>();
  private final List<Place> others = new ArrayList<>();
  private final List<Proof> evidence = new ArrayList<>();
  private VlanSet vlans = VlanSet.NONE;
  private Optional<Position> design = Optional.empty();
  private Optional<Standing.Before> before = Optional.empty();

  FindingReader(JsonObjects json) {
    this.json = json;
  }

  PastFinding read() throws IOException, NoRun {
    json.object(this::field);
    Optional<String> port = text("port");
    Finding finding =
        new Finding(
            needed("rule"),
            severity(needed("severity")),
            text("switch").map(name -> new Place(name, port)),
            port.flatMap(FindingReader::portName),
            others,
            vlans,
            needed("subject"),
            needed("designed"),
            needed("found"),
            needed("consequence"),
            evidence,
            design);
    return new PastFinding(
        finding, text("state").flatMap(State::named), text("since").map(LocalDate::parse), before);
  }

  private boolean field(String name) throws IOException, NoRun {
    switch (name) {
      case "rule",
          "severity",
          "state",
          "since",
          "switch",
          "port",
          "subject",
          "designed",
          "found",
          "consequence" ->
          json.textOrNull().ifPresent(text -> texts.put(name, text));
      case "others" -> json.array(() -> others.add(place()));
      case "vlans" -> vlans = vlans();
      case "evidence" -> json.array(() -> evidence.add(proof()));
      case "design" -> {
        if (!json.isNull()) {
          Map<String, Object> read = fields();
          design = Optional.of(new Position(word(read, "file"), number(read, "line"), 1));
        }
      }
      case "before" -> before = json.isNull() ? Optional.empty() : Optional.of(before());
      default -> json.skip();
    }
    return true;
  }

  private Standing.Before before() throws IOException, NoRun {
    List<Severity> was = new ArrayList<>();
    List<VlanSet> about = new ArrayList<>();
    json.object(
        field -> {
          switch (field) {
            case "severity" -> was.add(severity(json.text()));
            case "vlans" -> about.add(vlans());
            default -> json.skip();
          }
          return true;
        });
    if (was.isEmpty() || about.isEmpty()) {
      throw lacking();
    }
    return new Standing.Before(was.get(0), about.get(0));
  }

  private VlanSet vlans() throws IOException, NoRun {
    List<Integer> ids = new ArrayList<>();
    json.array(() -> ids.add(json.whole()));
    return VlanSet.of(ids.stream().mapToInt(Integer::intValue).toArray());
  }

  private Place place() throws IOException, NoRun {
    Map<String, Object> read = fields();
    return new Place(
        word(read, "switch"), Optional.ofNullable(read.get("port")).map(Object::toString));
  }

  private Proof proof() throws IOException, NoRun {
    Map<String, Object> read = fields();
    return read.containsKey("default")
        ? new Proof(Optional.empty(), new Evidence.Default(word(read, "default")))
        : new Proof(
            Optional.of(word(read, "file")),
            new Evidence.Line(number(read, "line"), word(read, "text")));
  }

  /** The texts and numbers of a small object; null is left out. */
  private Map<String, Object> fields() throws IOException, NoRun {
    Map<String, Object> read = new HashMap<>();
    json.object(
        field -> {
          if (field.equals("line")) {
            read.put(field, json.whole());
          } else {
            json.textOrNull().ifPresent(text -> read.put(field, text));
          }
          return true;
        });
    return read;
  }

  private static String word(Map<String, Object> read, String name) throws NoRun {
    if (read.get(name) instanceof String text) {
      return text;
    }
    throw lacking();
  }

  private static int number(Map<String, Object> read, String name) throws NoRun {
    if (read.get(name) instanceof Integer number) {
      return number;
    }
    throw lacking();
  }

  private static Severity severity(String word) throws NoRun {
    return Severity.named(word).orElseThrow(FindingReader::lacking);
  }

  private static Optional<PortName> portName(String full) {
    return PortNames.parse(full) instanceof PortNames.Reading.Ports ports
            && ports.names().size() == 1
        ? Optional.of(ports.names().get(0))
        : Optional.empty();
  }

  private Optional<String> text(String name) {
    return Optional.ofNullable(texts.get(name));
  }

  private String needed(String name) throws NoRun {
    return text(name).orElseThrow(FindingReader::lacking);
  }

  private static NoRun lacking() {
    return new NoRun("lacks a part that every finding has");
  }
}
