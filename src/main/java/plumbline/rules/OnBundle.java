package plumbline.rules;

import java.util.List;
import java.util.function.Predicate;
import plumbline.design.DesignPort;
import plumbline.effective.PortSettings;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/**
 * Finds a setting of a bundle that some releases take from the bundle's lines and others from those
 * of its members (common practice, no source).
 */
final class OnBundle {
  private OnBundle() {}

  /**
   * The setting by the bundle's own line or, where none stands, by its members: the one that
   * differs from the design if any does. A port that is no bundle has its own.
   *
   * @param fits whether a decided setting is as designed
   */
  static <T> Setting<T> setting(PortCase port, Key<T> key, Predicate<Setting<T>> fits) {
    Setting<T> own = port.get(key);
    boolean hasLine = own.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
    if (!isBundle(port) || hasLine) {
      return own;
    }
    List<Setting<T>> members =
        port.at().settings().membersOf(port.port().port()).stream()
            .map(one -> ofMember(one, key))
            .toList();
    return members.stream()
        .filter(one -> one.isDecided() && !fits.test(one))
        .findFirst()
        .or(() -> members.stream().filter(one -> !one.isDecided()).findFirst())
        .or(() -> members.stream().findFirst())
        .orElse(own);
  }

  /** Whether the case is a bundle with a stanza of its own. */
  static boolean isBundle(PortCase port) {
    return port.port().port().kind().isBundle() && !port.fromMember();
  }

  /** The design's own case for a member of a bundle without a stanza would say it again. */
  static boolean isSaidOfMember(PortCase port) {
    return port.fromMember()
        && port.at()
            .designOf(port.settings().orElseThrow().name())
            .filter(own -> own.place() == DesignPort.Place.MEMBER)
            .isPresent();
  }

  private static <T> Setting<T> ofMember(PortSettings member, Key<T> key) {
    return member.get(key).because(member.get(Keys.BUNDLE).evidence());
  }
}
