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
import java.util.regex.Pattern;
import plumbline.design.DesignVlan.GatewayNeed;
import plumbline.text.Wording;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** The VLANs of a design by name; finds what a reference names. */
final class VlanTable {
  private static final Pattern RANGE = Pattern.compile("[0-9]{1,4} *- *[0-9]{1,4}");

  private final Problems problems;
  private final Set<String> names = new LinkedHashSet<>();
  private final Map<String, DesignVlan> vlans = new LinkedHashMap<>();

  VlanTable(List<Node.Entry> section, ShapeCheck shapes, Problems problems) {
    this.problems = problems;
    section.forEach(entry -> names.add(entry.key()));
    Map<Integer, Position> byId = new HashMap<>();
    for (Node.Entry entry : section) {
      Fields.of(entry.value(), shapes).ifPresent(fields -> read(entry, fields, byId));
    }
  }

  private void read(Node.Entry entry, Fields fields, Map<Integer, Position> byId) {
    List<String> apartFrom = new ArrayList<>();
    for (Node.Scalar other : fields.scalars("apart-from")) {
      if (other.text().equals(entry.key())) {
        problems.add(
            other.at(), "VLAN " + Wording.quote(other.text()) + " cannot be apart from itself");
      } else if (isKnown(other)) {
        apartFrom.add(other.text());
      }
    }
    Optional<Wanted<Integer>> id = fields.whole("id");
    if (id.isEmpty()) {
      return;
    }
    Position first = byId.putIfAbsent(id.get().value(), id.get().at());
    if (first != null) {
      problems.add(
          id.get().at(), "VLAN id " + id.get().value() + " is given twice; first at " + first);
    }
    vlans.put(
        entry.key(),
        new DesignVlan(
            entry.key(),
            new VlanId(id.get().value()),
            fields
                .text("gateway")
                .map(need -> GatewayNeed.valueOf(need.value().toUpperCase(Locale.ROOT)))
                .orElse(GatewayNeed.OPTIONAL),
            fields.isTrue("one-domain"),
            fields.isTrue("telephony"),
            fields.isTrue("unused"),
            fields.isTrue("filter"),
            apartFrom,
            fields.text("name").map(Wanted::value),
            entry.at()));
  }

  Map<String, DesignVlan> all() {
    return vlans;
  }

  /** The VLAN that a word names; empty when there is none, which is then reported. */
  Optional<DesignVlan> find(Node.Scalar word) {
    return find(word.text(), word.at());
  }

  /** The VLAN of a name; empty when there is none, which is then reported at the place. */
  Optional<DesignVlan> find(String name, Position at) {
    return isKnown(name, at) ? Optional.ofNullable(vlans.get(name)) : Optional.empty();
  }

  /** The VLANs that some words name, each once; a word given twice is reported. */
  List<Wanted<DesignVlan>> findAll(List<Node.Scalar> words) {
    Map<String, Position> seen = new HashMap<>();
    List<Wanted<DesignVlan>> found = new ArrayList<>();
    for (Node.Scalar word : words) {
      Position first = seen.putIfAbsent(word.text(), word.at());
      if (first != null) {
        problems.add(
            word.at(),
            "VLAN " + Wording.quote(word.text()) + " is listed twice; first at " + first);
      } else {
        find(word).ifPresent(vlan -> found.add(new Wanted<>(vlan, word.at())));
      }
    }
    return found;
  }

  /**
   * The identifiers of the VLANs that some words name; empty where a word names none or stands
   * twice, so that nothing further is concluded from a list that is not what was meant.
   */
  Optional<VlanSet> setOf(List<Node.Scalar> words) {
    List<Wanted<DesignVlan>> found = findAll(words);
    return found.size() < words.size()
        ? Optional.empty()
        : Optional.of(VlanSet.of(found.stream().map(wanted -> wanted.value().id()).toList()));
  }

  /** The identifiers that numbers, ranges and, where allowed, names stand for. */
  VlanSet ranges(List<Node.Scalar> words, boolean namesAllowed) {
    VlanSet all = VlanSet.NONE;
    for (Node.Scalar word : words) {
      if (word.text().matches("[0-9]{1,4}( *- *[0-9]{1,4})?") && !names.contains(word.text())) {
        Optional<VlanSet> range = VlanSet.parse(word.text());
        if (range.isEmpty()) {
          problems.add(
              word.at(),
              Wording.quote(word.text())
                  + " is no range of VLANs; expected low to high within 1 to 4094");
        }
        all = all.plus(range.orElse(VlanSet.NONE));
      } else if (namesAllowed) {
        all = all.plus(VlanSet.of(find(word).map(DesignVlan::id).stream().toList()));
      }
    }
    return all;
  }

  /** Where one VLAN is named a range is none, and its VLANs of the design are what was meant. */
  private String noRange(String range) {
    List<String> inside =
        VlanSet.parse(range).stream()
            .flatMap(
                set -> vlans.values().stream().filter(vlan -> set.contains(vlan.id().number())))
            .map(DesignVlan::name)
            .toList();
    return Wording.quote(range)
        + " is a range, which is not possible here; name the VLANs one by one"
        + (inside.isEmpty() ? "" : ": " + Wording.quoted(inside));
  }

  private boolean isKnown(Node.Scalar word) {
    return isKnown(word.text(), word.at());
  }

  private boolean isKnown(String name, Position at) {
    if (names.contains(name)) {
      return true;
    }
    if (RANGE.matcher(name).matches()) {
      problems.add(at, noRange(name));
      return false;
    }
    Optional<DesignVlan> byNumber =
        VlanSet.parse(name).stream()
            .flatMap(any -> vlans.values().stream())
            .filter(vlan -> vlan.id().toString().equals(name))
            .findFirst();
    if (byNumber.isPresent()) {
      problems.add(
          at,
          "unknown VLAN "
              + Wording.quote(name)
              + "; did you mean "
              + Wording.quote(byNumber.get().name())
              + ", which has that id?");
    } else {
      problems.addUnknown(at, "VLAN", name, names, "the design has no VLANs");
    }
    return false;
  }
}
