package plumbline.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import plumbline.design.Design;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.result.Change;
import plumbline.result.Change.Kind;
import plumbline.result.State;
import plumbline.result.WindowFinding;
import plumbline.vlan.VlanSet;

/** What holds for every window, whatever the configs. */
class WindowPropertyTest {
  private static final Design DESIGN =
      Windows.design(
          """
          vlans:
            a: {id: 10, name: A}
            b: {id: 20}
            parked: {id: 999, unused: true}
          roles:
            uplink: {mode: trunk, native: parked, tagged: [a, b], fast-start: true}
            desk: {mode: access, access: a, bpdu-guard: true, description: "desk *"}
          switches:
            sw1: {ports: {Gi1/0/1-2: uplink, Gi1/0/3-4: desk, Gi1/0/5: spare}}
          """);

  /** A stanza as its header and its lines, and how its lines may be written otherwise. */
  private record Stanza(String header, List<String> lines) {}

  private static final List<List<String>> PORT_LINES =
      List.of(
          List.of("description desk one", "description link", ""),
          List.of(
              "switchport mode access",
              "switchport mode trunk",
              "switchport mode dynamic auto",
              ""),
          List.of("switchport access vlan 10", "switchport access vlan 20", ""),
          List.of("switchport trunk native vlan 999", "switchport trunk native vlan 10", ""),
          List.of(
              "switchport trunk allowed vlan 10,20",
              "switchport trunk allowed vlan 10,20,30-40",
              "switchport trunk allowed vlan 10",
              "switchport trunk allowed vlan none",
              ""),
          List.of("spanning-tree portfast", "spanning-tree portfast trunk", ""),
          List.of("spanning-tree bpduguard enable", ""),
          List.of("storm-control broadcast level 1.00", ""),
          List.of("load-interval 30", "frobnicate 7", ""),
          List.of("shutdown", ""));

  @Provide
  static Arbitrary<List<Stanza>> configs() {
    Arbitrary<List<String>> lines =
        Combinators.combine(PORT_LINES.stream().map(Arbitraries::of).collect(Collectors.toList()))
            .as(chosen -> chosen.stream().filter(line -> !line.isEmpty()).toList());
    Arbitrary<List<List<String>>> ports = lines.list().ofSize(6);
    Arbitrary<Set<Integer>> vlans = Arbitraries.of(10, 20, 30, 999).set().ofMinSize(1).ofMaxSize(4);
    return Combinators.combine(ports, vlans)
        .as(
            (stanzas, ids) -> {
              List<Stanza> all = new ArrayList<>();
              ids.stream()
                  .sorted()
                  .forEach(id -> all.add(new Stanza("vlan " + id, List.of("name V" + id))));
              for (int port = 1; port <= stanzas.size(); port++) {
                all.add(new Stanza("interface GigabitEthernet1/0/" + port, stanzas.get(port - 1)));
              }
              return all;
            });
  }

  private static String text(List<Stanza> stanzas) {
    StringBuilder body = new StringBuilder();
    for (Stanza stanza : stanzas) {
      body.append(stanza.header()).append('\n');
      stanza.lines().forEach(line -> body.append(' ').append(line).append('\n'));
      body.append("!\n");
    }
    return Windows.campus(body.toString());
  }

  /** The same config in other words: order, abbreviations, lists in pieces, indent, line ends. */
  private static String rewritten(List<Stanza> stanzas, Random random) {
    List<Stanza> shuffled = new ArrayList<>(stanzas);
    Collections.shuffle(shuffled, random);
    StringBuilder body = new StringBuilder();
    String indent = random.nextBoolean() ? "   " : "\t";
    for (Stanza stanza : shuffled) {
      body.append(stanza.header().replace("interface GigabitEthernet", "int gi ")).append('\n');
      List<String> lines = new ArrayList<>(stanza.lines());
      Collections.shuffle(lines, random);
      for (String line : lines) {
        abbreviated(line, random).forEach(one -> body.append(indent).append(one).append('\n'));
      }
      body.append("!\n! a remark ").append(random.nextInt()).append('\n');
    }
    String text = Windows.campus(body.toString());
    return random.nextBoolean() ? text.replace("\n", "\r\n") : text;
  }

  private static List<String> abbreviated(String line, Random random) {
    return switch (random.nextInt(3)) {
      case 0 -> List.of(line);
      case 1 ->
          List.of(
              line.replace("switchport trunk allowed vlan", "SW  TR all vl")
                  .replace("switchport mode", "sw mo")
                  .replace("switchport access vlan", "sw acc vl")
                  .replace("spanning-tree portfast", "span portf")
                  .replace("load-interval", "load-int")
                  .replace("shutdown", "shut"));
      default ->
          switch (line) {
            case "switchport trunk allowed vlan 10,20" ->
                List.of("switchport trunk allowed vlan 20", "switchport trunk allowed vlan add 10");
            case "switchport trunk allowed vlan 10,20,30-40" ->
                List.of(
                    "switchport trunk allowed vlan 10,30-35",
                    "switchport trunk allowed vlan add 20,36-41",
                    "switchport trunk allowed vlan remove 41");
            case "shutdown" -> List.of("no shutdown", "shutdown");
            default -> List.of(line);
          };
    };
  }

  @Property(tries = 60)
  void a_config_and_itself_differ_in_nothing(@ForAll("configs") List<Stanza> stanzas) {
    SwitchWindow window = Windows.window(text(stanzas), text(stanzas));
    assertThat(Windows.told(Windows.changes(window, DESIGN))).isEmpty();
    assertThat(LineComparison.of(window, Set.of())).isEmpty();
  }

