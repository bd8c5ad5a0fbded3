package plumbline.rules;

import java.util.Optional;
import plumbline.design.DesignPort.Place;
import plumbline.design.RoleKeys.BundleWish;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Setting;

/**
 * Says what comes of a bundle that only one end knows, or that the ends form differently (IEEE
 * 802.1AX for LACP; what releases do with a port that finds no partner is common practice, no
 * source).
 */
final class BundleWords {
  private BundleWords() {}

  /** What a role asks. */
  static String designed(BundleWish how) {
    return switch (how) {
      case NONE -> "no bundle";
      case LACP -> "a bundle with LACP";
      case STATIC -> "a static bundle";
    };
  }

  /** What a port does. */
  static String found(Setting<Bundle> joined) {
    return joined.value().map(BundleWords::found).orElse("no bundle");
  }

  private static String found(Bundle bundle) {
    String mode =
        switch (bundle.mode()) {
          case ACTIVE -> "LACP active";
          case PASSIVE -> "LACP passive";
          case STATIC -> "static";
          case DESIRABLE, AUTO -> "proprietary negotiation " + bundle.mode();
        };
    return "bundle " + bundle.id() + ", " + mode;
  }

  /** A port in a bundle that the other end does not know of. */
  static String unwanted(PortCase port, Bundle found) {
    String other = other(port);
    return switch (found.mode()) {
      case ACTIVE, PASSIVE ->
          Words.capital(other)
              + " does not speak LACP: the port never joins its bundle, and is suspended, so that"
              + " nothing passes, or runs alone, as the release has it.";
      case DESIRABLE, AUTO ->
          Words.capital(other)
              + " does not answer the negotiation of the bundle: the port waits for it at every"
              + " link-up and then runs alone, if at all.";
      case STATIC -> isOnlyMember(port, found) ? only(found, other) : spread(port, found);
    };
  }

  private static boolean isOnlyMember(PortCase port, Bundle found) {
    return port.at().settings().whyPortsMayBeMissing().isEmpty()
        && port.at().settings().membersOf(PortName.of(PortKind.PORT_CHANNEL, found.id())).size()
            < 2;
  }

  private static String only(Bundle found, String other) {
    return "The port is the only one in bundle "
        + found.id()
        + " and passes frames for now; a second one would get a share of them, which "
        + other
        + " does not expect there.";
  }

  private static String spread(PortCase port, Bundle found) {
    String all = "The switch spreads frames over all ports of bundle " + found.id();
    return port.port().place() == Place.LINK
        ? all
            + " and takes them for one link; "
            + other(port)
            + " takes each for a link of its own: frames are lost, or loop."
        : all
            + ", whichever of them "
            + Words.behind(port.port())
            + " uses for an address: those that arrive on another are lost.";
  }

  /** A port outside any bundle that the other end counts in one. */
  static String alone(PortCase port, Optional<BundleWish> how, Optional<PortName> bundle) {
    String less =
        bundle.map(name -> port.at().settings().fullName(name) + " has one link less. ").orElse("");
    if (how.isEmpty()) {
      return less + "The far end still counts this cable in its bundle.";
    }
    String other = Words.capital(other(port));
    return less
        + (how.get() == BundleWish.LACP
            ? other
                + " negotiates with LACP and hears no answer: it leaves the cable out of its"
                + " bundle, or runs it alone."
            : other
                + " sends over all cables of its bundle: this switch sees its addresses move from"
                + " port to port, and frames are lost.");
  }

  /** A member of another bundle than designed. */
  static String elsewhere(PortCase port, PortName designed, Bundle found) {
    String name = port.at().settings().fullName(designed);
    return name
        + " has one link less, and bundle "
        + found.id()
        + " one that does not lead where its others do"
        + (found.mode() == Bundle.Mode.STATIC
            ? ": frames of either are sent over this cable, and are lost."
            : ": the two ends do not agree on a bundle for this cable.");
  }

  /** Two ends that form one bundle in different ways. */
  static String clash(PortCase port, BundleWish wanted, Bundle.Mode found) {
    String other = Words.capital(other(port));
    if (found == Bundle.Mode.STATIC) {
      return other
          + " negotiates with LACP and hears no answer: it leaves its ports out of the bundle,"
          + " while this switch sends frames over them.";
    }
    if (wanted == BundleWish.STATIC) {
      return other
          + " does not negotiate: this switch finds no partner and leaves the port out of the"
          + " bundle, while frames still come in over it.";
    }
    return other + " speaks LACP and this switch does not: they never form a bundle.";
  }

  /** At a link the other end is a switch too, and may have been changed in step. */
  private static String other(PortCase port) {
    return switch (port.port().place()) {
      case LINK, MEMBER -> "the far end, if it is as designed,";
      case HOST, SHEET, GATEWAY -> Words.behind(port.port());
    };
  }
}
