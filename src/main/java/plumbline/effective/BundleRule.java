package plumbline.effective;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.TreeNumbers;
import plumbline.statement.PortCommand;

/**
 * Settles the members of bundles: a member without any switching line takes the bundle's settings,
 * one whose own complete settings differ is suspended, and spanning-tree lines on a member have no
 * effect. Where the text has no stanza for the bundle the members' lines count and no port is
 * invented for it.
 */
final class BundleRule {
  private static final List<Key<?>> SWITCHING =
      List.of(
          Keys.MODE,
          Keys.ACCESS_VLAN,
          Keys.VOICE_VLAN,
          Keys.NATIVE_VLAN,
          Keys.NATIVE_TAGGING,
          Keys.ALLOWED,
          Keys.NEGOTIATE);
  private static final List<Key<?>> ACCESS_ONLY = List.of(Keys.ACCESS_VLAN, Keys.VOICE_VLAN);
  private static final List<Key<?>> TRUNK_ONLY =
      List.of(Keys.NATIVE_VLAN, Keys.NATIVE_TAGGING, Keys.ALLOWED, Keys.NEGOTIATE);
  private static final List<Key<?>> TREE =
      List.of(
          Keys.FAST_START,
          Keys.BPDU_GUARD,
          Keys.BPDU_FILTER,
          Keys.ROOT_GUARD,
          Keys.LOOP_GUARD,
          Keys.STP_COST,
          Keys.STP_PORT_PRIORITY,
          Keys.LINK_TYPE);
  private static final List<Key<TreeNumbers>> BY_TREE =
      List.of(Keys.COST_BY_TREE, Keys.PORT_PRIORITY_BY_TREE);
  private static final Evidence NO_MEMBER = new Evidence.Default("no member of a bundle");

  private final SortedMap<PortName, PortDraft> ports;
  private final Map<PortName, List<PortDraft>> members;

  /** The different values of speed and duplex among each bundle's members. */
  private final Map<PortName, Map<Key<?>, Collection<Setting<?>>>> distinct = new HashMap<>();

  BundleRule(SortedMap<PortName, PortDraft> ports) {
    this.ports = ports;
    this.members = members(ports);
  }

  /** The members of each bundle that the text has a stanza for, in order, by the bundle's name. */
  static Map<PortName, List<PortDraft>> members(SortedMap<PortName, PortDraft> ports) {
    Map<PortName, List<PortDraft>> members = new HashMap<>();
    for (PortDraft port : ports.values()) {
      bundleOf(port, ports)
          .ifPresent(
              bundle -> members.computeIfAbsent(bundle.name(), key -> new ArrayList<>()).add(port));
    }
    return members;
  }

  /** Settles every port; needs all settings but what the port carries. */
  void apply() {
    for (PortDraft port : ports.values()) {
      port.put(Keys.SUSPENDED, suspendedWithout(port));
    }
    for (PortDraft member : ports.values()) {
      bundleOf(member, ports).ifPresent(bundle -> settle(member, bundle));
    }
  }

  /** Where the member's line names no mode, the bundle's own may. */
  private static void takeMode(PortDraft member, PortDraft bundle) {
    LastWord<PortCommand.ChannelGroup> group =
        member.lines().last(Matter.BUNDLE, PortCommand.ChannelGroup.class);
    LastWord<PortCommand.BundleMode> mode =
        bundle.lines().last(Matter.BUNDLE_MODE, PortCommand.BundleMode.class);
    if (group instanceof LastWord.Said<PortCommand.ChannelGroup> said
        && said.command().mode().isEmpty()
        && mode instanceof LastWord.Said<PortCommand.BundleMode> line
        && line.sets()
        && line.command().mode().isPresent()) {
      member.put(
          Keys.BUNDLE,
          member
              .get(Keys.BUNDLE)
              .map(old -> new Bundle(old.id(), line.command().mode().get()))
              .because(List.of(line.statement().evidence())));
    }
  }

  private static Setting<Boolean> suspendedWithout(PortDraft port) {
    Setting<Bundle> bundle = port.get(Keys.BUNDLE);
    return bundle.isDecided() ? Setting.known(false, NO_MEMBER) : bundle.map(unknown -> false);
  }

  /** The stanza of the bundle that a port is a member of, if it is and the text has one. */
  static Optional<PortDraft> bundleOf(PortDraft member, Map<PortName, PortDraft> ports) {
    return member
        .get(Keys.BUNDLE)
        .value()
        // a bundle is in no bundle, whatever its lines say
        .filter(any -> !member.name().kind().isBundle())
        .flatMap(
            bundle ->
                List.of(PortKind.PORT_CHANNEL, PortKind.LAG).stream()
                    .map(kind -> ports.get(PortName.of(kind, bundle.id())))
                    .filter(Objects::nonNull)
                    .findFirst());
  }

