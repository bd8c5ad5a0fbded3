package plumbline.wish;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.design.Qos;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.PortSettings;
import plumbline.setting.Bundle;
import plumbline.setting.Effect;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.setting.VoiceVlan;
import plumbline.text.Glob;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * What the design says of one setting of one port.
 *
 * @param words the designed value
 * @param value the same as a value: equal values are the same wish, in whatever design they stand
 * @param same whether the effective setting is that
 * @param at where the design says so
 */
public record Wish(String words, Object value, Truth same, Position at) {
  /** The wish that a design has for a setting, if it has one. */
  public static Optional<Wish> of(Key<?> key, DesignPort designed, PortSettings port) {
    return new Reader(designed, port).read(key);
  }

  /** Looks up the wishes of one port. */
  private record Reader(DesignPort designed, PortSettings port) {
    Optional<Wish> read(Key<?> key) {
      if (key.equals(Keys.SHUT)) {
        boolean spare = designed.role().isSpare();
        return Optional.of(
            new Wish(yesOrNo(spare), spare, same(Keys.SHUT, shut -> shut == spare), designed.at()));
      }
      if (key.equals(Keys.ALLOWED)) {
        return tagged();
      }
      return switch (key.name()) {
        case "mode" -> equal(RoleKeys.MODE, Keys.MODE);
        case "access-vlan" -> vlan(RoleKeys.ACCESS, Keys.ACCESS_VLAN, id -> id);
        case "voice-vlan" -> vlan(RoleKeys.VOICE, Keys.VOICE_VLAN, VoiceVlan::tagged);
        case "native-vlan" -> vlan(RoleKeys.NATIVE, Keys.NATIVE_VLAN, id -> id);
        case "native-tagging" -> flag(RoleKeys.NATIVE_TAGGING, Keys.NATIVE_TAGGING);
        case "negotiate" -> flag(RoleKeys.NEGOTIATE, Keys.NEGOTIATE);
        case "fast-start" -> effect(RoleKeys.FAST_START, Keys.FAST_START);
        case "bpdu-guard" -> effect(RoleKeys.BPDU_GUARD, Keys.BPDU_GUARD);
        case "bpdu-filter" -> effect(RoleKeys.BPDU_FILTER, Keys.BPDU_FILTER);
        case "root-guard" -> effect(RoleKeys.ROOT_GUARD, Keys.ROOT_GUARD);
        case "loop-guard" -> effect(RoleKeys.LOOP_GUARD, Keys.LOOP_GUARD);
        case "udld" -> effect(RoleKeys.UDLD, Keys.UDLD);
        case "bundle" -> bundle();
        case "min-links" -> equal(RoleKeys.MIN_LINKS, Keys.MIN_LINKS);
        case "speed" -> equal(RoleKeys.SPEED, Keys.SPEED);
        case "duplex" -> equal(RoleKeys.DUPLEX, Keys.DUPLEX);
        case "mtu" -> equal(RoleKeys.MTU, Keys.MTU);
        case "qos-trust" -> qos(Qos::trust, Keys.QOS_TRUST);
        case "policy-in" -> qos(Qos::policyIn, Keys.POLICY_IN);
        case "policy-out" -> qos(Qos::policyOut, Keys.POLICY_OUT);
        case "storm-control" -> flag(RoleKeys.STORM_CONTROL, Keys.STORM_CONTROL);
        case "port-security" -> flag(RoleKeys.PORT_SECURITY, Keys.PORT_SECURITY);
        case "snooping-trust" -> flag(RoleKeys.SNOOPING_TRUST, Keys.SNOOPING_TRUST);
        case "description" -> description();
        default -> Optional.empty();
      };
    }

    /** Two designs may declare one VLAN in different places. */
    private static Object value(Object wanted) {
      return wanted instanceof DesignVlan vlan ? vlan.id() : wanted;
    }

    private static String yesOrNo(boolean flag) {
      return flag ? "yes" : "no";
    }

