package plumbline.waiver;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import plumbline.finding.Severity;
import plumbline.port.PortNames;
import plumbline.result.Waiver;
import plumbline.text.Secrets;
import plumbline.text.Wording;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** Reads one waiver of a file. */
final class EntryReader {
  static final List<String> KEYS =
      List.of(
          "rule",
          "switch",
          "port",
          "vlans",
          "subject",
          "severity",
          "why",
          "accepted-by",
          "ticket",
          "until",
          "renewed");

  private static final String OF_WAIVERS = "waiver-";
  private static final int LONGEST = 500;
  private static final String DAY = "a day such as 2027-01-31";

  private final Node.Entries map;
  private final Collection<String> rules;
  private final BiConsumer<Position, String> problems;
  private boolean faulty;

  EntryReader(Node.Entries map, Collection<String> rules, BiConsumer<Position, String> problems) {
    this.map = map;
    this.rules = rules;
    this.problems = problems;
  }

  /** The waiver; empty where something is wrong with it. */
  Optional<WaiverEntry> read() {
    Optional<String> rule = needed("rule", "the name of a rule, or a pattern");
    rule.ifPresent(this::checkRule);
    Optional<String> switchName = text("switch", true);
    Optional<String> port = text("port", true);
    port.ifPresent(this::checkPort);
    Optional<String> subject = text("subject", true);
    VlanSet vlans = vlans();
    Optional<Severity> severity =
        needed("severity", "the severity at which it was accepted").flatMap(this::severity);
    Optional<String> why = needed("why", "the reason, in words");
    Optional<String> acceptedBy = needed("accepted-by", "who accepted it");
    Optional<String> ticket = text("ticket", false);
    Optional<LocalDate> until =
        needed("until", "the last day on which it holds, " + DAY)
            .flatMap(word -> day(word, value("until")));
    List<LocalDate> renewed = until.map(this::renewed).orElse(List.of());
    if (faulty) {
      return Optional.empty();
    }
    Selector what = new Selector(rule.orElseThrow(), switchName, port, subject);
    return Optional.of(
        new WaiverEntry(
            what,
            new Waiver(
                map.at(),
                what.words(),
                vlans,
                severity.orElseThrow(),
                Secrets.mask(why.orElseThrow()),
                Secrets.mask(acceptedBy.orElseThrow()),
                ticket.map(Secrets::mask),
                until.orElseThrow(),
                renewed)));
  }

  private void checkRule(String word) {
    Node at = value("rule");
    List<String> valid = rules.stream().filter(rule -> !rule.startsWith(OF_WAIVERS)).toList();
    if (!Selector.isPattern(word) && word.startsWith(OF_WAIVERS)) {
      fault(at.at(), "a waiver cannot be waived; give it a new date, or take it out");
      return;
    }
    Selector selector = new Selector(word, Optional.empty(), Optional.empty(), Optional.empty());
    if (valid.stream().noneMatch(selector::fitsRule)) {
      fault(
          at.at(),
          (Selector.isPattern(word) ? "no rule fits " : "unknown rule ")
              + Wording.quote(word)
              + "; "
              + Wording.remedy(word, valid, "no rule is known"));
    }
  }

  private void checkPort(String word) {
    if (word.isEmpty() || Selector.isPattern(word)) {
      return;
    }
    PortNames.Reading reading = PortNames.parse(word);
    if (reading instanceof PortNames.Reading.Ambiguous ambiguous) {
      fault(
          value("port").at(),
          Wording.quote(word)
              + " could be several ports; expected "
              + Wording.alternatives(ambiguous.kinds()));
    } else if (reading instanceof PortNames.Reading.NotAPort) {
      fault(
          value("port").at(),
          Wording.quote(word) + " is no port; expected such as Gi1/0/1, Gi1/0/1-4 or Gi1/0/*");
    }
  }

