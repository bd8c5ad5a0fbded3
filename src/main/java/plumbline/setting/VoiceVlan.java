package plumbline.setting;

import java.util.Optional;
import plumbline.vlan.VlanId;

/**
 * How a phone behind an access port marks its frames.
 *
 * @param kind the way
 * @param vlan the tagged VLAN, only for {@link Kind#TAGGED}
 */
public record VoiceVlan(Kind kind, Optional<VlanId> vlan) {
  /** The ways. */
  public enum Kind {
    /** Tagged with a VLAN of its own. */
    TAGGED,
    /** Priority-tagged (VLAN 0) in the access VLAN. */
    DOT1P,
    /** Untagged in the access VLAN. */
    UNTAGGED
  }

  /** Refuses a VLAN that the kind does not carry. */
  public VoiceVlan {
    if (vlan.isPresent() != (kind == Kind.TAGGED)) {
      throw new IllegalArgumentException("a voice VLAN number goes with the tagged kind only");
    }
  }

  /** A phone that tags with this VLAN. */
  public static VoiceVlan tagged(VlanId vlan) {
    return new VoiceVlan(Kind.TAGGED, Optional.of(vlan));
  }

  @Override
  public String toString() {
    return switch (kind) {
      case TAGGED -> vlan.orElseThrow().toString();
      case DOT1P -> "dot1p";
      case UNTAGGED -> "untagged";
    };
  }
}
