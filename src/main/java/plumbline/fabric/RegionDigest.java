package plumbline.fabric;

import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Map.Entry;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import plumbline.vlan.VlanSet;

/** The configuration digest by which MST bridges tell whether they are of one region. */
public final class RegionDigest {
  private static final int VLANS = 4096;
  private static final String ALGORITHM = "HmacMD5";

  /** The key that the standard gives (IEEE 802.1Q, MST Configuration Identifier). */
  private static final String SIGNATURE_KEY = "13AC06A62E47FD51F95D2BA243CD0346";

  private RegionDigest() {}

  /**
   * The digest of a mapping, 32 hexadecimal digits in upper case.
   *
   * @param instances VLANs by instance, each VLAN once; VLANs that are in none belong to instance 0
   */
  public static String of(Map<Integer, VlanSet> instances) {
    ByteBuffer table = ByteBuffer.allocate(VLANS * Short.BYTES);
    for (Entry<Integer, VlanSet> one : instances.entrySet()) {
      short instance = one.getKey().shortValue();
      one.getValue().ids().forEach(vlan -> table.putShort(vlan * Short.BYTES, instance));
    }
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(HexFormat.of().parseHex(SIGNATURE_KEY), ALGORITHM));
      return HexFormat.of().withUpperCase().formatHex(mac.doFinal(table.array()));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java has no " + ALGORITHM, e);
    }
  }
}