  private VlanSet vlans() {
    Optional<Node> node = map.get("vlans").map(Node.Entry::value);
    if (node.isEmpty()) {
      return VlanSet.NONE;
    }
    List<Node> items = node.get() instanceof Node.Items list ? list.items() : List.of(node.get());
    VlanSet vlans = VlanSet.NONE;
    for (Node item : items) {
      Optional<VlanSet> read =
          item instanceof Node.Scalar word ? VlanSet.parse(word.text()) : Optional.empty();
      if (read.isEmpty()) {
        fault(
            item.at(),
            "\"vlans\" must be numbers from 1 to 4094 and ranges such as 500-599"
                + (item instanceof Node.Scalar word && !word.text().isEmpty()
                    ? ", found " + Wording.quote(word.text())
                    : ""));
      }
      vlans = vlans.plus(read.orElse(VlanSet.NONE));
    }
    return vlans;
  }

  private Optional<Severity> severity(String word) {
    Optional<Severity> read = Severity.named(word);
    if (read.isEmpty()) {
      List<String> words = Arrays.stream(Severity.values()).map(Severity::toString).toList();
      fault(
          value("severity").at(),
          Wording.quote(word) + " is no severity; " + Wording.remedy(word, words, ""));
    }
    return read;
  }

  private Optional<LocalDate> day(String word, Node at) {
    Optional<LocalDate> day = WaiverReader.day(word);
    if (day.isEmpty()) {
      fault(at.at(), Wording.quote(word) + " is no day; expected " + DAY);
    }
    return day;
  }

  /** The last days that it had before: each earlier than the next, all than the present one. */
  private List<LocalDate> renewed(LocalDate until) {
    Optional<Node> node = map.get("renewed").map(Node.Entry::value);
    if (node.isEmpty()) {
      return List.of();
    }
    if (!(node.get() instanceof Node.Items list)) {
      fault(node.get().at(), "\"renewed\" must be a list of the last days that it had before");
      return List.of();
    }
    List<LocalDate> days = new ArrayList<>();
    for (Node item : list.items()) {
      String word = item instanceof Node.Scalar scalar ? scalar.text() : "";
      Optional<LocalDate> day = day(word, item);
      if (day.isPresent()) {
        boolean inOrder =
            day.get().isBefore(until)
                && (days.isEmpty() || days.get(days.size() - 1).isBefore(day.get()));
        if (!inOrder) {
          fault(
              item.at(),
              "\"renewed\" lists the last days that the waiver had before, oldest first, each"
                  + " before \"until\"");
        }
        days.add(day.get());
      }
    }
    return days;
  }

  private Node value(String key) {
    return map.get(key).map(Node.Entry::value).orElse(map);
  }

  /** A text that must be there and must say something. */
  private Optional<String> needed(String key, String expected) {
    if (map.get(key).isEmpty()) {
      fault(map.at(), "a waiver needs the key " + Wording.quote(key) + ", " + expected);
      return Optional.empty();
    }
    Optional<String> text = text(key, false);
    if (text.isPresent() && text.get().isBlank()) {
      fault(value(key).at(), Wording.quote(key) + " has no value; expected " + expected);
      return Optional.empty();
    }
    return text;
  }

  /**
   * A text of one line, if the key is there.
   *
   * @param mayBeEmpty whether an empty text has a meaning; the lack of one has none
   */
  private Optional<String> text(String key, boolean mayBeEmpty) {
    Optional<Node> node = map.get(key).map(Node.Entry::value);
    if (node.isEmpty()) {
      return Optional.empty();
    }
    if (!(node.get() instanceof Node.Scalar scalar)) {
      fault(node.get().at(), Wording.quote(key) + " must be a text, not a list or a map");
      return Optional.empty();
    }
    if (scalar.kind() == Node.Kind.NOTHING) {
      if (mayBeEmpty) {
        fault(
            scalar.at(),
            Wording.quote(key) + " has no value; leave it out for any, or write \"\" for none");
      }
      return key.equals("ticket") ? Optional.empty() : Optional.of("");
    }
    String line = scalar.text().strip();
    if (line.length() > LONGEST || line.contains("\n")) {
      fault(
          scalar.at(),
          Wording.quote(key) + " must be one line of at most " + LONGEST + " characters");
    }
    return Optional.of(line);
  }

  private void fault(Position at, String message) {
    faulty = true;
    problems.accept(at, message);
  }
}
