package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.name;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;
import plumbline.setting.Truth;

/** Tests that no line of a port is lost, and none counts as a fact of a port it may not be of. */
class ForeignLineSettingsTest {
  private static final String HEADER = "interface Gi1/0/1\n switchport mode access\n";
  private static final String REST = " switchport access vlan 20\n spanning-tree portfast\n";

  @Test
  void unreadLinesBelowALineOfAPortLoseNothingOfTheRest() {
    for (String unread :
        new String[] {
          " garbage\n     deeper junk\n",
          " macro description x\n  y z\n",
          " service instance 1 ethernet\n  encapsulation dot1q 5\n  bridge-domain 5\n !\n"
        }) {
      assertThat(show(port(campus(HEADER + unread + REST), "Gi1/0/1"), Keys.ACCESS_VLAN))
          .as(unread)
          .isEqualTo("20");
    }
  }

  @Test
  void aForeignLineInAPortPutsAllOfThePortInDoubtAndIsTold() {
    SwitchSettings settings = campus(HEADER + "junk at column 1\n" + REST);
    PortSettings port = port(settings, "Gi1/0/1");
    assertThat(show(port, Keys.ACCESS_VLAN)).startsWith("? line ").contains("left of a header");
    assertThat(show(port, Keys.MODE)).startsWith("? line ");
    assertThat(port.unknown()).extracting(UnknownLine::firstWord).containsExactly("junk");
    assertThat(settings.isPortAbsent(name("Gi1/0/2"))).isEqualTo(Truth.UNKNOWN);
  }

  @Test
  void aStatementOfTheSwitchInsideAPortCountsAndLeavesThePortInDoubt() {
    SwitchSettings settings = campus(HEADER + "no ip routing\n" + REST);
    assertThat(settings.routing().value()).contains(false);
    assertThat(show(port(settings, "Gi1/0/1"), Keys.ACCESS_VLAN)).startsWith("? line ");
  }

  @Test
  void anExitAboveTheLastLinesOfAPortLosesNone() {
    assertThat(show(port(campus(HEADER + " exit\n" + REST), "Gi1/0/1"), Keys.ACCESS_VLAN))
        .isEqualTo("20");
  }

  @Test
  void proseHasNoKnownStatementAndAnyStatementAboutASwitchIsOne() {
    assertThat(read("Dear colleague,\nplease find the plan below.\n").known()).isZero();
    assertThat(read("vtp mode transparent\nvtp domain x\n").known()).isEqualTo(2);
  }
}
