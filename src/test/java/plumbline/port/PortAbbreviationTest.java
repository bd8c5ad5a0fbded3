package plumbline.port;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import plumbline.port.PortNames.Reading;

/** Tests which short words are clear (common practice, no source). */
class PortAbbreviationTest {
  private static String kind(String word) {
    Reading reading = PortNames.parse(word + "1/0/1");
    if (reading instanceof Reading.Ports ports) {
      return ports.names().get(0).kind().fullName();
    }
    return reading instanceof Reading.Ambiguous several ? String.join("|", several.kinds()) : "-";
  }

  @Test
  void aLetterThatBeginsSeveralKindsNamesNone() {
    assertThat(kind("T")).isEqualTo("TenGigabitEthernet|Tunnel|TwentyFiveGigE|TwoGigabitEthernet");
    assertThat(kind("l")).isEqualTo("Loopback|lag");
    assertThat(kind("v")).isEqualTo("Vlan|Vxlan");
    assertThat(kind("n")).isEqualTo("Null|nve");
  }

  @Test
  void twoLettersMayStillBeTwoKinds() {
    assertThat(kind("tw")).isEqualTo("TwentyFiveGigE|TwoGigabitEthernet");
    assertThat(kind("fi")).isEqualTo("FiftyGigE|FiveGigabitEthernet");
  }

  @Test
  void theTradesAbbreviationsStayClear() {
    assertThat(kind("Te")).isEqualTo("TenGigabitEthernet");
    assertThat(kind("Twe")).isEqualTo("TwentyFiveGigE");
    assertThat(kind("Two")).isEqualTo("TwoGigabitEthernet");
    assertThat(kind("Tu")).isEqualTo("Tunnel");
    assertThat(kind("f")).isEqualTo("FastEthernet");
    assertThat(kind("Fo")).isEqualTo("FortyGigabitEthernet");
    assertThat(kind("g")).isEqualTo("GigabitEthernet");
    assertThat(kind("e")).isEqualTo("Ethernet");
    assertThat(kind("Lo")).isEqualTo("Loopback");
    assertThat(kind("Vl")).isEqualTo("Vlan");
    assertThat(kind("s")).isEqualTo("Serial");
  }

  @Test
  void aWordThatBeginsNoKindIsNoPort() {
    assertThat(kind("q")).isEqualTo("-");
  }
}
