package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.SwitchText;
import plumbline.statement.SwitchText.Truncation;

class ConfigReaderTest {
  private static final StatementParser PARSER = new StatementParser();

  private static List<SwitchText> read(String text) {
    return new ConfigReader(PARSER).read("configs/north-sw1.cfg", "north-sw1", text);
  }

  private static SwitchText one(String text) {
    List<SwitchText> switches = read(text);
    assertThat(switches).hasSize(1);
    return switches.get(0);
  }

  // ------------------------------------------------------------------------------------ lines

  @Test
  void everyLineIsInOneStatementAndRunsOfLayoutAreOneStatement() {
    SwitchText text =
        one(
            """


            !
            ! a comment
            interface GigabitEthernet1/0/1
             switchport mode trunk
            !
            # another
            end
            after it
            and more
            """);

    assertThat(Shown.all(text))
        .isEqualTo(
            """
            1-2:1 TOP (blank)
            3-4:1 TOP (comment)
            5:1 TOP interface GigabitEthernet1/0/1
            6:2 PORT switchport mode trunk
            7-8:1 PORT (comment)
            9:1 TOP end
            10-11:1 TOP (noise)""");
    assertThat(text.firstLine()).isEqualTo(1);
    assertThat(text.lastLine()).isEqualTo(11);
  }

  @Test
  void linesEndInLfCrlfOrCrAlone() {
    String config = "vlan 10\n name A\n!\ninterface Gi1/0/1\n no shutdown\n";
    String expected = Shown.all(one(config));

    assertThat(expected).startsWith("1:1 TOP vlan 10\n2:2 VLAN name A\n");
    assertThat(Shown.all(one(config.replace("\n", "\r\n")))).isEqualTo(expected);
    assertThat(Shown.all(one(config.replace('\n', '\r')))).isEqualTo(expected);
    assertThat(Shown.all(one(config.replace("\n", "\r\r\n")))).isEqualTo(expected);
  }

  @Test
  void aLoneCrInALineIsOverprint() {
    assertThat(Shown.told(one("interface Gi1/0/1\n garbage\r switchport mode access\r   \n")))
        .isEqualTo("1:1 TOP interface Gi1/0/1\n2:11 PORT switchport mode access");
  }

