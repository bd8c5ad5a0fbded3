package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.stanza;

import org.junit.jupiter.api.Test;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Tests which VLANs exist and when a VLAN without a stanza is known to be missing. */
class VlanDatabaseBuilderTest {
  private static VlanDatabase campus(String body) {
    return read("version 15.2\nhostname sw1\n" + body + "end\n").vlans();
  }

  private static Truth exists(VlanDatabase vlans, int id) {
    return vlans.exists(new VlanId(id));
  }

  @Test
  void a_vlan_with_a_stanza_exists_in_every_mode() {
    for (String mode : new String[] {"server", "client", "transparent", "off"}) {
      assertThat(exists(campus("vtp mode " + mode + "\nvlan 10\n"), 10)).isEqualTo(Truth.YES);
    }
  }

  @Test
  void in_transparent_mode_or_off_a_vlan_without_a_stanza_is_missing() {
    for (String mode : new String[] {"transparent", "off"}) {
      VlanDatabase vlans = campus("vtp mode " + mode + "\n");
      assertThat(exists(vlans, 20)).isEqualTo(Truth.NO);
      assertThat(vlans.why()).isEqualTo("the switch keeps a list of its own");
    }
  }

  @Test
  void a_data_centre_text_holds_the_list() {
    VlanDatabase vlans = dataCentre(stanza("Ethernet1/1", "")).vlans();
    assertThat(exists(vlans, 20)).isEqualTo(Truth.NO);
    assertThat(vlans.why()).isEqualTo("a data-centre text holds the VLAN list");
  }

  @Test
  void stanzas_and_no_server_or_client_line_mean_that_the_list_is_in_the_text() {
    VlanDatabase vlans = campus("vlan 10\n");
    assertThat(exists(vlans, 20)).isEqualTo(Truth.NO);
    assertThat(vlans.why()).isEqualTo("the text has VLAN stanzas and no server or client line");
  }

  @Test
  void without_stanzas_or_with_a_server_or_client_line_the_list_is_unknown() {
    VlanDatabase none = campus("");
    assertThat(exists(none, 20)).isEqualTo(Truth.UNKNOWN);
    assertThat(none.why())
        .isEqualTo("the text has no VLAN stanza and does not say who keeps the list");
    for (String mode : new String[] {"server", "client"}) {
      VlanDatabase vlans = campus("vtp mode " + mode + "\nvlan 10\n");
      assertThat(exists(vlans, 20)).isEqualTo(Truth.UNKNOWN);
      assertThat(vlans.known()).isFalse();
    }
  }

  @Test
  void vlan_1_always_exists() {
    assertThat(exists(campus(""), 1)).isEqualTo(Truth.YES);
    assertThat(exists(campus("vtp mode transparent\nno vlan 1\n"), 1)).isEqualTo(Truth.YES);
  }

  @Test
  void no_vlan_undoes_the_whole_stanza_and_a_later_line_wins() {
    VlanDatabase gone = campus("vtp mode server\nvlan 10\n name A\nno vlan 10\n");
    assertThat(exists(gone, 10)).isEqualTo(Truth.NO);
    VlanDatabase back = campus("vtp mode transparent\nvlan 10\n name A\nno vlan 10\nvlan 10\n");
    assertThat(exists(back, 10)).isEqualTo(Truth.YES);
    assertThat(show(back.entries().get(new VlanId(10)).name())).isEqualTo("-");
  }

  @Test
  void names_states_and_lists_are_read() {
    VlanDatabase vlans =
        campus(
            """
            vlan 10,20-21
            vlan 20
             name VOICE-A
             state suspend
            vlan 21
             shutdown
            vlan 10
             state suspend
             no state
            """);
    assertThat(vlans.existing()).hasToString("1,10,20-21");
    assertThat(vlans.active()).hasToString("1,10");
    assertThat(show(vlans.entries().get(new VlanId(20)).name())).isEqualTo("VOICE-A");
    assertThat(vlans.isActive(new VlanId(20))).isEqualTo(Truth.NO);
    assertThat(vlans.isActive(new VlanId(21))).isEqualTo(Truth.NO);
  }

  @Test
  void the_block_that_lists_vlans_declares_them_and_their_interface_names_them() {
    VlanDatabase vlans =
        campus("vlan database\n vlan 196-197\nexit\ninterface vlan 197\n name \"cargo\"\nexit\n");
    assertThat(vlans.existing()).hasToString("1,196-197");
    assertThat(show(vlans.entries().get(new VlanId(197)).name())).isEqualTo("cargo");
  }

  @Test
  void a_garbled_vlan_line_puts_the_list_in_doubt() {
    VlanDatabase vlans = campus("vtp mode transparent\nvlan 10\nvlan 99vl\n name LOST\n");
    assertThat(show(vlans.entries().get(new VlanId(10)).name())).isEqualTo("-");
    assertThat(exists(vlans, 10)).isEqualTo(Truth.YES);
    assertThat(exists(vlans, 99)).isEqualTo(Truth.UNKNOWN);
    assertThat(vlans.why()).isEqualTo("a VLAN line is not understood");
  }
}
