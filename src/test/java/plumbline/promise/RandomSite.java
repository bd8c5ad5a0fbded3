package plumbline.promise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A random site in trees per VLAN, as designed and with random faults, and its texts. */
final class RandomSite {
  static final List<Integer> VLANS = List.of(10, 20, 30);
  private static final List<String> NAMES = List.of("shop", "yard", "barn");

  /** A box: a switch and its member in the stack, from 1. */
  record Box(int at, int member) {
    String port(int number) {
      return "Gi" + member + "/0/" + number;
    }
  }

  /** A cable between two boxes; {@code up} as found. */
  record Cord(Box one, int port, Box other, int otherPort, boolean up) {}

  /**
   * A link: which VLANs each end lacks as found, whether an end is shut, how many cables it needs.
   */
  record Tie(
      int one,
      int other,
      boolean bundle,
      int least,
      int leastFound,
      Set<Integer> lacksOne,
      Set<Integer> lacksOther,
      boolean shut,
      List<Cord> cords) {}

  /** A port of a host, or of a thing at a sheet port. */
  record Jack(Box box, int number, Set<Integer> lacks, boolean shut) {
    String full() {
      return "GigabitEthernet" + box.member() + "/0/" + number;
    }
  }

  /** A host or device, the VLANs that it needs, and its ports. */
  record Guest(String name, boolean device, List<Integer> vlans, List<Jack> jacks) {}

  /** A service: members as indexes of hosts and VLANs. */
  record Service(List<int[]> members, int needs) {}

  final List<Integer> stacks;
  final List<Tie> ties = new ArrayList<>();
  final List<Guest> guests = new ArrayList<>();
  final List<Service> services = new ArrayList<>();

  /** For each routing switch and VLAN whether it works as found. */
  final Map<Integer, Map<Integer, Boolean>> gateways = new TreeMap<>();

  /** Switches whose management address is in VLAN 20. */
  final Set<Integer> managed = new TreeSet<>();

  /** VLANs that a switch lacks as found. */
  final List<Set<Integer>> absent = new ArrayList<>();

  private final Random random;
  private final int faulty;
  private final int[] ports;

  /** One of so many things has a fault. */
  RandomSite(long seed, int most, int faulty) {
    this.random = new Random(seed);
    this.faulty = faulty;
    int count = 1 + random.nextInt(most);
    stacks = IntStream.range(0, count).mapToObj(any -> 1 + random.nextInt(8) / 6).toList();
    ports = new int[count];
    for (int at = 0; at < count; at++) {
      absent.add(random.nextInt(4) == 0 ? some() : Set.of());
      if (random.nextInt(3) == 0) {
        managed.add(at);
      }
    }
    for (int tie = random.nextInt(2 * count); tie > 0 && count > 1; tie--) {
      ties.add(tie(random.nextInt(count), count));
    }
    // a switch without a link may be joined in ways that the design does not show
    for (int at = 0; at < count && count > 1; at++) {
      int here = at;
      if (ties.stream().noneMatch(tie -> tie.one() == here || tie.other() == here)) {
        ties.add(tie(at, count));
      }
    }
    for (int guest = 1 + random.nextInt(5); guest > 0; guest--) {
      guests.add(guest(count));
    }
    for (int vlan : List.of(10, 30)) {
      for (int at = 1 + random.nextInt(2); at > 0; at--) {
        gateways
            .computeIfAbsent(random.nextInt(count), any -> new TreeMap<>())
            .put(vlan, !isFaulty());
      }
    }
    List<int[]> members = new ArrayList<>();
    for (int guest = 0; guest < guests.size(); guest++) {
      for (int vlan : guests.get(guest).device() ? List.<Integer>of() : guests.get(guest).vlans()) {
        members.add(new int[] {guest, vlan});
      }
    }
    if (members.size() > 1) {
      java.util.Collections.shuffle(members, random);
      List<int[]> some = members.subList(0, 2 + random.nextInt(Math.min(3, members.size() - 1)));
      services.add(new Service(some, 1 + random.nextInt(some.size())));
    }
  }

  private boolean isFaulty() {
    return random.nextInt(faulty) == 0;
  }

  private Set<Integer> some() {
    return VLANS.stream().filter(any -> isFaulty()).collect(Collectors.toSet());
  }