  @Test
  void aConfigInOneLineWithEscapesIsCutAtThem() {
    SwitchText text =
        one(
            "Building configuration...\\r\\n!\\r\\nversion 17.1\\r\\nvlan 10\\r\\n name A\\r\\nend\\r\\n\n");

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:35 TOP version ...
            1:51 TOP vlan 10
            1:63 VLAN name A
            1:73 TOP end""");
    assertThat(text.lastLine()).isEqualTo(1);
    assertThat(text.truncation()).isEmpty();
  }

  @Test
  void aByteOrderMarkTrailingBlanksAndLineBreakTagsAreNoText() {
    assertThat(
            Shown.told(
                one(
                    "\uFEFFinterface Gi1/0/1 \t\n switchport mode access<br/>\n no shutdown<BR> \n")))
        .isEqualTo(
            "1:1 TOP interface Gi1/0/1\n2:2 PORT switchport mode access\n3:2 PORT no shutdown");
  }

  @Test
  void backspacesTakeBackWhatWasTyped() {
    assertThat(Shown.told(one("interface Gi1/0/1\n switchporr\bt mode access\n")))
        .isEqualTo("1:1 TOP interface Gi1/0/1\n2:2 PORT switchport mode access");
  }

  // -------------------------------------------------------------------------------- pager marks

  @Test
  void pagerMarksAreRemovedAndTheTextBehindThemCounts() {
    String erased = "\b".repeat(9) + " ".repeat(9) + "\b".repeat(9);
    SwitchText text =
        one(
            "interface Gi1/0/1\n"
                + " --More-- \n"
                + " switchport mode access\n"
                + " --More--  switchport access vlan 20\n"
                + " --More-- "
                + erased
                + " shutdown\n"
                + "<--- More --->interface Gi1/0/2\n"
                + "-- more --\n"
                + " --More--          switchport mode trunk\n"
                + " --More--         \rinterface Gi1/0/3\n"
                + " no shutdown\n");

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            3:2 PORT switchport mode access
            4:12 PORT switchport access vlan 20
            5:39 PORT shutdown
            6:15 TOP interface Gi1/0/2
            8:20 PORT switchport mode trunk
            9:20 TOP interface Gi1/0/3
            10:2 PORT no shutdown""");
  }

  @Test
  void aHeaderBehindBlanksThatAPagerLeftStillOpensItsPort() {
    assertThat(
            Shown.told(
                one(
                    "interface Gi1/0/1\n shutdown\n         interface Gi1/0/2\n switchport mode trunk\n")))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT shutdown
            3:10 TOP interface Gi1/0/2
            4:2 PORT switchport mode trunk""");
  }

  // ------------------------------------------------------------------------- banners and blobs

  @Test
  void anUnknownLineOfAPastedScriptIsAStatementAndNotAnAnswer() {
    SwitchText text =
        one(
            """
            conf t
            interface gi1/0/1
             switchport mode access
             switchport acess vlan 3
            """);

    assertThat(text.statements().get(3).command())
        .isInstanceOfSatisfying(
            Command.Unknown.class,
            unknown -> assertThat(unknown.understood()).containsExactly("switchport"));
    assertThat(text.statements().get(3).context()).isEqualTo(Context.PORT);
  }

  @Test
  void aBannerMayQuoteConfigWhileItsDelimiterStandsAloneBelow() {
    SwitchText text =
        one(
            """
            hostname NORTH-SW1
            banner motd ^C
            Changes to
            interface GigabitEthernet1/0/1
             switchport mode trunk
            need a ticket
            ^C
            vlan 12
            """);

    assertThat(Shown.all(text))
        .isEqualTo("1:1 TOP hostname NORTH-SW1\n2-7:1 TOP (banner)\n8:1 TOP vlan 12");
    assertThat(text.truncation()).isEmpty();
  }

  @Test
  void bannersOfAnyDelimiterHoldNoStatement() {
    SwitchText text =
        one(
            """
            banner motd ^C
            interface of the north terminal
            vlan 10
            ^C
            banner login #one line#
            banner exec @
            hostname fake
            @ rest
            banner incoming \u0003
             switchport mode trunk
            \u0003
            banner motd x in y
            z x
            banner login EOF
            vlan 11
            End Of It
            EOF
            vlan 12
            """);

    assertThat(Shown.all(text)).isEqualTo("1-17:1 TOP (banner)\n18:1 TOP vlan 12");
    assertThat(text.truncation()).isEmpty();
  }

  @Test
  void aBannerThatNeverClosesTakesItsFirstLineAndPutsTheRestInDoubt() {
    SwitchText text =
        one(
            """
            hostname NORTH-SW1
            banner motd #
            keep out
            !
            interface GigabitEthernet1/0/1
             description ### Peer-link ###
             switchport mode trunk
            end
            """);

    assertThat(Shown.all(text))
        .isEqualTo(
            """
            1:1 TOP hostname NORTH-SW1
            2:1 TOP (banner)
            3:1 TOP ? keep
            4:1 TOP (comment)
            5:1 TOP interface GigabitEthernet1/0/1
            6:2 PORT description ### Peer-link ###
            7:2 PORT switchport mode trunk
            8:1 TOP end""");
    assertThat(text.truncation()).contains(new Truncation(2, "a banner never closes"));
  }

  @Test
  void certificatesAndKeysHoldNoStatement() {
    SwitchText text =
        one(
            """
            crypto pki certificate chain SELF
             certificate self-signed 01
              30820229 30820192 A0030201 02020101
              300D0609
            \t  quit
            key-string
            -----BEGIN PUBLIC KEY-----
            vlan
            QUJDREVGR0g=
            -----END PUBLIC KEY-----
            vlan 10
             name A
            """);

    assertThat(Shown.all(text))
        .isEqualTo(
            """
            1:1 TOP crypto ...
            2:2 OTHER (Harmless[keyword=crypto])
            3-5:1 OTHER (blob)
            6:1 TOP ? key-string
            7-10:1 TOP (blob)
            11:1 TOP vlan 10
            12:2 VLAN name A""");
  }

  // ------------------------------------------------------------------------------------ blocks

  @Test
  void aChildIsDeeperThanItsHeaderInAnyWidth() {
    SwitchText text =
        one(
            """
            interface Gi1/0/1
             shutdown
            interface Gi1/0/2
               switchport mode access
             switchport access vlan 10
            interface Gi1/0/3
            \tswitchport mode trunk
                 mtu 9000
            spanning-tree mode mst
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT shutdown
            3:1 TOP interface Gi1/0/2
            4:4 PORT switchport mode access
            5:2 PORT switchport access vlan 10
            6:1 TOP interface Gi1/0/3
            7:2 PORT switchport mode trunk
            8:6 PORT mtu 9000
            9:1 TOP spanning-tree mode mst""");
  }

  @Test
  void commentsAndBlankLinesBetweenChildrenLoseNone() {
    SwitchText text =
        one(
            """
            interface Gi1/0/1
             switchport mode access
            !

             !next command is internal.
             switchport access vlan 10
            """);

    assertThat(Shown.all(text))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT switchport mode access
            3:1 PORT (comment)
            4:1 PORT (blank)
            5:1 PORT (comment)
            6:2 PORT switchport access vlan 10""");
  }

  @Test
  void anExitTooEarlyLosesNoIndentedChild() {
    SwitchText text =
        one(
            """
            interface Gi1/0/1
             switchport mode access
            exit
             switchport access vlan 10
            interface Gi1/0/2
             switchport mode access
             exit
             switchport access vlan 20
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT switchport mode access
            3:1 PORT exit
            4:2 PORT switchport access vlan 10
            5:1 TOP interface Gi1/0/2
            6:2 PORT switchport mode access
            7:2 PORT exit
            8:2 PORT switchport access vlan 20""");
  }

  @Test
  void withoutIndentationAStatementBelongsToTheOpenPortIfItCan() {
    SwitchText text =
        one(
            """
            vlan 10
            name A
            interface range gi1/0/1 - 2
            switchport mode access
            frobnicate
            !
            switchport access vlan 10
            exit
            spanning-tree mode rapid-pvst
            interface Gi1/0/3
            mtu 9000
            spanning-tree vlan 1-4094 priority 4096
            hostname NORTH-SW1
            line vty 0 4
            login local
            transport input ssh
            vlan 20
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP vlan 10
            2:1 VLAN name A
            3:1 TOP interface range gi1/0/1 - 2
            4:1 PORT switchport mode access
            5:1 PORT ? frobnicate
            7:1 PORT switchport access vlan 10
            8:1 PORT exit
            9:1 TOP spanning-tree mode rapid-pvst
            10:1 TOP interface Gi1/0/3
            11:1 PORT mtu 9000
            12:1 TOP spanning-tree vlan 1-4094 priority 4096
            13:1 TOP hostname NORTH-SW1
            14:1 TOP line ...
            15-16:1 OTHER (Harmless[keyword=line])
            17:1 TOP vlan 20""");
    assertThat(text.script()).isTrue();
  }

  @Test
  void aDialectMayLeaveTheLinesOfVlansAndVlanInterfacesUnindented() {
    SwitchText text =
        one(
            """
            interface ethernet 1/1
              switchport mode access
            vlan 20
            name "mgmt"
            #
            vlan 30
            interface vlan 20
            ip address 192.0.2.2 255.255.255.0 192.0.2.1
            spanning-tree mode rstp
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP interface ethernet 1/1
            2:3 PORT switchport mode access
            3:1 TOP vlan 20
            4:1 VLAN name "mgmt"
            6:1 TOP vlan 30
            7:1 TOP interface vlan 20
            8:1 PORT ip address 192.0.2.2 255.255.255.0 192.0.2.1
            9:1 TOP spanning-tree mode rstp""");
    assertThat(text.script()).isFalse();
  }

  @Test
  void theVlanDatabaseBlockHoldsItsLinesUntilItsExit() {
    assertThat(
            Shown.told(
                one(
                    """
                    vlan database
                    vlan 196-197,201
                    exit
                    interface vlan 197
                     name SERVERS
                    """)))
        .isEqualTo(
            """
            1:1 TOP vlan database
            2:1 VLAN_DATABASE vlan 196-197,201
            3:1 VLAN_DATABASE exit
            4:1 TOP interface vlan 197
            5:2 PORT name SERVERS""");
  }

  @Test
  void linesOfARedundancyGroupReachTheGroup() {
    SwitchText text =
        one(
            """
            interface Vlan10
              hsrp version 2
              hsrp 10
                ip 192.0.2.1
                no preempt
              ip address 192.0.2.2/24
              vrrp 20 address-family ipv4
                address 192.0.2.9 primary
                exit-vrrp
              no shutdown
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP interface Vlan10
            2:3 PORT hsrp version 2
            3:3 PORT hsrp 10
            4:5 PORT hsrp 10 ip 192.0.2.1
            5:5 PORT no hsrp 10 preempt
            6:3 PORT ip address 192.0.2.2/24
            7:3 PORT vrrp 20 address-family ipv4
            8:5 PORT vrrp 20 address 192.0.2.9 primary
            9:5 PORT exit
            10:3 PORT no shutdown""");
  }

  @Test
  void linesOfARedundancyGroupReachTheGroupWithoutIndentationToo() {
    assertThat(
            Shown.told(
                one(
                    "interface Vlan10\nhsrp 10\nip 192.0.2.9\npriority 110\nmtu 9000\nno shutdown\n")))
        .isEqualTo(
            """
            1:1 TOP interface Vlan10
            2:1 PORT hsrp 10
            3:1 PORT hsrp 10 ip 192.0.2.9
            4:1 PORT hsrp 10 priority 110
            5:1 PORT mtu 9000
            6:1 PORT no shutdown""");
  }

  @Test
  void aWholeTextMayBeIndented() {
    SwitchText text =
        one(
            """
            version 15.2
            hostname A
            interface Gi1/0/1
             switchport mode access
            vlan 10
            end
            after it
            """
                .indent(4));

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:5 TOP version ...
            2:5 TOP hostname A
            3:5 TOP interface Gi1/0/1
            4:6 PORT switchport mode access
            5:5 TOP vlan 10
            6:5 TOP end""");
    assertThat(text.truncation()).isEmpty();
  }

  @Test
  void aBannerTypedAtAPromptHoldsNoStatement() {
    assertThat(
            Shown.told(
                one(
                    """
                    a(config)#banner motd #
                    Enter TEXT message.  End with the character '#'.
                    vlan 10
                    #
                    a(config)#vlan 20
                    """)))
        .isEqualTo("5:11 TOP vlan 20");
    assertThat(Shown.told(one("a(config)#banner motd @\nvlan 10\n@\na(config)#vlan 20\n")))
        .isEqualTo("4:11 TOP vlan 20");
  }

  @Test
  void aFactBelowALineThatIsNotReadIsInDoubt() {
    assertThat(
            Shown.told(
                one(
                    """
                    interface Gi1/0/1
                     service instance 10 ethernet
                      encapsulation dot1q 10
                      bridge-domain 10
                     mtu 9000
                    """)))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT service instance ...
            3:3 PORT ? encapsulation encapsulation
            4:3 OTHER (Harmless[keyword=])
            5:2 PORT mtu 9000""");
  }

  @Test
  void blocksThatAreNotReadAreOneStatement() {
    assertThat(
            Shown.told(
                one(
                    """
                    router bgp 65001
                     vlan 10
                      rd auto
                     address-family ipv4
                    class-map match-any VOICE
                     match ip dscp ef
                    vlan 10
                    """)))
        .isEqualTo(
            """
            1:1 TOP router ...
            2-4:2 OTHER (Harmless[keyword=router])
            5:1 TOP class-map ...
            6:2 OTHER (Harmless[keyword=class-map])
            7:1 TOP vlan 10""");
  }

  @Test
  void aHeaderWithALostPieceGivesItsChildrenToNoPort() {
    String indented =
        """
        interface Gi1/0/1
         switchport mode access
        interf SwitchB:Eth3
         switchport mode trunk
         switchport trunk allowed vlan 10
        interface Gi1/0/2
         shutdown
        """;
    String expected =
        """
        1:1 TOP interface Gi1/0/1
        2:%d PORT switchport mode access
        3:1 TOP interf SwitchB:Eth3
        4-5:%d OTHER (Harmless[keyword=interface])
        6:1 TOP interface Gi1/0/2
        7:%d PORT shutdown""";

    assertThat(Shown.told(one(indented))).isEqualTo(expected.formatted(2, 2, 2));
    assertThat(Shown.told(one(indented.replace("\n ", "\n"))))
        .isEqualTo(expected.formatted(1, 1, 1));
  }

  @Test
  void anUnknownLineBesideABlockLeavesWhatFollowsInDoubt() {
    assertThat(
            Shown.told(one("interface Gi1/0/1\n shutdown\nfrobnicate\n switchport mode trunk\n")))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT shutdown
            3:1 PORT ? frobnicate interface
            4:2 PORT switchport mode trunk""");
  }

  @Test
  void aCommentBehindAStatementIsLeftOut() {
    assertThat(Shown.told(one("interface range gig 1/0/7-12     # next 6 ports\n shutdown\n")))
        .isEqualTo("1:1 TOP interface range gig 1/0/7-12\n2:2 PORT shutdown");
  }

  // ---------------------------------------------------------------------------------- captures

  @Test
  void promptsAreCutOffAndTellTheBlock() {
    SwitchText text =
        one(
            """
            north-sw1#conf t
            Enter configuration commands, one per line.  End with CNTL/Z.
            north-sw1(config)#interface gi1/0/1
            north-sw1(config-if)#switchport mode trunk
            north-sw1(config-if)#switchp
            north-sw1(config-if)#switchport access vlan 20
            north-sw1(config-if)#spanning-tree portfast
            %Warning: portfast should only be enabled on ports connected to a single
             host. Connecting hubs to this interface can cause loops.
            north-sw1(config-if)#switchport mode bogus
                                                 ^
            % Invalid input detected at '^' marker.

            north-sw1(config-if)#switchport ?
              access  Set access mode characteristics
            north-sw1(config-if)#exit
            north-sw1(config)#hostname north-sw9
            north-sw9(config)#^Z
            north-sw9#show vlan brief
            VLAN Name                             Status    Ports
            north-sw9#
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            3:19 TOP interface gi1/0/1
            4:22 PORT switchport mode trunk
            6:22 PORT switchport access vlan 20
            7:22 PORT spanning-tree portfast
            16:22 PORT exit
            17:19 TOP hostname north-sw9""");
    assertThat(text.script()).isTrue();
  }

  @Test
  void aPromptGluedToTheFirstLineIsCutOff() {
    SwitchText text =
        one(
            """
            host1#! Command: show running-config
            ! device: host1 (model, version)
            !
            hostname host1
            interface Ethernet1
               switchport mode trunk
            end
            host1>
            """);

    assertThat(Shown.all(text))
        .isEqualTo(
            """
            1-3:1 TOP (comment)
            4:1 TOP hostname host1
            5:1 TOP interface Ethernet1
            6:4 PORT switchport mode trunk
            7:1 TOP end
            8:1 TOP (noise)""");
    assertThat(text.script()).isFalse();
  }

  @Test
  void outputOfOtherCommandsIsNoiseAndStanzasPastedBehindItAreRead() {
    SwitchText text =
        one(
            """
            north-sw1#show vlan brief

            VLAN Name                             Status    Ports
            ---- -------------------------------- --------- -------------------------------
            1    default                          active    Gi1/0/1
            interface GigabitEthernet1/0/1
             switchport mode trunk
            north-sw1#show spanning-tree
            VLAN0001
              Spanning tree enabled protocol rstp
            Interface           Role Sts Cost      Prio.Nbr Type
            ------------------- ---- --- --------- -------- ----
            Gi1/0/1             Desg FWD 4         128.1    P2p
            """);

    assertThat(Shown.told(text))
        .isEqualTo("6:1 TOP interface GigabitEthernet1/0/1\n7:2 PORT switchport mode trunk");
  }

  @Test
  void echoesWithoutPromptTellConfigFromOtherOutput() {
    SwitchText text =
        one(
            """
            show vlan
            hostname of no one
            show running-config
            hostname north-sw1
            interface Gi1/0/1
             shutdown
            end
            sh ip int brief
            interface Gi1/0/2
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            4:1 TOP hostname north-sw1
            5:1 TOP interface Gi1/0/1
            6:2 PORT shutdown
            7:1 TOP end
            9:1 TOP interface Gi1/0/2""");
  }

  @Test
  void tablesWithoutAnEchoAreKnownByTheirShape() {
    SwitchText text =
        one(
            """
            hostname north-sw1
            Port        Mode             Encapsulation  Status        Native vlan
            Gi1/0/1     on               802.1q         trunking      999

            Interface           Role Sts Cost      Prio.Nbr Type
            ------------------- ---- --- --------- -------- ----
            Gi1/0/1             Desg FWD 4         128.1    P2p
            interface Gi1/0/1
             switchport mode trunk
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP hostname north-sw1
            8:1 TOP interface Gi1/0/1
            9:2 PORT switchport mode trunk""");
  }

  @Test
  void logLinesAreNoiseAndMakeTheStatementTheyCutUnknown() {
    SwitchText text =
        one(
            """
            interface Gi1/0/1
             switchport mode trunk
            *Mar  1 00:03:15.655: %LINK-3-UPDOWN: Interface GigabitEthernet1/0/1, changed state
             switchport trunk allowed vlan 10,2
            Nov 25 10:00:00.123: %SYS-5-CONFIG_I: Configured from console by console
            0,30
             switchport trunk native vlan 9*Mar  1 00:03:15.655: %SYS-6-X: text
             mtu 9000
            *Mar  1 00:03:15.655: %SYS-5-CONFIG_I: Configured from console ip name-server 192.0.2.5
             shutdown
            """);

    assertThat(Shown.told(text))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT switchport mode trunk
            4:2 PORT ? switchport switchport
            6:1 PORT ? 0,30
            7:2 PORT ? switchport switchport trunk native vlan
            8:2 PORT mtu 9000
            9:64 PORT ? ip ip
            10:2 PORT shutdown""");
  }

  @Test
  void aLogLineInAHeaderGivesItsChildrenToNoPort() {
    assertThat(
            Shown.told(
                one(
                    """
                    interface Gi1/0/1
                     shutdown
                    interface Gi1/0/*Mar  1 00:03:15.655: %SYS-6-X: text
                    2
                     switchport mode trunk
                    interface Gi1/0/3
                    *Mar  1 00:03:15.655: %SYS-6-X: text
                    0
                     switchport mode trunk
                    """)))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT shutdown
            3:1 TOP ? interface interface
            4-5:1 OTHER (Harmless[keyword=])
            6:1 TOP ? interface interface
            8-9:1 OTHER (Harmless[keyword=])""");
  }

  @Test
  void aHeaderGluedToALogLineGivesItsLinesToNoOtherBlock() {
    String log = "*Mar  1 00:03:15.655: %SYS-5-CONFIG_I: Configured from console by console";
    String text =
        """
        vlan 10
         name A
        !
        %svlan 20
         name B
        !
        interface Gi1/0/1
         switchport access vlan 10
        !
        %sinterface GigabitEthernet1/0/2
         switchport access vlan 20
        !
        %s interface GigabitEthernet1/0/3
         switchport access vlan 30
        !
        end
        """;

    assertThat(Shown.told(one(text.formatted(log, log, log))))
        .isEqualTo(
            """
            1:1 TOP vlan 10
            2:2 VLAN name A
            4:74 TOP ? vlan vlan
            5:2 OTHER (Harmless[keyword=])
            7:1 TOP interface Gi1/0/1
            8:2 PORT switchport access vlan 10
            10:74 TOP ? interface interface
            11:2 OTHER (Harmless[keyword=])
            13:75 TOP ? interface interface
            14:2 OTHER (Harmless[keyword=])
            16:1 TOP end""");
  }

  @Test
  void linesBelowAClosedBlockAndALogLineHaveLostTheirHeader() {
    String text =
        """
        interface Gi1/0/1
         switchport access vlan 10
        !
        *Mar  1 00:03:15.655: %LINK-3-UPDOWN: Interface Gi1/0/9, changed state to upinterf
         switchport access vlan 20
        !
        interface Gi1/0/3
         shutdown
        *Mar  1 00:03:15.655: %LINK-3-UPDOWN: Interface Gi1/0/9, changed state to down
         mtu 9000
        !
        *Mar  1 00:03:15.655: %LINK-3-UPDOWN: Interface Gi1/0/9, changed state to up
        interface Gi1/0/4
         shutdown
        """;

    assertThat(Shown.told(one(text)))
        .isEqualTo(
            """
            1:1 TOP interface Gi1/0/1
            2:2 PORT switchport access vlan 10
            4:1 TOP ? *Mar interface
            5:2 OTHER (Harmless[keyword=])
            7:1 TOP interface Gi1/0/3
            8:2 PORT shutdown
            10:2 PORT mtu 9000
            13:1 TOP interface Gi1/0/4
            14:2 PORT shutdown""");
  }

  // ----------------------------------------------------------------------- several switches

  @Test
  void severalSwitchesInOneCaptureAreSeveral() {
    List<SwitchText> switches =
        read(
            """
            north-sw1#show running-config
            Building configuration...
            hostname NORTH-SW1
            vlan 10
            end
            north-sw1#exit
            jump>ssh north-sw2
            north-sw2#show running-config
            hostname NORTH-SW2
            vlan 20
            end
            !
            ! by hand
            version 15.2
            hostname NORTH-SW3
            vlan 30
            hostname NORTH-SW4
            vlan 40
            """);

    assertThat(switches.stream().map(Shown::told))
        .containsExactly(
            "3:1 TOP hostname NORTH-SW1\n4:1 TOP vlan 10\n5:1 TOP end",
            "9:1 TOP hostname NORTH-SW2\n10:1 TOP vlan 20\n11:1 TOP end",
            "14:1 TOP version ...\n15:1 TOP hostname NORTH-SW3\n16:1 TOP vlan 30",
            "17:1 TOP hostname NORTH-SW4\n18:1 TOP vlan 40");
    assertThat(switches.stream().map(text -> text.firstLine() + "-" + text.lastLine()))
        .containsExactly("1-7", "8-11", "12-16", "17-18");
  }

  @Test
  void oneSwitchCapturedTwiceIsTwoTexts() {
    String dump = "Building configuration...\n!\nversion 15.2\nhostname A\nvlan 10\nend\n";

    assertThat(read(dump + dump).stream().map(text -> text.firstLine() + "-" + text.lastLine()))
        .containsExactly("1-6", "7-12");
  }

  @Test
  void severalSwitchesWithoutHostnameAreNamedByTheirPrompts() {
    assertThat(
            read(
                    """
                    north-sw1#show run interface gi1/0/1
                    interface Gi1/0/1
                     shutdown
                    north-sw2#show run interface gi1/0/2
                    interface Gi1/0/2
                     shutdown
                    """)
                .stream()
                .map(Shown::told))
        .containsExactly(
            "1:1 TOP hostname north-sw1\n2:1 TOP interface Gi1/0/1\n3:2 PORT shutdown",
            "4:1 TOP hostname north-sw2\n5:1 TOP interface Gi1/0/2\n6:2 PORT shutdown");
  }

  @Test
  void aNameOnABareLineNamesTheSwitch() {
    SwitchText text =
        one(
            """
            config-file-header
            NORTH-SW1
            v1.4.0.88 / R800_NIK_1_4_194_194
            CLI v1.0
            @
            vlan database
            vlan 20
            exit
            """);

    assertThat(Shown.all(text))
        .isEqualTo(
            """
            1:1 TOP (noise)
            2:1 TOP hostname NORTH-SW1
            3-5:1 TOP (noise)
            6:1 TOP vlan database
            7:1 VLAN_DATABASE vlan 20
            8:1 VLAN_DATABASE exit""");
    assertThat(text.script()).isFalse();
  }

  // -------------------------------------------------------------------------- script or dump

  @Test
  void aDumpWhoseIndentationWasLostIsNoScript() {
    assertThat(one("version 15.2\nhostname A\ninterface Gi1/0/1\nshutdown\nend\n").script())
        .isFalse();
    assertThat(one("hostname A\ninterface Gi1/0/1\nshutdown\nend\n").script()).isFalse();
    assertThat(one("Current configuration : 60 bytes\ninterface Gi1/0/1\nshutdown\nend\n").script())
        .isFalse();
  }

  @Test
  void typedTextIsAScript() {
    assertThat(one("interface Gi1/0/1\nshutdown\n").script()).isTrue();
    assertThat(one("conf t\nhostname A\ninterface Gi1/0/1\n shutdown\nend\n").script()).isTrue();
    assertThat(one("hostname A\ninterface Gi1/0/1\nshutdown\nexit\nend\n").script()).isTrue();
    assertThat(one("a#show run | section interface\ninterface Gi1/0/1\n shutdown\n").script())
        .isTrue();
  }

  @Test
  void whatASwitchSaysWhileItSavesMakesNoDump() {
    assertThat(
            one("""
                    a(config)#interface Gi1/0/1
                    a(config-if)#shutdown
                    a(config-if)#do wr
                    Building configuration...
                    [OK]
                    a(config-if)#end
                    a#copy running-config startup-config
                    Building configuration...
                    """)
                .script())
        .isTrue();
    assertThat(one("interface Gi1/0/1\nshutdown\nend\nwr\nBuilding configuration...\n").script())
        .isTrue();
  }

  @Test
  void aSavedDumpWithAPromptBehindItsEndIsNoScript() {
    String dump =
        "Building configuration...\n\nversion 15.2\n!\nhostname A\n!\n"
            + "interface Gi1/0/1\n shutdown\n!\nend\n";

    assertThat(one("A#sh run | nomore\n" + dump + "A# ").script()).isFalse();
    assertThat(one("A#sh run | no-more\n" + dump + "A#").script()).isFalse();
    assertThat(one("A#show running-config | begin version\n" + dump).script()).isFalse();
    assertThat(one("A#show running-config | b hostname\n" + dump.substring(43)).script()).isTrue();
    assertThat(one("A#show running-config | exclude !\n" + dump).script()).isTrue();
    assertThat(one("A#sh run | i version|hostname|end\nversion 1.2\nhostname A\nend\n").script())
        .isTrue();
    assertThat(one(dump + "A#").script()).isFalse();
  }

  @Test
  void aSessionThatEndsWithASaveAtTheExecLevelIsAScript() {
    assertThat(
            one("""
                    a#configure terminal
                    Enter configuration commands, one per line.  End with CNTL/Z.
                    a(config)#interface Gi1/0/1
                    a(config-if)#switchport mode access
                    a(config-if)#^Z
                    a#wr
                    Building configuration...
                    [OK]
                    a#
                    """)
                .script())
        .isTrue();
  }

  @Test
  void anIndentedTextOfOnePortIsAFragmentAndNoDump() {
    assertThat(one("hostname A\n!\ninterface Gi1/0/1\n shutdown\n").script()).isTrue();
  }

  // ------------------------------------------------------------------------------- truncation

  private static Optional<Truncation> cut(String text) {
    return one(text).truncation();
  }

  @Test
  void aDumpOfADialectThatPrintsEndIsCutShortWithoutIt() {
    String head = "version 15.2\nhostname A\n!\ninterface Gi1/0/1\n shutdown\n!\n";
    String open = head + "interface Gi1/0/2\n switchport mode trunk\n";

    assertThat(cut(open)).contains(new Truncation(7, "no end line"));
    assertThat(cut(head)).contains(new Truncation(5, "no end line"));
    assertThat(cut(open + "end\n")).isEmpty();
    assertThat(cut(open.replace("15.2", "9.3(8) Bios:version 05.45"))).isEmpty();
    assertThat(cut(open.replace("version 15.2\n", ""))).isEmpty();
  }

  @Test
  void aTextClearlyShorterThanItsSizeLineIsCutShort() {
    String config = "!\nhostname A\ninterface Gi1/0/1\n shutdown\n!\nend\n";
    String sized = "Current configuration : %d bytes\n" + config;

    assertThat(config).hasSize(47);
    assertThat(cut(sized.formatted(47))).isEmpty();
    assertThat(cut(sized.formatted(47 + 6 + 64))).isEmpty();
    assertThat(cut(sized.formatted(47 + 6 + 65)))
        .contains(new Truncation(7, "the size line promises 118 bytes, at most 53 follow"));
    assertThat(cut("Using 118 out of 65536 bytes\n" + config)).isPresent();
    assertThat(cut("Using 40 out of 65536 bytes, uncompressed size = 118 bytes\n" + config))
        .isPresent();
  }

  @Test
  void aTextThatStopsInTheMiddleOfSomethingIsCutShort() {
    String config = "hostname A\ninterface Gi1/0/1\n switchport mode trunk\n";

    assertThat(cut(config + " switchport trunk allowed vl"))
        .contains(new Truncation(2, "the text stops inside a statement"));
    assertThat(cut(config + " switchport trunk allowed vlan 10,\n"))
        .contains(new Truncation(2, "the text stops inside a statement"));
    assertThat(cut(config + " --More-- "))
        .contains(new Truncation(2, "the text stops at a pager mark"));
    assertThat(
            cut(
                config
                    + "crypto pki certificate chain A\n certificate ca 01\n  30820229 30820192\n"))
        .contains(new Truncation(4, "the text stops inside a certificate or key"));
    assertThat(cut(config + " switchport nonegotiate")).isEmpty();
  }

  @Test
  void aTextThatStopsInsideAKeywordIsCutShortIfAllOthersAreInFull() {
    String config = "hostname A\ninterface Ethernet1/1\n  switchport access vlan 10\n";

    assertThat(cut(config + "  switchport mode tr"))
        .contains(new Truncation(2, "the text stops inside a statement"));
    assertThat(cut(config + "  swit"))
        .contains(new Truncation(2, "the text stops inside a statement"));
    assertThat(cut(config + "  hsrp 1\n    priority 120\n  switchport mode tr")).isPresent();
    assertThat(cut(config + "  switchport mode tr\n")).isEmpty();
    assertThat(cut(config + "  switchport mode trunk")).isEmpty();
    assertThat(cut(config + "  sw mode tr")).isEmpty();
    assertThat(cut(config + "  desc switchport mode tr")).isEmpty();
    assertThat(cut(config.replace("access", "acc") + "  switchport mode tr")).isEmpty();
  }

  // ------------------------------------------------------------------------------------ times

  @Test
  void headerCommentsTellTheTimesOfChangesSavesAndOfTheText() {
    SwitchText campus =
        one(
            """
            ! Last configuration change at 10:11:12 UTC Tue Nov 3 2026 by x
            ! NVRAM config last updated at 09:08:07 CET Mon Nov 2 2026
            hostname A
            """);
    SwitchText dataCentre =
        one(
            """
            !Command: show running-config
            !Running configuration last done at: Mon Nov  2 10:11:12 2026
            !Time: Tue Nov  3 10:11:12 2026

            hostname A
            """);
    SwitchText unreadable =
        one(
            """
            ! Last configuration change at 99:11:12 UTC Tue Nov 3 2026
            ! NVRAM config last updated at some time
            !Time: Tue Nov 31 10:11:12 2026
            hostname A
            """);

    assertThat(shown(campus.times().changed()))
        .isEqualTo(
            "1 ! Last configuration change at 10:11:12 UTC Tue Nov 3 2026 =>"
                + " 2026-11-03T10:11:12 UTC");
    assertThat(shown(campus.times().saved()))
        .isEqualTo(
            "2 ! NVRAM config last updated at 09:08:07 CET Mon Nov 2 2026 =>"
                + " 2026-11-02T09:08:07 CET");
    assertThat(campus.times().taken()).isEmpty();
    assertThat(shown(dataCentre.times().changed()))
        .isEqualTo(
            "2 ! Running configuration last done at: Mon Nov 2 10:11:12 2026 =>"
                + " 2026-11-02T10:11:12 ");
    assertThat(dataCentre.times().saved()).isEmpty();
    assertThat(shown(dataCentre.times().taken()))
        .isEqualTo("3 ! Time: Tue Nov 3 10:11:12 2026 => 2026-11-03T10:11:12 ");
    assertThat(shown(unreadable.times().changed()))
        .isEqualTo("1 ! Last configuration change at => unreadable ");
    assertThat(shown(unreadable.times().saved()))
        .isEqualTo("2 ! NVRAM config last updated at => unreadable ");
    assertThat(shown(unreadable.times().taken())).isEqualTo("3 ! Time: => unreadable ");
    SwitchText unset =
        one("! Last configuration change at *00:11:12 UTC Mon Mar 1 1993\nhostname A\n");
    assertThat(shown(unset.times().changed()))
        .as("a star stands before a clock that was never set")
        .isEqualTo("1 ! Last configuration change at => unreadable ");
  }

  private static String shown(java.util.Optional<SwitchText.Stamp> stamp) {
    return stamp
        .map(
            one ->
                one.line().line()
                    + " "
                    + one.line().text()
                    + " => "
                    + one.time().map(Object::toString).orElse("unreadable")
                    + " "
                    + one.zone())
        .orElse("none");
  }

  @Test
  void anEmptyTextIsOneBlankLine() {
    assertThat(Shown.all(one(""))).isEqualTo("1:1 TOP (blank)");
  }
}