    private <T> Truth same(Key<T> key, Predicate<T> test) {
      Setting<T> setting = port.get(key);
      return setting.isDecided()
          ? Truth.of(setting.value().filter(test).isPresent())
          : Truth.UNKNOWN;
    }

    private <T> Optional<Wish> equal(RoleKey<T> role, Key<T> key) {
      return wanted(role, want -> want.toString(), want -> same(key, want::equals));
    }

    private <W> Optional<Wish> wanted(
        RoleKey<W> role, Function<W, String> words, Function<W, Truth> same) {
      return designed
          .role()
          .get(role)
          .map(
              want ->
                  new Wish(
                      words.apply(want.value()),
                      value(want.value()),
                      same.apply(want.value()),
                      want.at()));
    }

    private <T> Optional<Wish> vlan(
        RoleKey<DesignVlan> role, Key<T> key, Function<VlanId, T> value) {
      return wanted(role, DesignVlan::toString, want -> same(key, value.apply(want.id())::equals));
    }

    /** An absent flag is off. */
    private Optional<Wish> flag(RoleKey<Boolean> role, Key<Boolean> key) {
      return wanted(
          role,
          Reader::yesOrNo,
          want ->
              port.get(key).isDecided()
                  ? Truth.of(port.get(key).value().orElse(false).equals(want))
                  : Truth.UNKNOWN);
    }

    private Optional<Wish> effect(RoleKey<Boolean> role, Key<Effect> key) {
      return wanted(
          role,
          want -> want ? "on" : "off",
          want ->
              port.get(key).isDecided()
                  ? Truth.of(port.get(key).is(Effect.ON) == want)
                  : Truth.UNKNOWN);
    }

    /** A bundle's members are in it; the bundle itself is in none. */
    private Optional<Wish> bundle() {
      if (port.name().kind().isBundle()) {
        return Optional.empty();
      }
      return wanted(
          RoleKeys.BUNDLE,
          want -> want.toString(),
          want ->
              switch (want) {
                case NONE ->
                    port.get(Keys.BUNDLE).isDecided()
                        ? Truth.of(port.get(Keys.BUNDLE).value().isEmpty())
                        : Truth.UNKNOWN;
                case LACP -> same(Keys.BUNDLE, joined -> joined.mode().isLacp());
                case STATIC -> same(Keys.BUNDLE, joined -> joined.mode() == Bundle.Mode.STATIC);
              });
    }

    /** A trunk's list is compared without its native VLAN and what the role lets pass anyway. */
    private Optional<Wish> tagged() {
      Setting<VlanId> untagged = port.get(Keys.NATIVE_VLAN);
      VlanSet aside =
          designed
              .role()
              .value(RoleKeys.MAY_CARRY)
              .orElse(VlanSet.NONE)
              .plus(VlanSet.RESERVED)
              .plus(untagged.value().map(id -> VlanSet.of(id.number())).orElse(VlanSet.NONE));
      return wanted(
          RoleKeys.TAGGED,
          want -> want + " tagged",
          want ->
              untagged.isDecided()
                  ? same(Keys.ALLOWED, allowed -> allowed.minus(aside).equals(want.minus(aside)))
                  : Truth.UNKNOWN);
    }

    private Optional<Wish> qos(Function<Qos, Optional<String>> part, Key<String> key) {
      Optional<Wanted<Qos>> want = designed.role().get(RoleKeys.QOS);
      return want.flatMap(qos -> part.apply(qos.value()))
          .map(
              words ->
                  new Wish(
                      words,
                      words,
                      port.get(key).isDecided()
                          ? Truth.of(port.get(key).value().orElse("none").equals(words))
                          : Truth.UNKNOWN,
                      want.get().at()));
    }

    private Optional<Wish> description() {
      return wanted(
          RoleKeys.DESCRIPTION,
          pattern -> "like " + pattern,
          pattern -> same(Keys.DESCRIPTION, text -> Glob.matches(pattern, text)));
    }
  }
}
