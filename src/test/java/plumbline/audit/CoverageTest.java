package plumbline.audit;

import static java.util.stream.Collectors.toMap;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.Role;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.port.PortName;
import plumbline.result.Result.NotChecked;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;

/** What no rule checks is said, and what a rule says that it asks it really looks at. */
class CoverageTest {
  private static final String HEAD =
      """
      format: plumbline-design/1
      vlans:
        office: {id: 250, gateway: required, name: OFFICE}
        voice: {id: 231, telephony: true}
        parked: {id: 999, unused: true}
      """;

  @Test
  void a_design_whose_every_key_has_a_rule_leaves_nothing_to_say() {
    assertThat(
            gaps(
                """
                format: plumbline-design/1
                vlans: {office: {id: 250}, parked: {id: 999, unused: true}}
                other-vlans: [500-599]
                roles:
                  desk: {mode: access, access: office, fast-start: true, negotiate: false}
                  uplink: {mode: trunk, native: parked, tagged: [office], may-carry: [500]}
                switches:
                  sw1: {dialect: campus, ports: {Gi1/0/1: desk, Gi1/0/2: uplink}}
                harmless: ["load-interval *"]
                """))
        .isEmpty();
  }

  @Test
  void what_no_rule_asks_is_listed_with_how_often_the_design_asks_it() {
    assertThat(
            gapsWithout(
                "root-unplanned",
                HEAD
                    + """
                    roles:
                      desk: {mode: access, access: office, voice: voice, bpdu-guard: true}
                      uplink: {mode: trunk, tagged: [office], fast-start: false, bundle: lacp}
                    switches:
                      sw1:
                        stack: [1, 2]
                        spanning-tree: {mode: rapid-pvst, root-of: [office], second-for: [voice]}
                        ports: {Gi1/0/1-8: desk, Gi1/0/9: spare}
                      sw2: {management: {vlan: office}, ports: {Gi1/0/1: desk}}
                    links:
                      - {ends: [sw1 Po1, sw2 Po1], role: uplink, members: [[Te1/1/1, Te1/1/1]]}
                    gateways: {sw1: [office]}
                    max-age-days: 8
                    """))
        .containsExactly(
            "switches.spanning-tree.root-of 1 switch",
            "switches.spanning-tree.second-for 1 switch");
  }

  @Test
  void only_ports_of_the_switches_of_the_run_are_counted() {
    Design design =
        RuleCaseRun.design(
            HEAD
                + """
                roles: {desk: {voice: voice}, other: {udld: true}}
                switches:
                  sw1: {ports: {Gi1/0/1-8: desk}}
                  sw2: {ports: {Gi1/0/1: desk, Gi1/0/2: other}}
                gateways: {sw2: [office]}
                """);
    assertThat(Coverage.gaps(design, Set.of("sw1"), List.of()))
        .contains(new NotChecked("voice", 8, "port"))
        .noneMatch(one -> one.key().equals("udld"));
  }

  @TestFactory
  Stream<DynamicTest> every_key_of_a_role_is_asked_by_a_rule_or_reported() throws IOException {
    Design design = RuleCaseRun.design(Files.readString(Path.of("testdata/design/every-key.yaml")));
    Set<String> asked =
        RuleCatalogue.ALL.stream()
            .flatMap(rule -> rule.info().keys().stream())
            .collect(Collectors.toSet());
    Set<String> reported =
        Coverage.gaps(design, design.switches().keySet(), RuleCatalogue.ALL).stream()
            .map(NotChecked::key)
            .collect(Collectors.toSet());
    return RoleKeys.ALL.stream()
        .map(RoleKey::name)
        .map(
            key ->
                DynamicTest.dynamicTest(
                    key,
                    () ->
                        assertThat(Stream.concat(asked.stream(), reported.stream()))
                            .as("rules ask %s, reports name %s", asked, reported)
                            .anyMatch(one -> one.equals(key) || one.startsWith(key + ": "))));
  }

  @Test
  void the_manual_names_the_keys_of_roles_that_have_a_rule() throws IOException {
    String manual = Files.readString(Path.of("docs/design.md")).replaceAll("\\s+", " ");
    String sentence =
        manual.replaceFirst(".*Rules of this version check (.*?)\\. The others may.*", "$1");
    Set<String> named =
        Stream.of(sentence.split("`", -1))
            .filter(word -> word.matches("[a-z].*[a-z]") && !word.contains(" and"))
            .filter(word -> !word.equals("and"))
            .collect(Collectors.toSet());
    Set<String> asked =
        RuleCatalogue.ALL.stream()
            .flatMap(rule -> rule.info().keys().stream())
            .filter(CoverageTest::isOfRoles)
            .collect(Collectors.toSet());
    assertThat(named).isEqualTo(asked);
  }

