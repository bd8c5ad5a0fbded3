package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Tests what removing a redundancy group leaves (common practice, no source: nothing). */
class GroupBuilderTest {
  private static List<Gateway.Group> groups(String lines) {
    return campus("vlan 10\n" + stanza("Vlan10", "ip address 192.0.2.2 255.255.255.0;" + lines))
        .gateways()
        .get(0)
        .groups();
  }

  @Test
  void aNegatedHeaderRemovesTheGroup() {
    assertThat(groups("standby 10 ip 192.0.2.1; standby 10 priority 110; no standby 10")).isEmpty();
    assertThat(groups("vrrp 10 ip 192.0.2.1; no vrrp 10")).isEmpty();
    assertThat(groups("glbp 10 ip 192.0.2.1; default glbp 10")).isEmpty();
    assertThat(groups("standby 10 ip 192.0.2.1; standby 11 ip 192.0.2.9; no standby 10"))
        .extracting(Gateway.Group::id)
        .containsExactly(11);
  }

  @Test
  void aGroupThatIsSetUpAnewHasNothingOfTheOneBefore() {
    Gateway.Group group =
        groups(
                "standby version 2; standby 10 priority 110; standby 10 preempt;"
                    + "standby 10 track 1; no standby 10; standby 10 ip 192.0.2.1")
            .get(0);
    assertThat(show(group.priority())).isEqualTo("100");
    assertThat(show(group.preempt())).isEqualTo("false");
    assertThat(show(group.address())).isEqualTo("192.0.2.1");
    assertThat(show(group.version())).isEqualTo("2");
  }

  @Test
  void theDataCentreHeaderEndsItsGroupWithAndWithoutTheFamily() {
    for (String end : new String[] {"no hsrp 10", "no hsrp 10 ipv4"}) {
      SwitchSettings settings =
          dataCentre(
              "feature hsrp\nvlan 10\ninterface Vlan10\n  ip address 192.0.2.2/24\n"
                  + "  hsrp 10 ipv4\n    ip 192.0.2.1\n    priority 110\n  "
                  + end
                  + "\n");
      assertThat(settings.gateways().get(0).groups()).as(end).isEmpty();
    }
  }

  /** Only the third version has address families (RFC 5798 is the first with both). */
  @Test
  void anAddressFamilyIsOfTheThirdVersion() {
    Gateway.Group campus =
        groups("vrrp 10 address-family ipv4; vrrp 10 address-family ipv4 address 192.0.2.1").get(0);
    assertThat(show(campus.version())).isEqualTo("3");
    assertThat(show(groups("vrrp 10 ip 192.0.2.1").get(0).version())).isEqualTo("2");
    assertThat(groups("vrrp 10 address-family ipv4; no vrrp 10 address-family ipv4")).isEmpty();
    Gateway.Group dataCentre =
        dataCentre(
                "feature vrrpv3\nvlan 10\ninterface Vlan10\n  ip address 192.0.2.2/24\n"
                    + "  vrrpv3 10 address-family ipv4\n    address 192.0.2.1 primary\n"
                    + "    priority 110\n")
            .gateways()
            .get(0)
            .groups()
            .get(0);
    assertThat(show(dataCentre.version())).isEqualTo("3");
    assertThat(show(dataCentre.address())).isEqualTo("192.0.2.1");
    assertThat(show(dataCentre.priority())).isEqualTo("110");
  }

  @Test
  void aLineWithoutAnAddressLearnsItAndNoLineDoesNot() {
    assertThat(groups("standby 10 ip").get(0).learns()).isTrue();
    assertThat(groups("standby 10 priority 90").get(0).learns()).isFalse();
    assertThat(groups("standby 10 ip; no standby 10 ip; standby 10 preempt").get(0).learns())
        .isFalse();
  }

  @Test
  void whetherAGroupStandsIsOpenWhereALineIsNotUnderstood() {
    for (String line : new String[] {"standby 10 ip2 192.0.2.1", "vrrp ten"}) {
      Gateway gateway =
          campus("vlan 10\n" + stanza("Vlan10", "ip address 192.0.2.2 255.255.255.0;" + line))
              .gateways()
              .get(0);
      assertThat(gateway.redundant().isDecided()).as(line).isFalse();
    }
    assertThat(
            campus("vlan 10\n" + stanza("Vlan10", "ip address 192.0.2.2 255.255.255.0"))
                .gateways()
                .get(0)
                .redundant()
                .is(false))
        .isTrue();
  }
}
