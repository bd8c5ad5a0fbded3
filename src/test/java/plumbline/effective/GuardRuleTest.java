package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** Tests BPDU guard and filter, root and loop guard and link detection. */
class GuardRuleTest {
  private static final String ACCESS = "switchport mode access;";

  private static PortSettings under(String global, String lines) {
    return port(campus(global + "\n" + stanza("Gi1/0/1", lines)), "Gi1/0/1");
  }

  @Test
  void guard_on_a_port_works_without_fast_start() {
    PortSettings port = port(ACCESS + "spanning-tree bpduguard enable");
    assertThat(show(port, Keys.FAST_START)).isEqualTo("off");
    assertThat(show(port, Keys.BPDU_GUARD)).isEqualTo("on");
    assertThat(why(port, Keys.BPDU_GUARD)).isEqualTo("6: spanning-tree bpduguard enable");
  }

  @Test
  void disable_overrides_the_global_default() {
    PortSettings port =
        under(
            "spanning-tree portfast bpduguard default",
            ACCESS + "spanning-tree portfast;spanning-tree bpduguard disable");
    assertThat(show(port, Keys.BPDU_GUARD)).isEqualTo("off");
  }

  @Test
  void the_global_default_reaches_only_ports_whose_fast_start_is_in_effect() {
    String global = "spanning-tree portfast bpduguard default";
    PortSettings fast = under(global, ACCESS + "spanning-tree portfast");
    assertThat(show(fast, Keys.BPDU_GUARD)).isEqualTo("on");
    assertThat(why(fast, Keys.BPDU_GUARD))
        .isEqualTo(
            "4: spanning-tree portfast bpduguard default | 7: spanning-tree portfast"
                + " | 6: switchport mode access");
    assertThat(show(under(global, ACCESS), Keys.BPDU_GUARD)).isEqualTo("off");
    assertThat(show(under(global, "switchport mode trunk;spanning-tree portfast"), Keys.BPDU_GUARD))
        .isEqualTo("off");
    assertThat(show(under(global, "spanning-tree portfast"), Keys.BPDU_GUARD))
        .startsWith("? the global BPDU guard follows fast-start: the mode is left to negotiation");
  }

  @Test
  void without_any_line_there_is_no_guard() {
    assertThat(why(port(ACCESS), Keys.BPDU_GUARD)).isEqualTo("campus: no BPDU guard");
  }

  @Test
  void a_filter_on_a_port_turns_the_tree_off_and_leaves_guard_without_effect() {
    PortSettings port =
        port(ACCESS + "spanning-tree bpduguard enable;spanning-tree bpdufilter enable");
    assertThat(show(port, Keys.BPDU_FILTER)).isEqualTo("on");
    assertThat(show(port, Keys.BPDU_GUARD)).isEqualTo("without-effect");
    assertThat(why(port, Keys.BPDU_GUARD))
        .isEqualTo("6: spanning-tree bpduguard enable | 7: spanning-tree bpdufilter enable");
  }

  @Test
  void the_global_filter_default_does_not_disarm_guard_and_ends_when_a_bpdu_is_heard() {
    String global = "spanning-tree portfast bpdufilter default";
    PortSettings fast =
        under(global, ACCESS + "spanning-tree portfast;spanning-tree bpduguard enable");
    assertThat(show(fast, Keys.BPDU_GUARD)).isEqualTo("on");
    assertThat(show(fast, Keys.BPDU_FILTER)).isEqualTo("off");
    assertThat(why(fast, Keys.BPDU_FILTER))
        .isEqualTo(
            "4: spanning-tree portfast bpdufilter default"
                + " | the global BPDU filter ends when a BPDU is heard");
  }

  @Test
  void the_global_filter_default_reaches_only_fast_start_ports() {
    PortSettings slow = under("spanning-tree portfast bpdufilter default", ACCESS);
    assertThat(show(slow, Keys.BPDU_FILTER)).isEqualTo("off");
    assertThat(why(slow, Keys.BPDU_FILTER))
        .isEqualTo(
            "4: spanning-tree portfast bpdufilter default"
                + " | the global BPDU filter does not reach ports without fast-start");
  }

  @Test
  void a_port_whose_tree_is_turned_off_drops_bpdus() {
    PortSettings port = port(ACCESS + "no spanning-tree;spanning-tree bpduguard enable");
    assertThat(show(port, Keys.BPDU_FILTER)).isEqualTo("on");
    assertThat(show(port, Keys.BPDU_GUARD)).isEqualTo("without-effect");
  }

  @Test
  void root_and_loop_guard_exclude_each_other_and_the_last_line_wins() {
    PortSettings port = port("spanning-tree guard root;spanning-tree guard loop");
    assertThat(show(port, Keys.ROOT_GUARD)).isEqualTo("off");
    assertThat(show(port, Keys.LOOP_GUARD)).isEqualTo("on");
    PortSettings none = under("spanning-tree loopguard default", "spanning-tree guard none");
    assertThat(show(none, Keys.LOOP_GUARD)).isEqualTo("off");
    assertThat(show(under("spanning-tree loopguard default", ""), Keys.LOOP_GUARD)).isEqualTo("on");
    assertThat(show(port("spanning-tree guard root;no spanning-tree guard"), Keys.ROOT_GUARD))
        .isEqualTo("off");
  }

  @Test
  void the_global_link_detection_reaches_fibre_only_and_so_stays_open() {
    assertThat(show(under("udld enable", ""), Keys.UDLD))
        .isEqualTo(
            "? the global default reaches fibre ports only, and the text does not tell the medium");
    assertThat(show(under("udld enable", "udld port aggressive"), Keys.UDLD)).isEqualTo("on");
    assertThat(show(port(""), Keys.UDLD)).isEqualTo("off");
  }

  @Test
  void a_guard_that_a_script_turns_on_is_on_though_the_script_says_nothing_of_a_filter() {
    String script = "configure terminal\ninterface Gi1/0/1\n spanning-tree bpduguard enable\n";
    PortSettings port = TestSwitch.port(TestSwitch.read(script + "end\n"), "Gi1/0/1");
    assertThat(show(port, Keys.BPDU_GUARD)).isEqualTo("on");
    assertThat(show(port, Keys.BPDU_FILTER)).startsWith("? the text is a script");
    assertThat(show(port, Keys.ROOT_GUARD)).startsWith("? the text is a script");
    PortSettings filtered =
        TestSwitch.port(
            TestSwitch.read(script + " spanning-tree bpdufilter enable\nend\n"), "Gi1/0/1");
    assertThat(show(filtered, Keys.BPDU_GUARD)).isEqualTo("without-effect");
    PortSettings garbled =
        TestSwitch.port(
            TestSwitch.read(
                "interface Gi1/0/1\nspanning-tree bpdufltr enable\n"
                    + "spanning-tree bpduguard enable\nexit\n"),
            "Gi1/0/1");
    assertThat(show(garbled, Keys.BPDU_GUARD)).startsWith("? a BPDU filter on the port");
  }
}
