package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.port;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.setting.Keys;

/** The line that turns QoS on for the switch: common practice, no source. */
class QosSwitchTest {
  private static final String TRUST = stanza("Gi1/0/1", "mls qos trust cos");
  private static final String OFF = "QoS is off on this switch: a trust line has no effect";

  private static PortSettings only(SwitchSettings settings) {
    return port(settings, "Gi1/0/1");
  }

  @Test
  void aTrustLineWorksWhereQosIsOn() {
    PortSettings port = only(campus("mls qos\n" + TRUST));
    assertThat(show(port, Keys.QOS_TRUST)).isEqualTo("cos");
    assertThat(why(port, Keys.QOS_TRUST)).isEqualTo("6: mls qos trust cos | 4: mls qos");
  }

  @Test
  void aTrustLineHasNoEffectWhereNoLineTurnsQosOn() {
    PortSettings port = only(campus(TRUST));
    assertThat(show(port, Keys.QOS_TRUST)).isEqualTo("none");
    assertThat(why(port, Keys.QOS_TRUST)).isEqualTo("5: mls qos trust cos | " + OFF);
    PortSettings undone = only(campus("mls qos\nno mls qos\n" + TRUST));
    assertThat(why(undone, Keys.QOS_TRUST))
        .isEqualTo("7: mls qos trust cos | 5: no mls qos | " + OFF);
  }

  @Test
  void detailLinesDoNotTurnQosOn() {
    PortSettings port = only(campus("mls qos map cos-dscp 0 8 16 24 32 46 48 56\n" + TRUST));
    assertThat(show(port, Keys.QOS_TRUST)).isEqualTo("none");
  }

  /** In some families with ports of 100 Mb/s QoS is always on (common practice, no source). */
  @Test
  void portsOfOldFamiliesLeaveItOpen() {
    String old = stanza("FastEthernet0/1", "mls qos trust cos");
    assertThat(show(port(campus(old), "Fa0/1"), Keys.QOS_TRUST))
        .isEqualTo("? no line turns QoS on, and switches with such ports differ in that");
    assertThat(why(port(campus(old), "Fa0/1"), Keys.QOS_TRUST)).isEqualTo("5: mls qos trust cos");
    assertThat(show(port(campus("mls qos\n" + old), "Fa0/1"), Keys.QOS_TRUST)).isEqualTo("cos");
  }

  @Test
  void aScriptWithoutTheGlobalLineLeavesItOpen() {
    assertThat(show(only(read("configure terminal\n" + TRUST)), Keys.QOS_TRUST))
        .isEqualTo("? the text is a script, in which an absent line is no default");
    assertThat(show(only(read("configure terminal\nmls qos\n" + TRUST)), Keys.QOS_TRUST))
        .isEqualTo("cos");
  }

  @Test
  void otherSpellingsAndDialectsNeedNoGlobalLine() {
    assertThat(show(only(campus(stanza("Gi1/0/1", "qos trust dscp"))), Keys.QOS_TRUST))
        .isEqualTo("dscp");
    assertThat(
            show(
                port(dataCentre(stanza("Ethernet1/1", "mls qos trust cos")), "Ethernet1/1"),
                Keys.QOS_TRUST))
        .isEqualTo("cos");
    assertThat(show(only(campus(stanza("Gi1/0/1", "no mls qos trust"))), Keys.QOS_TRUST))
        .isEqualTo("none");
  }

  @Test
  void automatic_lines_that_are_not_written_out_leave_the_trust_open() {
    PortSettings port = only(campus(stanza("Gi1/0/1", "auto qos voip trust")));
    assertThat(show(port, Keys.QOS_TRUST))
        .isEqualTo("? `auto qos` stands for lines that are not in this text");
    PortSettings written = only(campus(stanza("Gi1/0/1", "auto qos voip trust;trust dscp")));
    assertThat(show(written, Keys.QOS_TRUST)).isEqualTo("dscp");
  }
}
