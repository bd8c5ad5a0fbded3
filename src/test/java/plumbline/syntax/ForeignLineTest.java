package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import plumbline.statement.SwitchText;

/** Tests lines that do not belong where they stand, wrapped ones, and texts that are only parts. */
class ForeignLineTest {
  private static final ConfigReader READER = new ConfigReader(new StatementParser());
  private static final String HEAD = "hostname A\nvtp mode transparent\n";

  private static List<SwitchText> read(String text) {
    return READER.read("a.cfg", "a", text);
  }

  private static SwitchText one(String text) {
    List<SwitchText> switches = read(text);
    assertThat(switches).hasSize(1);
    return switches.get(0);
  }

  private static String inPort(String lines) {
    return "interface GigabitEthernet1/0/1\n switchport mode trunk\n" + lines;
  }

  @Test
  void aForeignLineInAPortIsAnUnknownStatementOfIt() {
    for (String foreign : List.of("junk", "wrapped text of it", "ip http server")) {
      assertThat(Shown.told(one(inPort(foreign + "\n switchport nonegotiate\n"))))
          .isEqualTo(
              "1:1 TOP interface GigabitEthernet1/0/1\n2:2 PORT switchport mode trunk\n3:1 PORT ? "
                  + Reader.firstWord(foreign)
                  + " interface\n4:2 PORT switchport nonegotiate");
    }
  }

  @Test
  void aLineBesideAPortWithOtherLinesBelowIsNoForeignOne() {
    assertThat(Shown.told(one(inPort("junk\n description of the junk\n"))))
        .endsWith("3:1 TOP ? junk\n4:2 OTHER (Harmless[keyword=junk])");
    assertThat(Shown.told(one(inPort("!\njunk\n switchport nonegotiate\n"))))
        .endsWith("4:1 TOP ? junk\n5:2 OTHER (Harmless[keyword=junk])");
  }

  @Test
  void aBlankPromptAndALogLineWithoutMarkAreNoise() {
    for (String noise : List.of("A#", "Nov 25 10:00:00.123: some log without percent")) {
      assertThat(Shown.told(one(HEAD + inPort(noise + "\n switchport nonegotiate\n"))))
          .endsWith("4:2 PORT switchport mode trunk\n6:2 PORT switchport nonegotiate");
    }
  }

  @Test
  void aWrappedListIsJoinedOrInDoubtAndNeverShort() {
    String list = " switchport trunk allowed vlan 220,231";
    assertThat(Shown.told(one(inPort(list + ",\n    232,999\n switchport nonegotiate\n"))))
        .endsWith(
            "3-4:2 PORT switchport trunk allowed vlan 220,231,232,999\n"
                + "5:2 PORT switchport nonegotiate");
    assertThat(Shown.told(one(inPort(list + ",\n232\n"))))
        .endsWith("3-4:2 PORT switchport trunk allowed vlan 220,231,232");
    assertThat(Shown.told(one(inPort(list + "\n2,999\n switchport nonegotiate\n"))))
        .endsWith(
            "3:2 PORT ? switchport switchport\n4:1 PORT ? 2,999\n5:2 PORT switchport nonegotiate");
    assertThat(Shown.told(one(inPort(list + "\n2\n"))))
        .endsWith("3:2 PORT ? switchport switchport\n4:1 PORT ? 2");
  }

  @Test
  void aCampusTextWithoutItsEndIsCutShortUnlessItReachesTheConsoles() {
    String text = HEAD + inPort(" switchport trunk allowed vlan 220,23");

    assertThat(one(text).truncation())
        .hasValueSatisfying(
            cut -> {
              assertThat(cut.line()).isEqualTo(3);
              assertThat(cut.why()).isEqualTo("no end line");
            });
    assertThat(one("A#show run\n" + text + "\nA#exit\n").truncation()).isPresent();
    assertThat(one(text + "\nline vty 0 4\n login\n").truncation()).isEmpty();
    assertThat(one(text + "\nend\n").truncation()).isEmpty();
    assertThat(one(text.replace("GigabitEthernet", "Ethernet")).truncation()).isEmpty();
  }

  @Test
  void aPagerMarkBeforeAPromptIsWhereTheTextStops() {
    assertThat(one("A#show run\nhostname A\ninterface Gi1/0/1\n shutdown\n --More-- \nA#exit\n"))
        .satisfies(
            text ->
                assertThat(text.truncation().orElseThrow().why())
                    .isEqualTo("the text stops at a pager mark"));
  }

  @Test
  void aNameAndSomePortsAloneAreAFragment() {
    String fragment = "hostname A\n" + inPort("!\ninterface Vlan10\n shutdown\n");

    assertThat(one(fragment).script()).isTrue();
    assertThat(one(fragment + "end\n").script()).isFalse();
    assertThat(one("version 15.2\n" + fragment).script()).isFalse();
    assertThat(one(HEAD + fragment).script()).isFalse();
    assertThat(one("A#show run\n" + fragment).script()).isFalse();
  }

  @Test
  void theSameNameBehindTheEndIsNoSecondConfig() {
    String text = HEAD + inPort("end\nhostname ");

    assertThat(read(text + "A\n")).hasSize(1);
    assertThat(read(text + "B\n")).hasSize(2);
    assertThat(read(text + "A\nvlan 10\n")).hasSize(2);
  }
}