  private void settle(PortDraft member, PortDraft bundle) {
    takeMode(member, bundle);
    List<Evidence> membership = member.get(Keys.BUNDLE).evidence();
    Verdict verdict = new Verdict(membership);
    if (hasSwitchingLine(member, bundle)) {
      SWITCHING.forEach(key -> verdict.compare(key, member, bundle, counts(key, bundle)));
    } else if (member.lines().open().isPresent()) {
      verdict.doubt(member.lines().open().get());
    } else {
      SWITCHING.forEach(key -> take(key, member, bundle, membership));
      member.takeList(bundle.allowed());
    }
    link(Keys.SPEED, PortCommand.Speed.class, member, bundle, verdict);
    link(Keys.DUPLEX, PortCommand.Duplex.class, member, bundle, verdict);
    TREE.forEach(key -> take(key, member, bundle, membership));
    BY_TREE.forEach(
        key ->
            member.put(
                key,
                bundle.get(key).map(numbers -> numbers.because(membership)).because(membership)));
    member.put(Keys.SUSPENDED, verdict.suspended());
  }

  private static boolean hasSwitchingLine(PortDraft member, PortDraft bundle) {
    return SwitchingLines.anyOwn(member.lines())
        || (bundle.get(Keys.MODE).is(PortMode.ROUTED)
            && member.lines().sets(PortCommand.Switched.class));
  }

  /** Whether a setting has an effect in the bundle's mode; left-overs of the other one have not. */
  private static boolean counts(Key<?> key, PortDraft bundle) {
    Setting<PortMode> mode = bundle.get(Keys.MODE);
    if (mode.is(PortMode.ROUTED)) {
      return key.equals(Keys.MODE);
    }
    if (mode.is(PortMode.TRUNK)) {
      return !ACCESS_ONLY.contains(key);
    }
    return !mode.is(PortMode.ACCESS) || !TRUNK_ONLY.contains(key);
  }

  private static <T> void take(
      Key<T> key, PortDraft member, PortDraft bundle, List<Evidence> membership) {
    member.put(key, bundle.get(key).because(membership));
  }

  /** Speed or duplex: the member's own line must equal the bundle's, or else the other members'. */
  private <T> void link(
      Key<T> key,
      Class<? extends PortCommand> line,
      PortDraft member,
      PortDraft bundle,
      Verdict verdict) {
    boolean own = member.lines().sets(line);
    if (bundle.lines().sets(line)) {
      if (own || member.lines().open().isPresent()) {
        verdict.compare(key, member, bundle, true);
      } else {
        take(key, member, bundle, verdict.membership);
      }
      return;
    }
    for (Setting<?> other : differentOnes(key, bundle)) {
      if (differ(member.get(key), other)) {
        verdict.doubt("the members differ in " + key + " and the bundle has no such line");
        verdict.addBoth(member.get(key), other);
      }
    }
  }

  /** The settings of a bundle's members, of equal ones the first. */
  private Collection<Setting<?>> differentOnes(Key<?> key, PortDraft bundle) {
    return distinct
        .computeIfAbsent(bundle.name(), name -> new HashMap<>())
        .computeIfAbsent(
            key,
            which -> {
              Map<Object, Setting<?>> first = new LinkedHashMap<>();
              for (PortDraft member : members.get(bundle.name())) {
                Setting<?> setting = member.get(which);
                if (setting.isDecided()) {
                  first.putIfAbsent(setting.value(), setting);
                }
              }
              return first.values();
            });
  }

  private static boolean differ(Setting<?> one, Setting<?> other) {
    return one.isDecided() && other.isDecided() && !one.value().equals(other.value());
  }

  /** Collects what speaks for a member being suspended. */
  private static final class Verdict {
    private final List<Evidence> membership;
    private final List<Evidence> evidence = new ArrayList<>();
    private Optional<String> doubt = Optional.empty();
    private boolean suspended;

    Verdict(List<Evidence> membership) {
      this.membership = membership;
    }

    void doubt(String why) {
      doubt = doubt.or(() -> Optional.of(why));
    }

    <T> void compare(Key<T> key, PortDraft member, PortDraft bundle, boolean counts) {
      Setting<T> own = member.get(key);
      Setting<T> wanted = bundle.get(key);
      if (differ(own, wanted) && counts) {
        if (!suspended) {
          evidence.clear();
        }
        suspended = true;
        addBoth(own, wanted);
      } else if (!suspended && differ(own, wanted)) {
        doubt(
            "member and bundle differ in "
                + key
                + ", which their mode leaves without effect: releases differ on whether it counts");
        addBoth(own, wanted);
      } else if (!suspended && counts && !(own.isDecided() && wanted.isDecided())) {
        doubt(
            key
                + " cannot be compared with the bundle's: "
                + own.reason().or(wanted::reason).orElse(""));
        addBoth(own, wanted);
      }
    }

    private void addBoth(Setting<?> own, Setting<?> wanted) {
      evidence.addAll(own.evidence());
      evidence.addAll(wanted.evidence());
    }

    Setting<Boolean> suspended() {
      if (suspended) {
        return Setting.<Boolean>known(true).because(evidence).because(membership);
      }
      if (doubt.isPresent()) {
        return Setting.<Boolean>unknown(doubt.get()).because(evidence).because(membership);
      }
      return new Setting.Known<>(false, membership);
    }
  }
}