  private Box box(int at) {
    return new Box(at, 1 + random.nextInt(stacks.get(at)));
  }

  private Tie tie(int one, int count) {
    int other = (one + 1 + random.nextInt(count - 1)) % count;
    boolean bundle = random.nextInt(3) == 0;
    List<Cord> cords = new ArrayList<>();
    for (int cord = bundle ? 1 + random.nextInt(3) : 1; cord > 0; cord--) {
      cords.add(
          new Cord(box(one), ++ports[one], box(other), ++ports[other], !(bundle && isFaulty())));
    }
    int least = bundle ? 1 + random.nextInt(cords.size()) : 1;
    return new Tie(
        one,
        other,
        bundle,
        least,
        bundle && isFaulty() ? 1 + random.nextInt(3) : least,
        some(),
        some(),
        !bundle && isFaulty(),
        cords);
  }

  private Guest guest(int count) {
    boolean device = random.nextInt(3) == 0;
    List<Integer> vlans = VLANS.subList(0, device ? 1 : 1 + random.nextInt(3));
    List<Jack> jacks = new ArrayList<>();
    for (int jack = device ? 1 : 1 + random.nextInt(2); jack > 0; jack--) {
      int at = random.nextInt(count);
      jacks.add(new Jack(box(at), ++ports[at], some(), isFaulty()));
    }
    Jack first = jacks.get(0);
    String name =
        device ? "the desk at s" + first.box().at() + " " + first.full() : "h" + guests.size();
    return new Guest(name, device, vlans, jacks);
  }

  String design() {
    StringBuilder text =
        new StringBuilder(
            """
            format: plumbline-design/1
            vlans: {shop: {id: 10}, yard: {id: 20}, barn: {id: 30, one-domain: true}, parked: {id: 999, unused: true}}
            roles:
              up: {mode: trunk, native: parked, tagged: [shop, yard, barn]}
              bundle1: {like: up, bundle: lacp, min-links: 1}
              bundle2: {like: up, bundle: lacp, min-links: 2}
              bundle3: {like: up, bundle: lacp, min-links: 3}
              desk: {mode: access, access: shop}
              host1: {mode: trunk, native: parked, tagged: [shop]}
              host2: {mode: trunk, native: parked, tagged: [shop, yard]}
              host3: {mode: trunk, native: parked, tagged: [shop, yard, barn]}
            switches:
            """);
    for (int at = 0; at < stacks.size(); at++) {
      List<String> keys = new ArrayList<>();
      if (stacks.get(at) > 1) {
        keys.add("stack: [1, 2]");
      }
      if (managed.contains(at)) {
        keys.add("management: {vlan: yard}");
      }
      int here = at;
      List<String> desks =
          guests.stream()
              .filter(Guest::device)
              .map(guest -> guest.jacks().get(0))
              .filter(jack -> jack.box().at() == here)
              .map(jack -> jack.box().port(jack.number()) + ": desk")
              .toList();
      if (!desks.isEmpty()) {
        keys.add("ports: {" + String.join(", ", desks) + "}");
      }
      text.append("  s").append(at).append(": {").append(String.join(", ", keys)).append("}\n");
    }
    links(text);
    hosts(text);
    text.append("gateways:\n");
    gateways.forEach(
        (at, vlans) ->
            text.append("  s")
                .append(at)
                .append(": ")
                .append(vlans.keySet().stream().map(RandomSite::name).toList())
                .append('\n'));
    text.append(services.isEmpty() ? "" : "services:\n");
    for (Service service : services) {
      text.append("  till: {members: ")
          .append(
              service.members().stream()
                  .map(one -> guests.get(one[0]).name() + " " + name(one[1]))
                  .toList())
          .append(", needs: ")
          .append(service.needs())
          .append(", survives: [switch, link, host, vlan, gateway]}\n");
    }
    return text.toString();
  }

  private static String name(int vlan) {
    return NAMES.get(VLANS.indexOf(vlan));
  }

