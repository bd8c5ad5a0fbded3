package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** IEEE 802.1Q, MST Configuration Identifier: the table of sample digests (values from memory). */
class RegionDigestTest {
  @Test
  void all_vlans_in_instance_0() {
    assertThat(RegionDigest.of(Map.of())).isEqualTo("AC36177F50283CD4B83821D8AB26DE62");
  }

  @Test
  void all_vlans_in_instance_1() {
    assertThat(RegionDigest.of(Map.of(1, VlanSet.ALL)))
        .isEqualTo("E13A80F11ED0856ACD4EE3476941C73B");
  }

  @Test
  void vlans_dealt_out_to_32_instances() {
    Map<Integer, VlanSet> instances = new TreeMap<>();
    for (int instance = 1; instance <= 32; instance++) {
      int rest = instance - 1;
      instances.put(
          instance,
          VlanSet.of(
              IntStream.rangeClosed(1, 4094)
                  .filter(vlan -> vlan % 32 == rest)
                  .mapToObj(VlanId::new)
                  .toList()));
    }
    assertThat(RegionDigest.of(instances)).isEqualTo("9D145C267DBE9FB5D893441BE3BA08CE");
  }
}
