package plumbline.design;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.Service.Failure;
import plumbline.setting.PortMode;
import plumbline.text.Wording;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Node;
import plumbline.yaml.Position;

/** Reads the services of a design. */
final class ServiceReader {
  private final VlanTable vlans;
  private final HostTable hosts;
  private final ShapeCheck shapes;
  private final Problems problems;

  ServiceReader(VlanTable vlans, HostTable hosts, ShapeCheck shapes, Problems problems) {
    this.vlans = vlans;
    this.hosts = hosts;
    this.shapes = shapes;
    this.problems = problems;
  }

  /** Reads all services. */
  Map<String, Service> read(List<Node.Entry> section) {
    Map<String, Service> services = new LinkedHashMap<>();
    for (Node.Entry entry : section) {
      Fields.of(entry.value(), shapes)
          .ifPresent(fields -> services.put(entry.key(), service(entry, fields)));
    }
    return services;
  }

  private Service service(Node.Entry entry, Fields fields) {
    List<Service.Member> members = members(fields);
    Optional<Wanted<Integer>> needs = fields.whole("needs");
    int given = fields.node("members").map(ServiceReader::sizeOf).orElse(Integer.MAX_VALUE);
    if (needs.isPresent() && needs.get().value() > given) {
      problems.add(
          needs.get().at(),
          "service "
              + Wording.quote(entry.key())
              + " needs "
              + needs.get().value()
              + " members, but has "
              + given);
    }
    Set<Failure> survives = EnumSet.noneOf(Failure.class);
    for (Node.Scalar word : fields.scalars("survives")) {
      survives.add(Failure.valueOf(word.text().toUpperCase(Locale.ROOT)));
    }
    return new Service(
        entry.key(),
        members,
        needs.map(Wanted::value).orElse(1),
        survives.isEmpty() ? EnumSet.allOf(Failure.class) : survives,
        entry.at());
  }

  private static int sizeOf(Node node) {
    return node instanceof Node.Items items ? items.items().size() : Integer.MAX_VALUE;
  }

  private List<Service.Member> members(Fields fields) {
    List<Service.Member> members = new ArrayList<>();
    Map<Service.Member, Position> seen = new HashMap<>();
    for (Node.Scalar words : fields.scalars("members")) {
      String text = words.text();
      int blank = text.indexOf(' ');
      String host = text.substring(0, blank);
      String name = text.substring(blank).strip();
      boolean known = hosts.isKnown(host, words.at());
      Position at = words.at(text.lastIndexOf(' ') + 1);
      Optional<DesignVlan> vlan = vlans.find(name, at);
      if (!known || vlan.isEmpty()) {
        continue;
      }
      Service.Member member = new Service.Member(host, vlan.get());
      Position first = seen.putIfAbsent(member, words.at());
      if (first != null) {
        problems.add(
            words.at(), "member " + Wording.quote(text) + " is listed twice; first at " + first);
      } else if (hosts.complete(host).map(one -> !canCarry(one, vlan.get())).orElse(false)) {
        problems.add(
            at,
            "no port of host "
                + Wording.quote(host)
                + " can carry VLAN "
                + Wording.quote(name)
                + "; expected a VLAN of their roles");
      }
      members.add(member);
    }
    return members;
  }

  private static boolean canCarry(Host host, DesignVlan vlan) {
    return host.ports().values().stream()
        .anyMatch(port -> canCarry(port.to().role(), vlan.id().number()));
  }

  /** Says whether a port that is as its role wants can carry the VLAN; silence excludes nothing. */
  private static boolean canCarry(Role role, int vlan) {
    Optional<VlanSet> tagged = role.value(RoleKeys.TAGGED);
    Optional<PortMode> mode = role.value(RoleKeys.MODE);
    Optional<DesignVlan> access = role.value(RoleKeys.ACCESS);
    if (role.isSpare() || mode.equals(Optional.of(PortMode.ROUTED))) {
      return false;
    }
    if (is(access, vlan) || is(role.value(RoleKeys.VOICE), vlan)) {
      return true;
    }
    boolean isAccess =
        mode.map(known -> known == PortMode.ACCESS).orElse(access.isPresent() && tagged.isEmpty());
    if (isAccess) {
      return access.isEmpty();
    }
    return tagged.isEmpty()
        || tagged.get().contains(vlan)
        || is(role.value(RoleKeys.NATIVE), vlan)
        || role.value(RoleKeys.MAY_CARRY).orElse(VlanSet.NONE).contains(vlan);
  }

  private static boolean is(Optional<DesignVlan> named, int vlan) {
    return named.map(one -> one.id().number() == vlan).orElse(false);
  }
}