  private void links(StringBuilder text) {
    text.append(ties.isEmpty() ? "" : "links:\n");
    for (int tie = 0; tie < ties.size(); tie++) {
      Tie of = ties.get(tie);
      List<List<String>> cords =
          of.cords().stream()
              .map(
                  cord ->
                      List.of(cord.one().port(cord.port()), cord.other().port(cord.otherPort())))
              .toList();
      String first = of.bundle() ? "Po" + (tie + 1) : cords.get(0).get(0);
      String second = of.bundle() ? "Po" + (tie + 1) : cords.get(0).get(1);
      text.append("  - {ends: [s%d %s, s%d %s], ".formatted(of.one(), first, of.other(), second));
      text.append(
          of.bundle()
              ? "role: bundle" + of.least() + ", members: " + cords + "}\n"
              : "role: up}\n");
    }
  }

  private void hosts(StringBuilder text) {
    List<Guest> hosts = guests.stream().filter(guest -> !guest.device()).toList();
    text.append(hosts.isEmpty() ? "" : "hosts:\n");
    for (Guest host : hosts) {
      text.append("  ").append(host.name()).append(": {ports: {");
      for (int jack = 0; jack < host.jacks().size(); jack++) {
        Jack one = host.jacks().get(jack);
        text.append(jack > 0 ? ", " : "")
            .append("nic")
            .append(jack)
            .append(": {to: s")
            .append(one.box().at())
            .append(' ')
            .append(one.box().port(one.number()))
            .append(", role: host")
            .append(host.vlans().size())
            .append("}");
      }
      text.append("}}\n");
    }
  }

  Map<String, String> configs() {
    Map<String, String> configs = new LinkedHashMap<>();
    for (int at = 0; at < stacks.size(); at++) {
      configs.put("s" + at, config(at));
    }
    return configs;
  }

  private String config(int at) {
    StringBuilder text = new StringBuilder("vlan " + list(VLANS, absent.get(at)) + "\n!\n");
    text.append("ip routing\n!\n");
    for (int tie = 0; tie < ties.size(); tie++) {
      Tie of = ties.get(tie);
      if (of.one() != at && of.other() != at) {
        continue;
      }
      String trunk =
          trunk(VLANS, of.one() == at ? of.lacksOne() : of.lacksOther())
              + (of.shut() && of.one() == at ? " shutdown\n" : "");
      if (of.bundle()) {
        text.append("interface Po").append(tie + 1).append('\n').append(trunk);
        int least = of.one() == at ? of.leastFound() : of.least();
        text.append(" port-channel min-links ").append(least).append("\n!\n");
      }
      for (Cord cord : of.cords()) {
        boolean one = of.one() == at;
        text.append("interface ")
            .append(one ? cord.one().port(cord.port()) : cord.other().port(cord.otherPort()))
            .append('\n')
            .append(of.bundle() ? " channel-group " + (tie + 1) + " mode active\n" : trunk)
            .append(one && !cord.up() ? " shutdown\n" : "")
            .append("!\n");
      }
    }
    for (Guest guest : guests) {
      guest.jacks().stream()
          .filter(jack -> jack.box().at() == at)
          .forEach(jack -> text.append(jack(guest, jack)));
    }
    gateways
        .getOrDefault(at, Map.of())
        .forEach(
            (vlan, works) ->
                text.append("interface Vlan")
                    .append(vlan)
                    .append("\n ip address 192.0.2.1 255.255.255.0\n no autostate\n")
                    .append(works ? "!\n" : " shutdown\n!\n"));
    return text.toString();
  }

  private static String jack(Guest guest, Jack jack) {
    String lines =
        guest.device()
            ? " switchport mode access\n switchport access vlan "
                + (jack.lacks().contains(10) ? 999 : 10)
                + "\n"
            : trunk(guest.vlans(), jack.lacks());
    return "interface "
        + jack.box().port(jack.number())
        + "\n"
        + lines
        + (jack.shut() ? " shutdown\n!\n" : "!\n");
  }

  private static String trunk(List<Integer> vlans, Set<Integer> lacks) {
    return " switchport mode trunk\n switchport trunk native vlan 999\n"
        + " switchport trunk allowed vlan "
        + list(vlans, lacks)
        + "\n";
  }

  private static String list(List<Integer> vlans, Set<Integer> lacks) {
    return vlans.stream()
            .filter(vlan -> !lacks.contains(vlan))
            .map(vlan -> vlan + ",")
            .collect(Collectors.joining())
        + "999";
  }
}
