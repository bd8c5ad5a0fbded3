package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.report.ReportForm;

/**
 * Plants secrets of every common form (common practice, no source) in every place of a config, and
 * looks for them in everything that every command writes.
 */
class SecretsTest {
  /** Every secret of the texts below holds one of these, in some form. */
  private static final List<String> MARKS =
      List.of(
          "zQ7x",
          "094F471A1A0A",
          "0822455D0A16",
          "3082022930820192",
          "Qm9hdHMgYW5k",
          "d41d8cd98f00");

  private static final String WHOLE_SWITCH =
      """
      version 15.2
      service password-encryption
      hostname NORTH-SW1
      enable secret 5 $1$zQ7x$zQ7xEnableHashAAAAAAAA.
      enable secret 9 $9$zQ7xAbCdEf$zQ7xLongScryptHash/0123456789
      enable password zQ7xEnablePlain
      enable secret level 15 zQ7xLevel
      username admin privilege 15 secret 8 $8$zQ7x$zQ7xPbkdf
      username oper password 7 094F471A1A0A
      username plain password 0 zQ7xUser
      aaa group server tacacs+ TAC
       server-private 192.0.2.9 key 7 0822455D0A16
      tacacs-server host 192.0.2.9 key zQ7xTacacs
      tacacs-server key 7 094F471A1A0A
      tacacs server T1
       address ipv4 192.0.2.9
       key zQ7xTacacsBlock
      radius-server host 192.0.2.8 auth-port 1812 key 7 0822455D0A16
      radius-server key zQ7xRadius
      radius server R1
       key 6 zQ7xRadiusBlock
      snmp-server community zQ7xRead RO
      snmp-server community zQ7xWrite RW 10
      snmp-server host 192.0.2.7 version 2c zQ7xTrap
      snmp-server host 192.0.2.7 zQ7xTrapOld
      snmp-server user mon GRP v3 auth sha zQ7xAuth priv aes 128 zQ7xPriv
      key chain K
       key 1
        key-string 7 094F471A1A0A
        key-string zQ7xChain
      crypto isakmp key zQ7xIke address 192.0.2.1
      crypto pki certificate chain TP
       certificate self-signed 01
        30820229 30820192 A0030201 02020101
        3082022930820192A003020102020101
        quit
      router ospf 1
       area 0 authentication message-digest
      router bgp 64512
       neighbor 192.0.2.2 password 7 0822455D0A16
       neighbor 192.0.2.2 password zQ7xBgp
      wlan OFFICE 1 office
       security wpa psk set-key ascii 0 zQ7xWlan
      ntp authentication-key 1 md5 zQ7xNtp 7
      ip ftp password zQ7xFtp
      frobnicate the password zQ7xUnknown
      zQ7xNotAStatementAtAll$1$zQ7x$aaaaaaaaaaaa
      vtp password zQ7xVtp
      vlan 250
       name secret:zQ7xVlanName
      vlan 251
       name $1$zQ7x$zQ7xHashAsName
      banner motd ^C
      the password is zQ7xBanner and the community: zQ7xBanner2
      ^C
      """;

