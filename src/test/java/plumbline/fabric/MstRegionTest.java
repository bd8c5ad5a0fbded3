package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.setting.Truth;

/** IEEE 802.1Q, MST Configuration Identifier: one name, one revision, one digest. */
class MstRegionTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {shop: {id: 10}}
      switches: {a: {}, b: {}}
      """;

  private static final String PORT =
      "\n!\ninterface GigabitEthernet1/0/1\n switchport mode trunk\n!\n";

  private static List<MstRegion> regions(String one, String other) {
    Fabric fabric =
        Sites.fabric(
            DESIGN,
            Map.of("a", one.replace('|', '\n') + PORT, "b", other.replace('|', '\n') + PORT));
    return List.of(fabric.region("a"), fabric.region("b"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          name x| revision 1| instance 1 vlan 10; name x| revision 1| instance 1 vlan 10; YES
          name x| revision 1| instance 1 vlan 10-12; instance 1 vlan 12| name x| instance 1 vlan 10,11| revision 1; YES
          name x; name X; NO
          name x; revision 0; NO
          revision 0; instance 0 vlan 10; YES
          name x| revision 1; name x| revision 2; NO
          name x| instance 1 vlan 10; name x| instance 2 vlan 10; NO
          name x| instance 1 vlan 10; name x; NO
          name x| instance 1 vlan 10; name x| instance 1 vlan 1o; UNKNOWN
          name x| instance 1 vlan 10; name y| instance 1 vlan 1o; NO
          """)
  void regions_are_compared(String one, String other, Truth expected) {
    String head = "spanning-tree mst configuration| ";
    List<MstRegion> both = regions(head + one, head + other);
    assertThat(both.get(0).isOneWith(both.get(1))).isEqualTo(expected);
    assertThat(both.get(1).isOneWith(both.get(0))).isEqualTo(expected);
  }

  /** The sample digest of a table that holds all VLANs in instance 0 (value from memory). */
  @Test
  void a_switch_without_a_line_is_the_region_without_a_name_of_the_default_digest() {
    assertThat(regions("", "").get(0).identity())
        .contains(new MstRegion.Identity("", 0, "AC36177F50283CD4B83821D8AB26DE62"));
  }

  /** The standard calls a bridge without a name by its address; families of a dialect do so. */
  @Test
  void without_names_it_is_open_where_a_name_may_be_the_address() {
    MstRegion named = regions("", "").get(0);
    MstRegion own = new MstRegion(named.name(), named.revision(), named.digest(), true);
    assertThat(own.isOneWith(named)).isEqualTo(Truth.UNKNOWN);
    assertThat(own.identity()).isEmpty();
    assertThat(own.whyOpen()).isPresent();
  }
}
