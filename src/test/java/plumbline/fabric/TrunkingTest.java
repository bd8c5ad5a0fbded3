package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.setting.Bundle;
import plumbline.setting.PortMode;

class TrunkingTest {
  /** Common practice, no source: the negotiation table that every trade course prints. */
  @ParameterizedTest
  @CsvSource({
    "ANSWERS,ANSWERS,ACCESS,ACCESS",
    "ANSWERS,ASKS,TRUNK,TRUNK",
    "ANSWERS,TRUNK,TRUNK,TRUNK",
    "ANSWERS,ACCESS,ACCESS,ACCESS",
    "ASKS,ASKS,TRUNK,TRUNK",
    "ASKS,TRUNK,TRUNK,TRUNK",
    "ASKS,ACCESS,ACCESS,ACCESS",
    "TRUNK,TRUNK,TRUNK,TRUNK",
    "TRUNK,ACCESS,TRUNK,ACCESS",
    "ACCESS,ACCESS,ACCESS,ACCESS",
    "SILENT_TRUNK,ANSWERS,TRUNK,ACCESS",
    "SILENT_TRUNK,ASKS,TRUNK,ACCESS",
    "SILENT_TRUNK,TRUNK,TRUNK,TRUNK"
  })
  void two_ends_settle_on_their_modes(
      Trunking one, Trunking other, PortMode itsMode, PortMode otherMode) {
    assertThat(one.towards(Optional.of(other))).isEqualTo(itsMode);
    assertThat(other.towards(Optional.of(one))).isEqualTo(otherMode);
  }

  @Test
  void towards_a_host_a_negotiating_port_is_an_access_port() {
    assertThat(Trunking.ASKS.towards(Optional.empty())).isEqualTo(PortMode.ACCESS);
    assertThat(Trunking.TRUNK.towards(Optional.empty())).isEqualTo(PortMode.TRUNK);
  }

  /** IEEE 802.1AX, LACP activity: a passive end answers only; static ends: common practice. */
  @ParameterizedTest
  @CsvSource({
    "ACTIVE,ACTIVE,true",
    "ACTIVE,PASSIVE,true",
    "PASSIVE,PASSIVE,false",
    "STATIC,STATIC,true",
    "STATIC,ACTIVE,false",
    "STATIC,PASSIVE,false",
    "DESIRABLE,AUTO,true",
    "AUTO,AUTO,false",
    "DESIRABLE,ACTIVE,false",
    "STATIC,DESIRABLE,false"
  })
  void bundles_form_as_their_modes_allow(Bundle.Mode one, Bundle.Mode other, boolean forms) {
    assertThat(Bundling.forms(one, other)).isEqualTo(forms);
    assertThat(Bundling.forms(other, one)).isEqualTo(forms);
  }
}
