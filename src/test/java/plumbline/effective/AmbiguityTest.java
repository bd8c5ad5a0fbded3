package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** Tests what words and headers of several meanings leave open: all that any of them governs. */
class AmbiguityTest {
  private static final String TRUNK = stanza("TwoGigabitEthernet1/0/1", "switchport mode trunk");
  private static final String DOUBT = "? the interface header in line ";

  @Test
  void a_word_that_abbreviates_several_keywords_leaves_open_what_each_of_them_governs() {
    PortSettings port = port("switchport mode trunk;chan 1 mo act");
    assertThat(show(port, Keys.BUNDLE)).isEqualTo("? line 6 is not understood");
    assertThat(show(port, Keys.MODE)).isEqualTo("trunk");
    PortSettings decided = port("chan 1 mo act;channel-group 2 mode active");
    assertThat(show(decided, Keys.BUNDLE)).isEqualTo("2 active");
    PortSettings wide = port("switchport mode trunk;s x");
    assertThat(show(wide, Keys.SHUT)).isEqualTo("? line 6 is not understood");
    assertThat(show(wide, Keys.MODE)).isEqualTo("? line 6 is not understood");
    assertThat(show(wide, Keys.BUNDLE)).isEqualTo("-");
  }

  @Test
  void an_ambiguous_undoing_header_puts_the_open_ports_that_it_may_mean_in_doubt() {
    for (String undo : new String[] {"default interface tw1/0/1", "no interface tw1/0/1"}) {
      SwitchSettings settings = campus(TRUNK + stanza("Gi1/0/1", "shutdown") + undo + "\n");
      assertThat(show(port(settings, "TwoGigabitEthernet1/0/1"), Keys.MODE)).startsWith(DOUBT);
      assertThat(show(port(settings, "Gi1/0/1"), Keys.SHUT)).isEqualTo("true");
    }
    SwitchSettings before = campus("default interface tw1/0/1\n" + TRUNK);
    assertThat(show(port(before, "TwoGigabitEthernet1/0/1"), Keys.MODE)).isEqualTo("trunk");
    SwitchSettings other = campus(TRUNK + "default interface tw1/0/2\n");
    assertThat(show(port(other, "TwoGigabitEthernet1/0/1"), Keys.MODE)).isEqualTo("trunk");
  }

  @Test
  void lines_under_an_ambiguous_header_put_the_ports_that_it_may_mean_in_doubt() {
    String lines = stanza("range tw1/0/1 - 2", "switchport mode access");
    assertThat(show(port(campus(TRUNK + lines), "TwoGigabitEthernet1/0/1"), Keys.MODE))
        .startsWith(DOUBT);
    assertThat(show(port(campus(lines + TRUNK), "TwoGigabitEthernet1/0/1"), Keys.MODE))
        .startsWith(DOUBT);
    assertThat(show(port(campus(lines + stanza("Gi1/0/2", "")), "Gi1/0/2"), Keys.MODE))
        .isEqualTo("negotiated");
  }
}
