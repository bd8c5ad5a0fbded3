package plumbline.design;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import plumbline.port.PortName;
import plumbline.text.Secrets;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;
import plumbline.yaml.PositionedTree;

/** Reads a design from its files: YAML or JSON, several of them merged. */
public final class DesignReader {
  private final Collection<String> knownRules;
  private final ShapeCheck shapes;
  private final Problems problems = new Problems();

  private DesignReader(Collection<String> knownRules) {
    this.knownRules = knownRules;
    this.shapes = new ShapeCheck(problems);
  }

  /**
   * Reads a design; all that is wrong in all files is reported at once, nothing is thrown for what
   * they hold.
   *
   * @param sources the files, in the order in which they are merged
   * @param knownRules the rules that a design may switch off
   * @param knownDialects the tables of defaults that a switch may name
   */
  public static DesignReading read(
      List<DesignSource> sources, Collection<String> knownRules, List<String> knownDialects) {
    return new DesignReader(knownRules).readAll(sources, knownDialects);
  }

  private DesignReading readAll(List<DesignSource> sources, List<String> knownDialects) {
    Sections sections = new Sections(shapes, problems);
    Shape.Keys shape = DesignShape.of(knownDialects);
    boolean isWhole = !sources.isEmpty();
    List<Node> roots = new ArrayList<>();
    for (DesignSource source : sources) {
      PositionedTree tree = PositionedTree.read(source.file(), source.text());
      problems.addAll(tree.problems());
      tree.root().ifPresent(roots::add);
      Optional<Fields> fields = tree.root().flatMap(root -> fields(root, shape));
      fields.ifPresent(sections::join);
      isWhole &= fields.isPresent();
    }
    List<String> files = sources.stream().map(DesignSource::file).toList();
    if (sources.isEmpty()) {
      throw new IllegalArgumentException("a design has at least one file");
    }
    // What a broken file declares is unknown, so that every reference would look wrong.
    Optional<Design> design = isWhole ? Optional.of(resolve(sections, sources)) : Optional.empty();
    return problems.isEmpty()
        ? new DesignReading(design, List.of())
        : new DesignReading(
            Optional.empty(), HiddenValues.of(roots, shape).masked(problems.sorted(files)));
  }

  /** Checks a file's shape; empty when it is no design that this program can read. */
  private Optional<Fields> fields(Node root, Shape.Keys shape) {
    Position at = new Position(root.at().file(), 1, 1);
    if (!(root instanceof Node.Entries entries)) {
      problems.add(
          at,
          "this is no design; expected keys such as " + Wording.quote("format") + " and a colon");
      return Optional.empty();
    }
    Optional<Node> format = entries.get("format").map(Node.Entry::value);
    boolean isForeign =
        format.isEmpty()
            && entries.entries().stream().noneMatch(e -> shape.field(e.key()).isPresent());
    if (isForeign) {
      problems.add(
          at,
          "this is no design; expected the key \"format\" with "
              + Wording.quote(DesignShape.FORMAT));
      return Optional.empty();
    }
    if (format.isPresent()
        && format.get() instanceof Node.Scalar scalar
        && !scalar.text().equals(DesignShape.FORMAT)) {
      problems.add(
          scalar.at(),
          "unknown format "
              + Wording.quote(scalar.text())
              + "; expected "
              + Wording.quote(DesignShape.FORMAT));
      return Optional.empty();
    }
    shapes.check(root, shape, "a design", at);
    return Fields.of(root, shapes);
  }

  private Design resolve(Sections sections, List<DesignSource> sources) {
    VlanTable vlans = new VlanTable(sections.entries("vlans"), shapes, problems);
    RoleTable roles = new RoleTable(sections.entries("roles"), vlans, shapes, problems);
    SwitchTable switches = new SwitchTable(sections.entries("switches"), vlans, shapes, problems);
    PortTable ports = new PortTable(switches, problems);
    new SheetReader(roles, ports, shapes).read(sections.entries("switches"));
    HostTable hosts = new HostTable(roles, ports, shapes, problems);
    hosts.read(sections.entries("hosts"));
    List<Link> links =
        new LinkReader(roles, ports, problems).read(sections.items("links"), pairs(sections));
    GatewayReader gateways = new GatewayReader(vlans, switches, ports, shapes, problems);
    var readGateways = gateways.read(sections.entries("gateways"));
    if (readGateways.size() == sections.entries("gateways").size()) {
      gateways.checkRequired(sections.entries("vlans"));
    }
    new RootCheck(switches.all().values(), problems).run();
    return new Design(
        sources.stream().map(one -> new Design.SourceFile(one.file(), one.sha256())).toList(),
        sections.text("site").map(Wanted::value).map(Secrets::mask),
        sections.text("revision").map(Wanted::value).map(Secrets::mask),
        vlans.all(),
        vlans.ranges(sections.scalars("other-vlans"), false),
        roles.all(),
        switches.all(),
        hosts.all(),
        links,
        readGateways,
        multiChassis(sections.items("multi-chassis"), switches, ports),
        new ServiceReader(vlans, hosts, shapes, problems).read(sections.entries("services")),
        silentRules(sections.silent()),
        sections.whole("max-age-days"),
        sections.scalars("harmless").stream().map(Node.Scalar::text).toList(),
        ports.all());
  }

  private static Set<Set<String>> pairs(Sections sections) {
    return sections.items("multi-chassis").stream()
        .map(fields -> fields.scalars("switches"))
        .map(both -> both.stream().map(Node.Scalar::text).collect(Collectors.toSet()))
        .collect(Collectors.toSet());
  }

  private List<MultiChassis> multiChassis(
      List<Fields> section, SwitchTable switches, PortTable ports) {
    List<MultiChassis> read = new ArrayList<>();
    for (Fields fields : section) {
      List<Node.Scalar> both = fields.scalars("switches");
      if (both.size() != 2) {
        continue;
      }
      Node.Scalar first = both.get(0);
      Node.Scalar second = both.get(1);
      // Both are asked, so that both are reported.
      boolean known =
          both.stream().filter(word -> switches.isKnown(word.text(), word.at())).count() == 2;
      Optional<PortName> peer =
          fields.scalar("peer-link").flatMap(p -> ports.one(first.text(), p.text(), p.at()));
      if (known && first.text().equals(second.text())) {
        problems.add(
            second.at(),
            "switch " + Wording.quote(second.text()) + " is named twice; expected two switches");
      } else if (known && peer.isPresent()) {
        read.add(new MultiChassis(first.text(), second.text(), peer.get(), fields.map().at()));
      }
    }
    return read;
  }

  private Set<String> silentRules(List<Node.Scalar> words) {
    Set<String> silent = new TreeSet<>();
    for (Node.Scalar word : words) {
      if (knownRules.contains(word.text())) {
        silent.add(word.text());
      } else {
        problems.addUnknown(
            word.at(), "rule", word.text(), new TreeSet<>(knownRules), "no rule is known");
      }
    }
    return silent;
  }
}