  @Property(tries = 120)
  void a_config_and_an_equal_rewriting_of_it_differ_in_nothing(
      @ForAll("configs") List<Stanza> stanzas, @ForAll long seed) {
    SwitchWindow window = Windows.window(text(stanzas), rewritten(stanzas, new Random(seed)));
    assertThat(Windows.told(Windows.changes(window, DESIGN))).isEmpty();
    assertThat(LineComparison.of(window, Set.of())).isEmpty();
  }

  @Property(tries = 120)
  void from_after_to_before_is_the_mirror_of_from_before_to_after(
      @ForAll("configs") List<Stanza> one, @ForAll("configs") List<Stanza> other) {
    List<Change> there = Windows.changes(Windows.window(text(one), text(other)), DESIGN);
    List<Change> back = Windows.changes(Windows.window(text(other), text(one)), DESIGN);
    assertThat(back.stream().map(change -> shown(change, false)).toList())
        .containsExactlyInAnyOrderElementsOf(
            there.stream().map(change -> shown(change, true)).toList());
  }

  private static String shown(Change change, boolean mirrored) {
    Kind kind =
        !mirrored
            ? change.kind()
            : change.kind() == Kind.TOWARDS
                ? Kind.AWAY
                : change.kind() == Kind.AWAY ? Kind.TOWARDS : change.kind();
    Optional<String> first = mirrored ? change.after() : change.before();
    Optional<String> second = mirrored ? change.before() : change.after();
    return kind
        + " "
        + change.place()
        + " "
        + change.setting()
        + " "
        + change.vlans()
        + " "
        + first
        + " "
        + second;
  }

  @Provide
  static Arbitrary<List<Finding>> findings() {
    return Combinators.combine(
            Arbitraries.of("tagged-vlan-missing", "bpdu-guard-missing", "port-shut"),
            Arbitraries.of("sw1", "sw2", "sw3"),
            Arbitraries.of("Gi1/0/1", "Gi1/0/2"),
            Arbitraries.of(Severity.BREAKS, Severity.WEAKENS, Severity.UNVERIFIED),
            Arbitraries.integers().between(1, 8).set().ofMaxSize(4))
        .as(WindowPropertyTest::finding)
        .list()
        .ofMaxSize(12)
        .map(
            all ->
                List.copyOf(
                    all.stream()
                        .collect(
                            Collectors.toMap(Finding::id, one -> one, (first, second) -> first))
                        .values()));
  }

  private static Finding finding(
      String rule, String name, String port, Severity severity, Set<Integer> vlans) {
    return new Finding(
        rule,
        severity,
        Optional.of(Place.ofPort(name, port)),
        Optional.empty(),
        List.of(),
        VlanSet.of(vlans.stream().mapToInt(Integer::intValue).toArray()),
        "",
        "",
        "",
        "",
        List.of(),
        Optional.empty());
  }

  @Property(tries = 200)
  void cleared_standing_and_introduced_part_the_findings_and_their_vlans(
      @ForAll("findings") List<Finding> before, @ForAll("findings") List<Finding> after) {
    List<WindowFinding> all = new FindingComparison(Set.of(), Set.of("sw3")).of(before, after);
    Set<String> ids = new HashSet<>();
    before.forEach(one -> ids.add(one.id()));
    after.forEach(one -> ids.add(one.id()));
    assertThat(all.stream().map(one -> one.finding().id()).toList())
        .containsExactlyInAnyOrderElementsOf(ids);
    for (WindowFinding one : all) {
      VlanSet was = vlans(before, one);
      VlanSet is = vlans(after, one);
      switch (one.state()) {
        case NEW -> assertThat(isIn(before, one)).isFalse();
        case CLEARED -> {
          assertThat(isIn(after, one)).isFalse();
          assertThat(one.finding().switchName()).isNotEqualTo("sw3");
        }
        case STANDING -> assertThat(was).isEqualTo(is);
        case CHANGED -> {
          assertThat(one.newVlans()).isEqualTo(is.minus(was));
          assertThat(one.clearedVlans()).isEqualTo(was.minus(is));
          assertThat(is.minus(one.newVlans()).plus(one.clearedVlans())).isEqualTo(was);
        }
        case UNCHECKED -> assertThat(isIn(before, one)).isTrue();
      }
    }
  }

  private static boolean isIn(List<Finding> findings, WindowFinding one) {
    return findings.stream().anyMatch(other -> other.id().equals(one.finding().id()));
  }

  private static VlanSet vlans(List<Finding> findings, WindowFinding one) {
    return findings.stream()
        .filter(other -> other.id().equals(one.finding().id()))
        .map(Finding::vlans)
        .findFirst()
        .orElse(VlanSet.NONE);
  }

  @Property(tries = 100)
  void what_was_cleared_one_way_is_introduced_the_other_way(
      @ForAll("findings") List<Finding> before, @ForAll("findings") List<Finding> after) {
    FindingComparison comparison = new FindingComparison(Set.of(), Set.of());
    assertThat(ids(comparison.of(before, after), State.CLEARED))
        .isEqualTo(ids(comparison.of(after, before), State.NEW));
  }

  private static Set<String> ids(List<WindowFinding> all, State state) {
    return all.stream()
        .filter(one -> one.state() == state)
        .map(one -> one.finding().id())
        .collect(Collectors.toSet());
  }
}