  private static final String PORT =
      """
      interface GigabitEthernet1/0/1
       description uplink password zQ7xDescr
       switchport access vlan 250
       switchport mode access
       ppp chap password 7 094F471A1A0A
       ip ospf message-digest-key 1 md5 7 0822455D0A16
       ip ospf authentication-key zQ7xOspf
       standby 1 authentication md5 key-string zQ7xHsrp
       standby 1 authentication zQ7xHsrpPlain
       vrrp 1 authentication text zQ7xVrrp
       glbp 1 authentication md5 key-string 7 094F471A1A0A
       frobnicate key zQ7xInPort
       wpa-psk ascii zQ7xPsk
       switchport trunk allowed vlan 10,password,zQ7xGarbled
       speed zQ7xSpeed password
      interface GigabitEthernet1/0/2
       description key=zQ7xGlued
      interface GigabitEthernet1/0/3
       description hash d41d8cd98f00b204e9800998ecf8427e
      interface GigabitEthernet1/0/4
       description Qm9hdHMgYW5kIGZlcnJpZXMgYXJlIGJvYXRzMTIz
      interface GigabitEthernet1/0/5
       description secret "zQ7xQuoted" and pass: zQ7xPass
      interface Vlan250
       ip address 192.0.2.1 255.255.255.0
       standby 1 ip 192.0.2.3
       standby 1 authentication zQ7xGateway
      line vty 0 4
       password 7 094F471A1A0A
       password zQ7xVty
       login
      end
      """;

  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {office: {id: 250}, parked: {id: 999, unused: true}}
      roles: {desk: {mode: trunk, native: parked, tagged: [office], fast-start: true}}
      switches:
        NORTH-SW1: {ports: {Gi1/0/1-5: desk, Gi1/0/9: desk}}
      """;

  private static final String HEADLESS =
      """
      format: plumbline-design/1
      vlans: {office: {id: 250}}
      switches: {NORTH-SW1: {}}
      """;

  @TempDir private Path folder;

  private Path design;

  @BeforeEach
  void write_a_design() throws IOException {
    design = Files.writeString(folder.resolve("design.yaml"), DESIGN);
  }

  @Test
  void no_command_shows_a_secret_of_a_config() throws IOException {
    String config = WHOLE_SWITCH + PORT;
    everything(config, "whole");
    everything(config.replace("\n ", "\n"), "without-indentation");
    everything(config.replace("\n", "\r\n"), "crlf");
    everything(
        "north-sw1#show running-config\n" + config + "north-sw1#enable secret zQ7xPrompt\n",
        "capture");
    everything(config.substring(0, config.indexOf("ppp chap") + 20), "cut-short");
    everything(config.replace("banner motd ^C", "banner motd ^"), "open-banner");
  }

  @Test
  void a_secret_in_every_single_line_of_a_port_stays_hidden() throws IOException {
    for (String line : PORT.lines().filter(one -> one.startsWith(" ")).toList()) {
      everything("hostname NORTH-SW1\ninterface GigabitEthernet1/0/1\n" + line + "\nend\n", "line");
    }
  }

  @Test
  void a_binary_file_is_not_quoted() throws IOException {
    Path file = folder.resolve("NORTH-SW1.cfg");
    Files.writeString(file, "enable secret zQ7xBinary\u0000");
    check(Run.of("audit", design.toString(), file.toString()), "binary");
    check(Run.of("settings", file.toString()), "binary");
  }

  @Test
  void a_secret_that_strayed_into_a_design_is_not_shown() throws IOException {
    for (String stray :
        List.of(
            "snmp-community: zQ7xDesign\n",
            "enable secret 5 $1$zQ7x$zQ7xEnableHashAAAAAAAA.\n",
            "enable secret zQ7xPlain\n",
            "username admin password zQ7xUser\n",
            "password: {x: [zQ7xA, zQ7xB]}\n",
            "site: {password: zQ7xSite}\n",
            "revision: [password, zQ7xRevision]\n",
            "harmless: {key: zQ7xHarmless}\n",
            "max-age-days: password zQ7xDays\n",
            "secret zQ7xKey: 1\n",
            "links: {password: zQ7xLinks}\n",
            "hosts: {password: [zQ7xHost]}\n",
            "services: {password: zQ7xService}\n",
            "roles: {password: {mode: zQ7xMode}}\n",
            "roles: {password: {access: zQ7xVlan, tagged: [zQ7xTagged]}}\n",
            "roles: {password: {zQ7xKey: 1, like: zQ7xRole}}\n",
            "hosts: {secret: {ports: {zQ7xNic: {to: NORTH-SW1 zQ7xPort, role: zQ7xRole}}}}\n",
            "hosts:\n  community:\n    zQ7xA: 1\n    zQ7xA: zQ7xTwice\n",
            "services: {api-key: {members: [zQ7xHost zQ7xVlan], needs: zQ7xNeeds}}\n",
            "switches: {password: {dialect: zQ7xDialect, ports: {zQ7xRange: zQ7xRole}}}\n")) {
      Path file = Files.writeString(folder.resolve("stray.yaml"), DESIGN + stray);
      Run run = Run.of("audit", file.toString(), folder.toString());
      assertThat(run.status()).as(stray).isEqualTo(64);
      assertThat(run.err()).as(stray).isNotEmpty();
      check(run, stray);
    }
  }

  @Test
  void what_stands_under_a_secret_name_is_masked_and_the_words_of_a_design_are_not()
      throws IOException {
    String roles =
        """
        roles:
          password: zQ7xRole
          secret: {mode: zQ7xMode, like: zQ7xLike, zQ7xKey: 1, fast-start: zQ7x}
        """;
    Path file = Files.writeString(folder.resolve("stray.yaml"), HEADLESS + roles);
    assertThat(Run.of("audit", file.toString(), folder.toString()).err().lines())
        .containsExactly(
            file + ":5:13: role \"password\" must be a map with keys such as \"like\", found ***",
            file + ":6:18: \"mode\" must be \"access\", \"trunk\" or \"routed\", found ***",
            file + ":6:34: unknown role ***; expected \"password\" or \"secret\"",
            file
                + ":6:44: unknown key *** in a role; expected \"access\", \"voice\", \"native\","
                + " \"tagged\", \"may-carry\" or 17 more",
            file + ":6:68: \"fast-start\" must be true or false, found ***");
  }

  @Test
  void site_and_revision_of_a_design_are_masked_in_every_output() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("named.yaml"),
            DESIGN + "site: Pier, password zQ7xSite\nrevision: key_zQ7xRevision\n");
    Path config = Files.writeString(folder.resolve("NORTH-SW1.cfg"), WHOLE_SWITCH + PORT);
    Path json = folder.resolve("r.json");
    Run run = Run.of("audit", file.toString(), config.toString(), "--report", json.toString());
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("of Pier, password ***, design key_***,");
    assertThat(Files.readString(json))
        .contains("\"site\": \"Pier, password ***\"", "\"revision\": \"key_***\"");
    check(run, "site and revision");
    check(Files.readString(json), "site and revision in the json");
  }

  @Test
  void a_config_in_the_place_of_a_design_is_not_quoted() throws IOException {
    Path file = Files.writeString(folder.resolve("config.yaml"), WHOLE_SWITCH + PORT);
    Run run = Run.of("audit", file.toString(), folder.toString());
    assertThat(run.status()).isEqualTo(64);
    check(run, "config as design");
  }

  private void everything(String config, String what) throws IOException {
    Path file = Files.writeString(folder.resolve("NORTH-SW1.cfg"), config);
    Path json = folder.resolve("r.json");
    Path csv = folder.resolve("r.csv");
    List<Run> runs = new ArrayList<>();
    List<String> audit =
        new ArrayList<>(List.of("audit", design.toString(), file.toString(), "--colour", "always"));
    for (String ending : ReportForm.endings()) {
      audit.addAll(List.of("--report", folder.resolve("r" + ending).toString()));
    }
    runs.add(Run.of(audit.toArray(String[]::new)));
    for (String ending : ReportForm.endings()) {
      check(Files.readString(folder.resolve("r" + ending)), what + " audit " + ending);
    }
    runs.add(
        Run.of(
            "settings",
            file.toString(),
            "--design",
            design.toString(),
            "--report",
            json.toString(),
            "--report",
            csv.toString()));
    check(Files.readString(json), what + " settings json");
    check(Files.readString(csv), what + " settings csv");
    runs.add(Run.of("settings", file.toString(), "--at", "Gi1/0/1"));
    runs.add(Run.reading(config, "audit", design.toString(), "-"));
    for (Run run : runs) {
      assertThat(run.status()).as(what).isLessThan(64);
      assertThat(run.out()).as(what).contains("NORTH-SW1");
      check(run, what);
    }
    Files.delete(file);
  }

  private static void check(Run run, String what) {
    check(run.out(), what + " standard output");
    check(run.err(), what + " standard error");
  }

  private static void check(String output, String what) {
    // Wrapping must not be what hides a secret, so lines are also looked at joined.
    Stream.of(output, output.replaceAll("\\s+(\\| +)?", ""))
        .forEach(
            text ->
                MARKS.forEach(
                    mark ->
                        assertThat(
                                text.lines()
                                    .filter(line -> line.contains(mark))
                                    .map(SecretsTest::around))
                            .as(what)
                            .isEmpty()));
  }

  private static String around(String line) {
    int at = MARKS.stream().mapToInt(line::indexOf).filter(i -> i >= 0).min().orElse(0);
    return line.substring(Math.max(0, at - 80), Math.min(line.length(), at + 80));
  }
}
