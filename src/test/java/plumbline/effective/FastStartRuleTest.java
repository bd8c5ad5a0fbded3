package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** Tests edge fast-start: port line, global default, mode and spelling together. */
class FastStartRuleTest {
  private static final String NEGOTIATED =
      "? the mode is left to negotiation and fast-start without the trunk keyword stops on a trunk";

  private static PortSettings under(String global, String lines) {
    return port(campus(global + "\n" + stanza("Gi1/0/1", lines)), "Gi1/0/1");
  }

  private static String fastStart(String lines) {
    return show(port(lines), Keys.FAST_START);
  }

  @Test
  void a_port_line_works_on_an_access_port() {
    PortSettings port = port("switchport mode access;spanning-tree portfast");
    assertThat(show(port, Keys.FAST_START)).isEqualTo("on");
    assertThat(why(port, Keys.FAST_START))
        .isEqualTo("6: spanning-tree portfast | 5: switchport mode access");
    assertThat(fastStart("switchport mode access;spanning-tree portfast edge")).isEqualTo("on");
  }

  @Test
  void without_the_trunk_keyword_a_port_line_has_no_effect_on_a_trunk() {
    PortSettings port = port("switchport mode trunk;spanning-tree portfast");
    assertThat(show(port, Keys.FAST_START)).isEqualTo("without-effect");
    assertThat(why(port, Keys.FAST_START))
        .isEqualTo("6: spanning-tree portfast | 5: switchport mode trunk");
    PortSettings typed =
        port(
            dataCentre(stanza("Ethernet1/1", "switchport mode trunk;spanning-tree port type edge")),
            "Ethernet1/1");
    assertThat(show(typed, Keys.FAST_START)).isEqualTo("without-effect");
  }

  @Test
  void with_the_trunk_keyword_it_works_in_either_mode() {
    assertThat(fastStart("switchport mode trunk;spanning-tree portfast trunk")).isEqualTo("on");
    assertThat(fastStart("switchport mode trunk;spanning-tree portfast edge trunk"))
        .isEqualTo("on");
    assertThat(fastStart("switchport mode access;spanning-tree portfast trunk")).isEqualTo("on");
    assertThat(fastStart("switchport mode dynamic auto;spanning-tree portfast trunk"))
        .isEqualTo("on");
  }

  @Test
  void spellings_without_such_a_keyword_reach_trunks() {
    SwitchSettings settings =
        TestSwitch.read(
            "hostname sw1\n"
                + stanza("Ethernet1", "switchport mode trunk;spanning-tree portfast")
                + "end\n");
    PortSettings port = port(settings, "Ethernet1");
    assertThat(show(port, Keys.FAST_START)).isEqualTo("on");
    assertThat(why(port, Keys.FAST_START))
        .isEqualTo("4: spanning-tree portfast | leaf-spine: fast-start reaches trunks");
    assertThat(fastStart("switchport mode trunk;spanning-tree edge-port")).isEqualTo("on");
  }

  @Test
  void network_is_not_fast_start() {
    assertThat(fastStart("switchport mode access;spanning-tree portfast network")).isEqualTo("off");
    assertThat(
            show(
                under(
                    "spanning-tree portfast default",
                    "switchport mode access;spanning-tree portfast network"),
                Keys.FAST_START))
        .isEqualTo("off");
  }

  @Test
  void without_any_line_it_is_off() {
    PortSettings port = port("switchport mode access");
    assertThat(show(port, Keys.FAST_START)).isEqualTo("off");
    assertThat(why(port, Keys.FAST_START)).isEqualTo("campus: no fast-start");
  }

  @Test
  void the_global_default_reaches_only_ports_that_are_not_trunking() {
    String global = "spanning-tree portfast default";
    PortSettings access = under(global, "switchport mode access");
    assertThat(show(access, Keys.FAST_START)).isEqualTo("on");
    assertThat(why(access, Keys.FAST_START))
        .isEqualTo("4: spanning-tree portfast default | 6: switchport mode access");
    PortSettings trunk = under(global, "switchport mode trunk");
    assertThat(show(trunk, Keys.FAST_START)).isEqualTo("off");
    assertThat(why(trunk, Keys.FAST_START))
        .isEqualTo(
            "the global fast-start default does not reach a trunk | 6: switchport mode trunk"
                + " | 4: spanning-tree portfast default");
    assertThat(show(under(global, ""), Keys.FAST_START)).isEqualTo(NEGOTIATED);
  }

  @Test
  void a_port_line_stands_over_the_global_default() {
    assertThat(
            show(
                under(
                    "spanning-tree portfast edge default",
                    "switchport mode access;spanning-tree portfast disable"),
                Keys.FAST_START))
        .isEqualTo("off");
  }

  @Test
  void a_plain_no_under_a_global_default_is_undecided() {
    String lines = "switchport mode access;no spanning-tree portfast";
    PortSettings port = under("spanning-tree portfast default", lines);
    assertThat(show(port, Keys.FAST_START))
        .isEqualTo(
            "? releases differ on whether a plain `no` overrides the global fast-start default");
    assertThat(why(port, Keys.FAST_START))
        .isEqualTo(
            "7: no spanning-tree portfast | 4: spanning-tree portfast default"
                + " | 6: switchport mode access");
    assertThat(fastStart(lines)).isEqualTo("off");
    // The global default does not reach a trunk, so nothing is open there.
    assertThat(
            show(
                under(
                    "spanning-tree portfast default",
                    "switchport mode trunk;no spanning-tree portfast"),
                Keys.FAST_START))
        .isEqualTo("off");
  }

  @Test
  void the_default_form_lets_the_global_default_speak() {
    assertThat(
            show(
                under(
                    "spanning-tree portfast default",
                    "switchport mode access;spanning-tree portfast disable;"
                        + "default spanning-tree portfast"),
                Keys.FAST_START))
        .isEqualTo("on");
  }

  @Test
  void on_a_negotiated_port_a_line_without_the_trunk_keyword_is_undecided() {
    assertThat(fastStart("spanning-tree portfast")).isEqualTo(NEGOTIATED);
  }

  @Test
  void on_a_routed_port_it_has_no_effect() {
    assertThat(fastStart("no switchport;spanning-tree portfast")).isEqualTo("without-effect");
  }
}
