package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Bundles that lose cables: with how many they stay up, also where they end on a multi-chassis pair
 * (the design is the example of the manual). IEEE Std 802.1AX decides which ends form a bundle;
 * that a bundle with fewer members than its minimum goes down is common practice, no source.
 */
class BundleReserveTest {
  @TempDir private Path scratch;

  private static final String VLANS =
      """
      format: plumbline-design/1
      vlans:
        voice: {id: 231}
        office: {id: 250}
        parked: {id: 999, unused: true}
      roles:
        pair-link: {mode: trunk, native: parked, tagged: [office, voice], bundle: lacp, min-links: 1}
      """;
  private static final String SHARED =
      VLANS
          + """
          switches: {core-a: {}, core-b: {}, acc: {}}
          multi-chassis: [{switches: [core-a, core-b], peer-link: Po1}]
          links:
            - {ends: [core-a Po1, core-b Po1], role: pair-link}
            - {ends: [core-a Po11, acc Po11], role: pair-link, members: [[Eth1/1, Te1/1/1]]}
            - {ends: [core-b Po11, acc Po11], role: pair-link, members: [[Eth1/1, Te1/1/2]]}
          """;
  private static final String LINK =
      VLANS
          + """
          switches: {sw1: {}, sw2: {}}
          links:
            - ends: [sw1 Po1, sw2 Po1]
              role: pair-link
              members: [[Gi1/0/1, Gi1/0/1], [Gi1/0/2, Gi1/0/2]]
          """;
  private static final String TRUNK =
      "switchport trunk native vlan 999;switchport trunk allowed vlan 231,250;"
          + "switchport mode trunk";
  private static final String ODD = TRUNK.replace("231,250", "250");

  private static String port(String name, String... lines) {
    return "interface " + name + "\n " + String.join(";", lines).replace(";", "\n ") + "\n!\n";
  }

  private static String member(int bundle, String mode) {
    return "channel-group " + bundle + " mode " + mode;
  }

  private static String campus(String name, String... ports) {
    return "version 15.2\n!\nhostname "
        + name
        + "\n!\nvtp mode transparent\n!\nspanning-tree mode rapid-pvst\n!\nvlan 231,250,999\n!\n"
        + String.join("", ports)
        + "line vty 0 4\n login local\n!\nend\n";
  }

  private static String core(String name, String mode) {
    String trunk = "switchport;" + TRUNK;
    return "version 9.3(8)\nhostname "
        + name
        + "\nfeature lacp\nfeature vpc\nvlan 231,250,999\n"
        + port("port-channel1", trunk, "vpc peer-link")
        + port("port-channel11", trunk, "vpc 11")
        + port("Ethernet1/1", trunk, member(11, mode))
        + port("Ethernet1/48", trunk, member(1, "active"));
  }

  private static String acc(String bundle, String first, String second) {
    return campus(
        "acc",
        port("Port-channel11", bundle),
        port("TenGigabitEthernet1/1/1", first),
        port("TenGigabitEthernet1/1/2", second));
  }

  private static String joins(String mode) {
    return TRUNK + ";" + member(11, mode);
  }

