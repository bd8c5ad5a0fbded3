package plumbline.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.design.DesignSwitch.Mst;
import plumbline.design.DesignSwitch.RackPlace;
import plumbline.design.DesignSwitch.Tree;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** The switches of a design by name. */
final class SwitchTable {
  private final Problems problems;
  private final VlanTable vlans;
  private final Set<String> names = new LinkedHashSet<>();
  private final Map<String, DesignSwitch> switches = new LinkedHashMap<>();

  SwitchTable(List<Node.Entry> section, VlanTable vlans, ShapeCheck shapes, Problems problems) {
    this.problems = problems;
    this.vlans = vlans;
    Map<String, Position> hostnames = new HashMap<>();
    for (Node.Entry entry : section) {
      if (entry.key().equals(DesignShape.OUTSIDE)) {
        problems.add(
            entry.at(), "\"outside\" is reserved for the far end of a link; expected another name");
        continue;
      }
      names.add(entry.key());
      Fields.of(entry.value(), shapes).ifPresent(fields -> read(entry, fields, hostnames));
    }
  }

  private void read(Node.Entry entry, Fields fields, Map<String, Position> hostnames) {
    Wanted<String> hostname = fields.text("hostname").orElse(new Wanted<>(entry.key(), entry.at()));
    Position first =
        hostnames.putIfAbsent(hostname.value().toLowerCase(Locale.ROOT), hostname.at());
    if (first != null) {
      problems.add(
          hostname.at(),
          "hostname " + Wording.quote(hostname.value()) + " is given twice; first at " + first);
    }
    switches.put(
        entry.key(),
        new DesignSwitch(
            entry.key(),
            hostname.value(),
            fields.text("dialect"),
            stack(fields),
            fields
                .fields("management")
                .flatMap(management -> management.scalar("vlan"))
                .flatMap(word -> vlans.find(word).map(vlan -> new Wanted<>(vlan, word.at()))),
            place(fields),
            fields.fields("spanning-tree").map(this::tree).orElse(Tree.NONE),
            entry.at()));
  }

  private List<Integer> stack(Fields fields) {
    List<Integer> members = new ArrayList<>();
    for (Node.Scalar word : fields.scalars("stack")) {
      Integer member = Integer.valueOf(word.text());
      if (members.contains(member)) {
        problems.add(word.at(), "stack member " + member + " is listed twice");
      } else {
        members.add(member);
      }
    }
    return members;
  }

  static Optional<RackPlace> place(Fields fields) {
    Optional<Fields> place = fields.fields("place");
    Optional<Wanted<String>> rack = place.flatMap(inner -> inner.text("rack"));
    Optional<Wanted<Integer>> unit = place.flatMap(inner -> inner.whole("unit"));
    return rack.isPresent() && unit.isPresent()
        ? Optional.of(new RackPlace(rack.get().value(), unit.get().value()))
        : Optional.empty();
  }

  private Tree tree(Fields fields) {
    Optional<Wanted<String>> mode = fields.text("mode");
    Optional<Fields> mst = fields.fields("mst");
    if (mst.isPresent() && mode.isPresent() && !mode.get().value().equals("mst")) {
      problems.add(
          mst.get().map().at(),
          "\"mst\" has no effect with mode "
              + Wording.quote(mode.get().value())
              + "; remove it or change the mode");
    }
    return new Tree(
        mode,
        fields.text("path-cost"),
        fields
            .text("bridge-address")
            .map(address -> new Wanted<>(colons(address.value()), address.at())),
        mst.flatMap(this::region).map(region -> new Wanted<>(region, mst.get().map().at())),
        vlans.findAll(fields.scalars("root-of")),
        vlans.findAll(fields.scalars("second-for")));
  }

  private static String colons(String address) {
    String digits = address.replaceAll("[^0-9A-Fa-f]", "").toLowerCase(Locale.ROOT);
    return String.join(":", digits.split("(?<=\\G..)"));
  }

  private Optional<Mst> region(Fields fields) {
    SortedMap<Integer, List<DesignVlan>> instances = new TreeMap<>();
    Map<DesignVlan, Position> placed = new HashMap<>();
    for (Node.Entry entry : fields.entries("instances")) {
      List<DesignVlan> members = new ArrayList<>();
      List<Node.Scalar> words = scalars(fields, entry.value());
      for (Wanted<DesignVlan> vlan : vlans.findAll(words)) {
        members.add(vlan.value());
        Position first = placed.putIfAbsent(vlan.value(), vlan.at());
        if (first != null) {
          problems.add(
              vlan.at(),
              "VLAN "
                  + Wording.quote(vlan.value().name())
                  + " is in two instances; first at "
                  + first);
        }
      }
      if (entry.key().matches("[0-9]{1,4}")) {
        instances.put(Integer.valueOf(entry.key()), members);
      }
    }
    Optional<Wanted<String>> name = fields.text("name");
    Optional<Wanted<Integer>> revision = fields.whole("revision");
    return name.isPresent() && revision.isPresent()
        ? Optional.of(new Mst(name.get().value(), revision.get().value(), instances))
        : Optional.empty();
  }

  private static List<Node.Scalar> scalars(Fields fields, Node list) {
    return fields.itemsOf(list).stream().flatMap(node -> Fields.asScalar(node).stream()).toList();
  }

  Map<String, DesignSwitch> all() {
    return switches;
  }

  /** Says whether the design has a switch of that name, however broken its description. */
  boolean has(String name) {
    return names.contains(name);
  }

  Set<String> names() {
    return names;
  }

  /** Says whether the design has a switch of that name; if not, that is reported. */
  boolean isKnown(String name, Position at) {
    if (has(name)) {
      return true;
    }
    problems.addUnknown(at, "switch", name, names, "the design has no switches");
    return false;
  }
}