  private static boolean isOfRoles(String asked) {
    return RoleKeys.ALL.stream()
        .map(RoleKey::name)
        .anyMatch(key -> asked.equals(key) || asked.startsWith(key + ": "));
  }

  @Test
  void of_gateways_only_what_needs_more_than_one_config_stays_unchecked() {
    assertThat(
            gaps(
                """
                format: plumbline-design/1
                vlans:
                  office: {id: 250, gateway: required, filter: true, name: OFFICE}
                  stage: {id: 240, gateway: forbidden}
                  lab: {id: 260}
                switches: {sw1: {ports: {Gi1/0/9: spare}}}
                gateways:
                  sw1: {office: {address: 192.0.2.1, active: true}, lab: {active: true}}
                  edge-router: {at: [sw1 Gi1/0/47], vlans: [office]}
                """))
        .containsExactly("gateways.active beside an outside gateway 1 VLAN");
  }

  @Test
  void a_catalogue_without_rules_leaves_every_key_of_every_role_unchecked() throws IOException {
    Design design = RuleCaseRun.design(Files.readString(Path.of("testdata/design/every-key.yaml")));
    Set<String> used =
        design.ports().values().stream()
            .flatMap(ports -> ports.values().stream())
            .flatMap(port -> port.role().wishes().keySet().stream())
            .map(RoleKey::name)
            .collect(Collectors.toSet());
    assertThat(Coverage.gaps(design, design.switches().keySet(), List.of()))
        .extracting(NotChecked::key)
        .containsAll(used)
        .contains("harmless", "vlans.unused", "vlans.one-domain", "services", "hosts.pairs")
        .contains(
            "vlans.gateway: required", "vlans.gateway: forbidden", "vlans.filter", "vlans.name")
        .contains("gateways", "spare");
  }

  /** Of each rule's own cases one at least must change when the key is taken from its roles. */
  @TestFactory
  Stream<DynamicTest> a_rule_looks_at_the_keys_that_it_says_it_asks() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Rule rule : RuleCatalogue.ALL) {
      for (String asked : rule.info().keys()) {
        RoleKeys.ALL.stream()
            .filter(key -> asked.equals(key.name()) || asked.startsWith(key.name() + ": "))
            .forEach(
                key ->
                    tests.add(
                        DynamicTest.dynamicTest(
                            rule.info().id() + " " + asked,
                            () -> assertThat(isLookedAt(rule.info().id(), key)).isTrue())));
      }
    }
    return tests.stream();
  }

  private static boolean isLookedAt(String rule, RoleKey<?> key) throws IOException {
    try (Stream<Path> cases = Files.list(Path.of("testdata/rules", rule))) {
      for (Path folder : cases.toList()) {
        if (!said(rule, RuleCaseRun.run(folder))
            .equals(said(rule, RuleCaseRun.run(folder, design -> without(key, design))))) {
          return true;
        }
      }
    }
    return false;
  }

  private static String said(String rule, AuditOutcome outcome) {
    return outcome.findings().stream().filter(one -> one.rule().equals(rule)).toList()
        + " "
        + outcome.checks().stream().filter(one -> one.rule().equals(rule)).toList();
  }

  private static Design without(RoleKey<?> key, Design design) {
    Map<String, Map<PortName, DesignPort>> ports =
        design.ports().entrySet().stream()
            .collect(
                toMap(
                    Map.Entry::getKey,
                    entry ->
                        entry.getValue().entrySet().stream()
                            .collect(
                                toMap(Map.Entry::getKey, port -> without(key, port.getValue())))));
    return new Design(
        design.files(),
        design.site(),
        design.revision(),
        design.vlans(),
        design.otherVlans(),
        design.roles(),
        design.switches(),
        design.hosts(),
        design.links(),
        design.gateways(),
        design.multiChassis(),
        design.services(),
        design.silentRules(),
        design.maxAgeDays(),
        design.harmless(),
        ports);
  }

  private static DesignPort without(RoleKey<?> key, DesignPort port) {
    Map<RoleKey<?>, Wanted<?>> wishes = new HashMap<>(port.role().wishes());
    wishes.remove(key);
    Role role = new Role(port.role().name(), port.role().at(), wishes);
    return new DesignPort(
        port.switchName(), port.port(), role, port.subject(), port.place(), port.at());
  }

  private static List<String> gaps(String text) {
    return gapsWithout("", text);
  }

  /** What would be open if a rule were not there. */
  private static List<String> gapsWithout(String rule, String text) {
    Design design = RuleCaseRun.design(text);
    List<Rule> rules =
        RuleCatalogue.ALL.stream().filter(one -> !one.info().id().equals(rule)).toList();
    return Coverage.gaps(design, design.switches().keySet(), rules).stream()
        .map(one -> one.key() + " " + one.uses() + " " + one.of())
        .toList();
  }
}
