package plumbline.rules;

import java.util.List;
import java.util.Set;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.setting.Key;
import plumbline.setting.Keys;

/**
 * A setting of a port that is on or off, and what comes of it (common practice, no source, where a
 * sentence names none).
 *
 * @param role the key of a role
 * @param key what the config says
 * @param words its name
 * @param lacking the consequence where it is wanted and off; {@code %s} is what is behind the port
 * @param unwanted the consequence where it is on and not wanted
 */
record PortFlag(RoleKey<Boolean> role, Key<?> key, String words, String lacking, String unwanted) {
  /** All of them, in the order of reports. */
  static final List<PortFlag> ALL =
      List.of(
          new PortFlag(
              RoleKeys.NEGOTIATE,
              Keys.NEGOTIATE,
              "trunk negotiation",
              "No negotiation frames are sent: if %s waits for them before it trunks, it stays an"
                  + " access port and no tagged frame passes.",
              ""),
          new PortFlag(
              RoleKeys.NATIVE_TAGGING,
              Keys.NATIVE_TAGGING,
              "native tagging",
              "Frames of the native VLAN leave untagged, and untagged frames from %s are taken into"
                  + " it.",
              "Untagged frames from %s are dropped, and frames of the native VLAN reach it tagged."),
          new PortFlag(
              RoleKeys.BPDU_GUARD,
              Keys.BPDU_GUARD,
              "BPDU guard",
              "",
              "The first BPDU from %s disables the port, until somebody reopens it or a recovery"
                  + " timer does."),
          new PortFlag(
              RoleKeys.BPDU_FILTER,
              Keys.BPDU_FILTER,
              "BPDU filter",
              "BPDUs are sent to %s and heard from it: a bridge there takes part in this spanning"
                  + " tree.",
              ""),
          new PortFlag(
              RoleKeys.ROOT_GUARD,
              Keys.ROOT_GUARD,
              "root guard",
              "A bridge at or behind %s with a better priority becomes root, and paths move towards it.",
              "The port blocks as long as a better root is heard from %s, also where that is the"
                  + " root that is meant."),
          new PortFlag(
              RoleKeys.LOOP_GUARD,
              Keys.LOOP_GUARD,
              "loop guard",
              "When BPDUs from %s cease although frames still pass, the port begins to forward and"
                  + " closes a loop.",
              "When BPDUs from %s cease, the port blocks until they come back."),
          new PortFlag(
              RoleKeys.UDLD,
              Keys.UDLD,
              "unidirectional-link detection",
              "A cable to %s that carries one way only goes unnoticed: frames are lost, or loop.",
              "The port can be disabled when %s does not answer the detection any more."),
          new PortFlag(
              RoleKeys.STORM_CONTROL,
              Keys.STORM_CONTROL,
              "storm control",
              "A storm of broadcasts from %s floods its VLANs without a limit.",
              "What %s sends above the limit is dropped, or the port is disabled."),
          new PortFlag(
              RoleKeys.PORT_SECURITY,
              Keys.PORT_SECURITY,
              "port security",
              "Any number of addresses is let in behind %s: another device, or enough of them to"
                  + " fill the switch's table, so that it floods.",
              "Another address behind %s than the known ones is cut off, or the port is disabled."),
          new PortFlag(
              RoleKeys.SNOOPING_TRUST,
              Keys.SNOOPING_TRUST,
              "snooping trust",
              "Where snooping is on in a VLAN, answers of an address server that come from %s are"
                  + " dropped: devices get no address.",
              "Whatever answers as an address server from %s is believed: devices can be sent to a"
                  + " false gateway."));

  /** What a bundle may have by the lines of its members. */
  static final Set<Key<?>> OF_MEMBERS =
      Set.of(Keys.UDLD, Keys.STORM_CONTROL, Keys.PORT_SECURITY, Keys.SNOOPING_TRUST);

  /** What has an effect on trunks only. */
  static final Set<Key<?>> OF_TRUNKS = Set.of(Keys.NEGOTIATE, Keys.NATIVE_TAGGING);

  /** What a routed port has no use for. */
  static final Set<Key<?>> OF_BRIDGES =
      Set.of(Keys.BPDU_GUARD, Keys.BPDU_FILTER, Keys.ROOT_GUARD, Keys.LOOP_GUARD);
}