  private List<String> said(String design, Map<String, String> texts) throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    Files.writeString(site.resolve("design.yaml"), design);
    for (var text : texts.entrySet()) {
      Files.writeString(site.resolve(text.getKey() + ".cfg"), text.getValue());
    }
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    List<String> said = new ArrayList<>();
    outcome.findings().stream()
        .filter(one -> !one.rule().equals("config-missing"))
        .forEach(
            one ->
                said.add(one.rule() + " " + one.place().orElseThrow() + ": " + one.consequence()));
    return said;
  }

  private List<String> shared(String coreB, String acc) throws IOException {
    return said(SHARED, Map.of("core-a", core("core-a", "active"), "core-b", coreB, "acc", acc));
  }

  private List<String> link(String first, String second) throws IOException {
    return said(LINK, Map.of("sw1", first, "sw2", second));
  }

  private static String two(String name, String bundle, String first, String second) {
    return campus(
        name,
        port("Port-channel1", bundle),
        port("GigabitEthernet1/0/1", first),
        port("GigabitEthernet1/0/2", second));
  }

  private static String in(String mode) {
    return TRUNK + ";" + member(1, mode);
  }

  @Test
  void a_bundle_that_ends_on_a_pair_of_switches_as_designed_gives_nothing() throws IOException {
    assertThat(shared(core("core-b", "active"), acc(TRUNK, joins("active"), joins("passive"))))
        .isEmpty();
  }

  @Test
  void a_vlan_that_the_shared_end_lacks_is_told_once_there_and_not_again_for_each_link()
      throws IOException {
    String odd = ODD + ";" + member(11, "active");
    assertThat(shared(core("core-b", "active"), acc(ODD, odd, odd)))
        .containsExactly(
            "tagged-vlan-missing acc Port-channel11: Frames of voice (231) do not cross the"
                + " link to core-a Port-channel11 and core-b Port-channel11.");
  }

  @Test
  void a_cable_of_a_shared_bundle_that_cannot_join_is_a_reserve_lost_while_the_other_runs()
      throws IOException {
    assertThat(shared(core("core-b", "passive"), acc(TRUNK, joins("active"), joins("passive"))))
        .containsExactly(
            "link-bundle-clash core-b port-channel11: Both ends wait for the other to speak"
                + " first: the bundle does not form, and the cable is suspended, or runs alone, as"
                + " the release has it. The bundle runs on its other cables: 1 cable of 2 is lost"
                + " as a reserve.");
  }

  @Test
  void a_shared_bundle_without_any_cable_that_can_join_is_told_at_both_links() throws IOException {
    assertThat(
            said(
                SHARED,
                Map.of(
                    "core-a", core("core-a", "passive"),
                    "core-b", core("core-b", "passive"),
                    "acc", acc(TRUNK, joins("passive"), joins("passive")))))
        .hasSize(2)
        .allMatch(one -> one.startsWith("link-bundle-clash core-"))
        .noneMatch(one -> one.contains("other cables"));
  }

  @Test
  void a_shared_bundle_of_which_the_other_switch_was_not_read_is_not_said_to_be_down()
      throws IOException {
    assertThat(
            said(
                SHARED,
                Map.of(
                    "core-b", core("core-b", "passive"),
                    "acc", acc(TRUNK, joins("active"), joins("passive")))))
        .singleElement()
        .asString()
        .startsWith("link-bundle-clash core-b port-channel11: ")
        .doesNotContain("other cables");
  }

  @Test
  void a_member_of_the_shared_end_that_is_suspended_counts_beside_the_other_switchs()
      throws IOException {
    String odd = ODD + ";" + member(11, "active");
    assertThat(shared(core("core-b", "active"), acc(TRUNK, joins("active"), odd)))
        .containsExactly(
            "bundle-member-differs acc TenGigabitEthernet1/1/2: The switch suspends the"
                + " member until its lines equal those of the bundle: one cable is left of 2, and"
                + " its failure takes Port-channel11 down.");
  }

  @Test
  void min_links_of_the_shared_end_take_it_down_with_one_member() throws IOException {
    String least = TRUNK + ";port-channel min-links 2";
    String odd = ODD + ";" + member(11, "active");
    assertThat(shared(core("core-b", "active"), acc(least, joins("active"), joins("active"))))
        .containsExactly(
            "port-setting-differs acc Port-channel11: The bundle goes down with fewer than 2"
                + " links, although the design lets it run on 1.");
    assertThat(shared(core("core-b", "active"), acc(least, joins("active"), odd)))
        .contains(
            "bundle-member-differs acc TenGigabitEthernet1/1/2: The switch suspends the"
                + " member until its lines equal those of the bundle: 1 cable of 2 is left,"
                + " but Port-channel11 needs 2 and is down.");
    assertThat(shared(core("core-b", "passive"), acc(least, joins("active"), joins("passive"))))
        .filteredOn(one -> one.contains("link-bundle-clash"))
        .singleElement()
        .asString()
        .startsWith("link-bundle-clash ")
        .endsWith(
            " Of the bundle, 1 cable of 2 is left, but acc Port-channel11 needs 2 and is down.");
  }

  @Test
  void a_bundle_that_needs_all_its_cables_is_down_when_one_cannot_join() throws IOException {
    String least = TRUNK + ";port-channel min-links 2";
    String sw2 = two("sw2", TRUNK, in("active"), in("passive"));
    assertThat(link(two("sw1", TRUNK, in("active"), in("passive")), sw2))
        .singleElement()
        .asString()
        .startsWith("link-bundle-clash sw1 Port-channel1: ")
        .endsWith(" The bundle runs on its other cables: 1 cable of 2 is lost as a reserve.");
    assertThat(link(two("sw1", least, in("active"), in("passive")), sw2))
        .filteredOn(one -> one.contains("link-bundle-clash"))
        .singleElement()
        .asString()
        .startsWith("link-bundle-clash ")
        .endsWith(
            " Of the bundle, 1 cable of 2 is left, but sw1 Port-channel1 needs 2 and is down.");
  }

  @Test
  void a_shut_member_takes_a_bundle_down_that_needs_it() throws IOException {
    String sw2 = two("sw2", TRUNK, in("active"), in("active"));
    String shut = in("active") + ";shutdown";
    String least = TRUNK + ";port-channel min-links 2";
    assertThat(link(two("sw1", TRUNK, in("active"), shut), sw2))
        .singleElement()
        .asString()
        .endsWith(": This cable passes nothing, so that the bundle lacks it.");
    assertThat(link(two("sw1", least, in("active"), shut), sw2))
        .contains(
            "port-shut sw1 GigabitEthernet1/0/2: This cable passes nothing: 1 cable of 2 is"
                + " left, but Port-channel1 needs 2 and is down.");
  }

  @Test
  void a_cable_that_is_shut_is_no_other_cable_on_which_a_bundle_runs() throws IOException {
    String sw1 = two("sw1", TRUNK, in("active") + ";shutdown", in("passive"));
    assertThat(link(sw1, two("sw2", TRUNK, in("active"), in("passive"))))
        .filteredOn(one -> one.contains("link-bundle-clash"))
        .singleElement()
        .asString()
        .startsWith("link-bundle-clash ")
        .doesNotContain("other cables");
  }

  @Test
  void a_bundle_that_departs_from_its_role_is_the_one_cause_of_members_as_designed()
      throws IOException {
    assertThat(
            link(
                two("sw1", ODD, in("active"), in("active")),
                two("sw2", TRUNK, in("active"), in("active"))))
        .containsExactly(
            "tagged-vlan-missing sw1 Port-channel1: Frames of voice (231) do not cross the"
                + " link to sw2 Port-channel1. The switch suspends the member until its lines equal"
                + " those of the bundle: no member is left that passes frames, and Port-channel1 is"
                + " down.");
  }

  @Test
  void static_members_against_negotiating_ones_break_the_link_that_they_are_all_of()
      throws IOException {
    assertThat(
            link(
                two("sw1", TRUNK, in("on"), in("on")),
                two("sw2", TRUNK, in("active"), in("active"))))
        .hasSize(2)
        .allMatch(one -> one.startsWith("bundle-differs sw1 GigabitEthernet1/0/"));
  }

  @Test
  void a_member_with_a_speed_of_its_own_is_named_where_it_is_told() throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    Files.writeString(site.resolve("design.yaml"), LINK);
    Files.writeString(
        site.resolve("sw1.cfg"), two("sw1", TRUNK, in("active"), "speed 100;" + in("active")));
    Files.writeString(site.resolve("sw2.cfg"), two("sw2", TRUNK, in("active"), in("active")));
    assertThat(RuleCaseRun.run(site).findings())
        .filteredOn(one -> one.rule().equals("link-speed-duplex-differs"))
        .singleElement()
        .satisfies(
            one ->
                assertThat(one.found())
                    .isEqualTo(
                        "speed 100 at sw1 GigabitEthernet1/0/2; speed auto at sw2"
                            + " GigabitEthernet1/0/2"));
  }
}
