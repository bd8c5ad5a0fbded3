package plumbline.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.PortTable.Target;
import plumbline.port.PortName;
import plumbline.text.Wording;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** Reads the links of a design. */
final class LinkReader {
  private final RoleTable roles;
  private final PortTable ports;
  private final Problems problems;
  private final List<Link> links = new ArrayList<>();

  LinkReader(RoleTable roles, PortTable ports, Problems problems) {
    this.roles = roles;
    this.ports = ports;
    this.problems = problems;
  }

  /**
   * A link whose ends could be read.
   *
   * @param fields all that is said of it
   * @param role what both ends must look like
   * @param first one end
   * @param second the other end; empty where the link leaves the design
   */
  record Ends(Fields fields, Role role, Target first, Optional<Target> second) {
    List<Target> all() {
      return second.isPresent() ? List.of(first, second.get()) : List.of(first);
    }
  }

  /**
   * Reads all links, in order.
   *
   * @param pairs the names of the two switches of each multi-chassis pair
   */
  List<Link> read(List<Fields> section, Set<Set<String>> pairs) {
    List<Ends> all = section.stream().flatMap(fields -> ends(fields).stream()).toList();
    SharedEnds shared = new SharedEnds(all, pairs);
    all.forEach(ends -> readLink(ends, shared));
    return List.copyOf(links);
  }

  private Optional<Ends> ends(Fields fields) {
    Optional<Role> role = roles.withOverrides(fields, fields.map().at());
    List<Node.Scalar> ends = fields.scalars("ends");
    if (ends.size() != 2) {
      return Optional.empty();
    }
    List<Node.Scalar> inside =
        ends.stream().filter(end -> !end.text().equals(DesignShape.OUTSIDE)).toList();
    if (inside.isEmpty()) {
      problems.add(
          ends.get(1).at(), "both ends of this link are outside; expected a switch and a port");
      return Optional.empty();
    }
    List<Optional<Target>> read = inside.stream().map(ports::target).toList();
    if (read.contains(Optional.<Target>empty())) {
      return Optional.empty();
    }
    Target first = read.get(0).orElseThrow();
    Optional<Target> second = read.size() == 2 ? read.get(1) : Optional.empty();
    if (second.isPresent() && second.get().switchName().equals(first.switchName())) {
      problems.add(
          second.get().at(),
          "both ends of this link are on "
              + Wording.quote(first.switchName())
              + "; expected two switches");
      return Optional.empty();
    }
    return Optional.of(
        new Ends(fields, role.orElseGet(() -> RoleTable.unread(fields.map().at())), first, second));
  }

  private void readLink(Ends ends, SharedEnds shared) {
    Target first = ends.first();
    DesignPort firstPort = claimed(first, ends.second(), ends.role(), shared);
    Optional<DesignPort> secondPort =
        ends.second().map(to -> claimed(to, Optional.of(first), ends.role(), shared));
    List<Link.Member> members = members(ends.fields(), first, ends.second(), ends.role());
    check(ends, members.size());
    checkShared(ends, shared);
    links.add(new Link(firstPort, secondPort, members, ends.fields().map().at()));
  }

  /** The port at an end; one that two links share has its place once. */
  private DesignPort claimed(Target here, Optional<Target> there, Role role, SharedEnds shared) {
    Optional<DesignPort> both = shared.portOf(here);
    DesignPort port = both.orElseGet(() -> end(here, there, role, DesignPort.Place.LINK, ""));
    if (both.isEmpty() || shared.isFirst(here)) {
      ports.claim(List.of(port), shared.isFirst(here) ? "" : shared.remedy(here));
    }
    return port;
  }

  private void checkShared(Ends ends, SharedEnds shared) {
    for (Target end : ends.all()) {
      if (shared.portOf(end).isPresent() && ends.fields().node("members").isEmpty()) {
        problems.add(
            ends.fields().map().at(),
            "this link shares "
                + Wording.quote(name(end))
                + " with another; expected \"members\", the cables of this link alone");
      }
    }
  }

  /** A port with its switch. */
  static String name(Target end) {
    return end.switchName() + " " + end.port();
  }

  /** What is behind an end of a link. */
  static String linkTo(Optional<Target> there) {
    return "link to " + there.map(LinkReader::name).orElse(DesignShape.OUTSIDE);
  }

  private static DesignPort end(
      Target here, Optional<Target> there, Role role, DesignPort.Place place, String prefix) {
    return new DesignPort(
        here.switchName(), here.port(), role, prefix + linkTo(there), place, here.at());
  }

  private List<Link.Member> members(
      Fields fields, Target first, Optional<Target> second, Role role) {
    List<Link.Member> members = new ArrayList<>();
    int wanted = second.isPresent() ? 2 : 1;
    for (Node item : fields.items("members")) {
      List<Node.Scalar> cable =
          item instanceof Node.Scalar one
              ? List.of(one)
              : fields.itemsOf(item).stream()
                  .flatMap(node -> Fields.asScalar(node).stream())
                  .toList();
      if (cable.size() != wanted && sizeOf(item) == cable.size()) {
        problems.add(
            item.at(),
            wanted == 2
                ? "a member of this link has a port at each end; expected two, found one"
                : "a member of a link to outside has one port; expected one, found two");
      } else if (cable.size() == wanted) {
        Optional<DesignPort> near = member(first, second, role, cable.get(0));
        Optional<DesignPort> far =
            second.flatMap(end -> member(end, Optional.of(first), role, cable.get(1)));
        if (near.isPresent() && far.isPresent() == second.isPresent()) {
          members.add(new Link.Member(near.get(), far));
        }
      }
    }
    return members;
  }

  private static int sizeOf(Node item) {
    return item instanceof Node.Items items ? items.items().size() : 1;
  }

  private Optional<DesignPort> member(
      Target here, Optional<Target> there, Role role, Node.Scalar word) {
    Optional<PortName> port = ports.one(here.switchName(), word.text(), word.at());
    if (port.isPresent() && port.get().kind().isBundle()) {
      problems.add(
          word.at(),
          Wording.quote(port.get().toString())
              + " is a bundle itself; expected a port that is a member");
      return Optional.empty();
    }
    Optional<DesignPort> member =
        port.map(
            name ->
                end(
                    new Target(here.switchName(), name, word.at()),
                    there,
                    role,
                    DesignPort.Place.MEMBER,
                    "member of "));
    member.ifPresent(one -> ports.claim(List.of(one)));
    return member;
  }

  /** Members go with bundles, and a role that wants more of them than there are asks too much. */
  private void check(Ends ends, int members) {
    Role role = ends.role();
    Optional<Node> list = ends.fields().node("members");
    if (list.isEmpty()) {
      return;
    }
    Position at = list.get().at();
    for (Target end : ends.all()) {
      if (!end.port().kind().isBundle()) {
        problems.add(
            end.at(),
            Wording.quote(end.port().toString())
                + " is no bundle and has no members; expected a bundle such as \"Po1\"");
      }
    }
    if (role.value(RoleKeys.BUNDLE).equals(Optional.of(RoleKeys.BundleWish.NONE))) {
      problems.add(
          at,
          "a link with members is a bundle, but its role "
              + Wording.quote(role.name())
              + " says bundle: none");
    }
    int given = ((Node.Items) list.get()).items().size();
    Optional<Integer> needed = role.value(RoleKeys.MIN_LINKS);
    if (members == given && needed.isPresent() && needed.get() > members) {
      problems.add(
          at,
          "the role "
              + Wording.quote(role.name())
              + " needs "
              + needed.get()
              + " members, but the link has "
              + members);
    }
  }
}
