package plumbline.rules;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.design.Link;
import plumbline.design.RoleKeys;
import plumbline.design.RoleKeys.BundleWish;
import plumbline.design.Wanted;
import plumbline.effective.PortSettings;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Bundle;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

/** A member that its bundle leaves out because its own lines differ from those of the bundle. */
final class BundleMemberDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "bundle-member-differs",
          Group.BUNDLE,
          Severity.WEAKENS,
          "a member of a bundle is set otherwise than the bundle and is suspended",
          RuleInfo.COMMON_PRACTICE,
          Set.of("links.members in their bundle"));

  private static final String DESIGNED = "the settings of its bundle";

  private static final List<Key<?>> COMPARED =
      List.of(
          Keys.MODE,
          Keys.ACCESS_VLAN,
          Keys.VOICE_VLAN,
          Keys.NATIVE_VLAN,
          Keys.NATIVE_TAGGING,
          Keys.ALLOWED,
          Keys.NEGOTIATE,
          Keys.SPEED,
          Keys.DUPLEX);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    if (port.isSpare() || port.settings().isEmpty()) {
      return;
    }
    if (!port.port().port().kind().isBundle()) {
      judge(port, outcomes);
    } else if (!port.fromMember() && port.members().isEmpty()) {
      for (PortSettings member : port.at().settings().membersOf(port.port().port())) {
        judge(new PortCase(port.at(), port.port(), Optional.of(member), true), outcomes);
      }
    }
  }

  private static void judge(PortCase member, Outcomes outcomes) {
    Optional<Bundle> joined = member.get(Keys.BUNDLE).value();
    if (joined.isEmpty()) {
      return;
    }
    Setting<Boolean> suspended = member.get(Keys.SUSPENDED);
    if (!suspended.isDecided()) {
      outcomes.add(member.undecided(suspended, DESIGNED, member.port().at()));
    } else if (!suspended.is(true)) {
      outcomes.conforms(member.subject());
    } else {
      outcomes.add(candidate(member, joined.get(), suspended));
    }
  }

  private static Candidate candidate(PortCase member, Bundle joined, Setting<Boolean> suspended) {
    Optional<PortSettings> bundle = bundle(member, joined);
    String name = bundle.map(PortSettings::fullName).orElseGet(() -> "bundle " + joined.id());
    Map<Key<?>, String> differing = bundle.map(open -> differing(member, open)).orElse(Map.of());
    Optional<Reserve> reserve =
        bundle.map(open -> Reserve.of(open, member.at().settings().membersOf(open.name())));
    Candidate told =
        Candidate.of(
                member.subject(),
                "the settings of " + name,
                "other than " + name + ": " + String.join("; ", differing.values()),
                consequence(reserve, name),
                member.proofs(suspended),
                Optional.of(member.port().at()))
            .beside(List.of(Place.ofPort(member.port().switchName(), name)));
    Candidate candidate =
        reserve.filter(Reserve::isDown).isPresent() ? told.at(Severity.BREAKS) : told;
    Optional<PortCase> own =
        bundle.map(
            open ->
                new PortCase(
                    member.at(),
                    member.at().designOf(open.name()).orElse(member.port()),
                    bundle,
                    false));
    if (isInWrongBundle(member, joined)) {
      return candidate.across(
          new Across(Set.of(Keys.BUNDLE), member.subject().place().stream().toList(), true));
    }
    boolean bundleDeparts =
        own.isPresent()
            && !differing.isEmpty()
            && differing.keySet().stream()
                .allMatch(key -> isAsDesigned(member, key) && !isAsDesigned(own.get(), key));
    return bundleDeparts
        ? candidate
            .about(
                differing.containsKey(Keys.ALLOWED)
                    ? misfits(own.get()).and(TaggedVlanExtra.reachable(own.get()))
                    : VlanSet.NONE)
            .across(
                new Across(differing.keySet(), own.get().subject().place().stream().toList(), true))
        : candidate;
  }

  private static Optional<PortSettings> bundle(PortCase member, Bundle joined) {
    return Stream.of(PortKind.PORT_CHANNEL, PortKind.LAG)
        .flatMap(kind -> member.at().settings().port(PortName.of(kind, joined.id())).stream())
        .findFirst();
  }

  /** In its right bundle, or in none, it would not be measured by this one. */
  private static boolean isInWrongBundle(PortCase member, Bundle joined) {
    boolean unwanted =
        member.wish(RoleKeys.BUNDLE).filter(wish -> wish.value() == BundleWish.NONE).isPresent();
    return unwanted
        || designed(member).filter(bundle -> bundle.lastNumber() != joined.id()).isPresent();
  }

  private static Optional<PortName> designed(PortCase member) {
    for (Link link : member.design().links()) {
      for (Link.Member cable : link.members()) {
        if (cable.first().equals(member.port())) {
          return Optional.of(link.first().port());
        }
        if (cable.second().filter(member.port()::equals).isPresent()) {
          return link.second().map(DesignPort::port);
        }
      }
    }
    return Optional.empty();
  }

  private static Map<Key<?>, String> differing(PortCase member, PortSettings bundle) {
    Map<Key<?>, String> all = new LinkedHashMap<>();
    PortMode mode = bundle.get(Keys.MODE).value().orElse(PortMode.OTHER);
    for (Key<?> key : COMPARED) {
      Setting<?> own = member.get(key);
      Setting<?> wanted = bundle.get(key);
      boolean counts =
          mode != PortMode.TRUNK || !(key.equals(Keys.ACCESS_VLAN) || key.equals(Keys.VOICE_VLAN));
      if (counts && own.isDecided() && wanted.isDecided() && !own.value().equals(wanted.value())) {
        all.put(key, words(key, own) + " instead of " + value(wanted));
      }
    }
    // in another mode the rest follows
    return all.containsKey(Keys.MODE) ? Map.of(Keys.MODE, all.get(Keys.MODE)) : all;
  }

  private static String words(Key<?> key, Setting<?> setting) {
    return key.name().replace('-', ' ').replace("vlan", "VLAN") + " " + value(setting);
  }

  private static String value(Setting<?> setting) {
    return setting
        .value()
        .map(
            value ->
                value instanceof VlanSet vlans && vlans.isEmpty()
                    ? "none"
                    : value instanceof Boolean on ? (on ? "on" : "off") : value.toString())
        .orElse("none");
  }

  private static boolean isAsDesigned(PortCase port, Key<?> key) {
    if (key.equals(Keys.MODE)) {
      return fits(port.wishedMode(), port.get(Keys.MODE));
    }
    if (key.equals(Keys.NATIVE_VLAN)) {
      return port.wish(RoleKeys.NATIVE)
          .map(Wanted::value)
          .map(DesignVlan::id)
          .filter(port.get(Keys.NATIVE_VLAN)::is)
          .isPresent();
    }
    if (key.equals(Keys.ACCESS_VLAN)) {
      return port.wish(RoleKeys.ACCESS)
          .map(Wanted::value)
          .map(DesignVlan::id)
          .filter(port.get(Keys.ACCESS_VLAN)::is)
          .isPresent();
    }
    if (key.equals(Keys.ALLOWED)) {
      return isListAsDesigned(port);
    }
    if (key.equals(Keys.NEGOTIATE)) {
      return fits(port.wish(RoleKeys.NEGOTIATE), port.get(Keys.NEGOTIATE));
    }
    if (key.equals(Keys.SPEED)) {
      return fits(port.wish(RoleKeys.SPEED), port.get(Keys.SPEED));
    }
    return key.equals(Keys.DUPLEX) && fits(port.wish(RoleKeys.DUPLEX), port.get(Keys.DUPLEX));
  }

  private static <T> boolean fits(Optional<Wanted<T>> wish, Setting<T> found) {
    return wish.map(Wanted::value).filter(found::is).isPresent();
  }

  private static boolean isListAsDesigned(PortCase port) {
    return port.wish(RoleKeys.TAGGED).isPresent()
        && port.get(Keys.ALLOWED).value().isPresent()
        && misfits(port).isEmpty();
  }

  /** The VLANs that the list of a trunk lacks or has too many, by its role. */
  private static VlanSet misfits(PortCase port) {
    VlanSet wanted = port.wish(RoleKeys.TAGGED).map(Wanted::value).orElse(VlanSet.NONE);
    VlanSet mayCarry = port.wish(RoleKeys.MAY_CARRY).map(Wanted::value).orElse(VlanSet.NONE);
    Trunk trunk = Trunk.of(port, port.get(Keys.ALLOWED).value().orElse(VlanSet.NONE));
    return trunk.notAllowed(wanted).plus(trunk.extra(wanted, mayCarry));
  }

  private static String consequence(Optional<Reserve> reserve, String name) {
    return "The switch suspends the member until its lines equal those of the bundle: "
        + reserve.map(Reserve::words).orElse(name + " has one cable less.");
  }
}
