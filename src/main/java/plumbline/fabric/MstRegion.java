package plumbline.fabric;

import java.util.Optional;
import plumbline.effective.Dialect;
import plumbline.effective.SpanningTree;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Setting;
import plumbline.setting.Truth;

/**
 * What makes MST bridges one region: the same name, the same revision and the same table of VLANs
 * and instances (IEEE 802.1Q, MST Configuration Identifier).
 *
 * @param name the name; absent where no line sets one
 * @param revision 0..65535
 * @param digest the digest of the table; unknown where the table is open
 * @param ownName whether a bridge without a name may be called by its address, as the standard has
 *     it, and not by an empty name (common practice, no source)
 */
public record MstRegion(
    Setting<String> name, Setting<Integer> revision, Setting<String> digest, boolean ownName) {
  /**
   * A region of which everything is known.
   *
   * @param name the name, empty where there is none
   * @param revision the revision
   * @param digest the digest of the table
   */
  public record Identity(String name, int revision, String digest) {}

  /** The region that a switch is configured for, whatever its mode. */
  public static MstRegion of(SwitchSettings device) {
    SpanningTree.Region region = device.tree().region();
    return new MstRegion(
        region.name(),
        region.revision(),
        region
            .doubt()
            .<Setting<String>>map(why -> new Setting.Unknown<>(why, region.lines()))
            .orElseGet(
                () -> new Setting.Known<>(RegionDigest.of(region.instances()), region.lines())),
        device.dialect() == Dialect.TWO_WORD);
  }

  /** Whether two switches are of one region. */
  public Truth isOneWith(MstRegion other) {
    return hasNameOf(other).and(isSame(revision, other.revision)).and(isSame(digest, other.digest));
  }

  /** Whether the names are the same. */
  public Truth hasNameOf(MstRegion other) {
    boolean nameless =
        name instanceof Setting.Absent<String> && other.name instanceof Setting.Absent<String>;
    return nameless && (ownName || other.ownName) ? Truth.UNKNOWN : isSame(name, other.name);
  }

  private static <T> Truth isSame(Setting<T> one, Setting<T> other) {
    return one.isDecided() && other.isDecided()
        ? Truth.of(one.value().equals(other.value()))
        : Truth.UNKNOWN;
  }

  /** The region, where everything that makes it is known. */
  public Optional<Identity> identity() {
    boolean named = name.isDecided() && !(name.value().isEmpty() && ownName);
    return named && revision.value().isPresent() && digest.value().isPresent()
        ? Optional.of(
            new Identity(name.value().orElse(""), revision.value().get(), digest.value().get()))
        : Optional.empty();
  }

  /** Why it is not wholly known, a clause; empty where it is. */
  public Optional<String> whyOpen() {
    return name.reason()
        .or(revision::reason)
        .or(digest::reason)
        .or(
            () ->
                identity().isPresent()
                    ? Optional.empty()
                    : Optional.of(
                        "no line names the region, and what it is called then differs between the"
                            + " families of the dialect"));
  }
}
