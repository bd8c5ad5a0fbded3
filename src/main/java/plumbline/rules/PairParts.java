package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import plumbline.design.Qos;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.Dialect;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** The plain settings in which the two ports of a pair are alike, and what comes of each. */
final class PairParts {
  private static final String AUTO = "auto";
  private static final String NONE = "none";

  private PairParts() {}

  /**
   * One comparison whose type the list of all does not know.
   *
   * @param asked what is compared
   */
  record Part(Comparison.Asked<?> asked) {
    void ask(Comparison comparison) {
      comparison.ask(asked);
    }
  }

  /** What spanning tree and negotiation do, which the mode has a say in. */
  static List<Comparison.Asked<Boolean>> bridging(PairCase pair) {
    String host = pair.host().name();
    return List.of(
        effect(
            "edge fast-start",
            Keys.FAST_START,
            RoleKeys.FAST_START,
            "After each link-up one port blocks for a while, though "
                + host
                + " may send by it at once: those frames are lost."),
        effect(
            "BPDU guard",
            Keys.BPDU_GUARD,
            RoleKeys.BPDU_GUARD,
            "A bridge at or behind " + host + " is stopped at one port and let in at the other."),
        effect(
            "BPDU filter",
            Keys.BPDU_FILTER,
            RoleKeys.BPDU_FILTER,
            "Spanning tree is off at one port: a loop through "
                + host
                + " is seen at the other port at best."),
        effect(
            "root guard",
            Keys.ROOT_GUARD,
            RoleKeys.ROOT_GUARD,
            "A bridge behind " + host + " can become root by one port."),
        effect(
            "loop guard",
            Keys.LOOP_GUARD,
            RoleKeys.LOOP_GUARD,
            "One port blocks when BPDUs cease and the other forwards."),
        Comparison.Asked.of(
            "trunk negotiation",
            Set.of(Keys.NEGOTIATE),
            port -> port.get(Keys.NEGOTIATE),
            port -> port.wish(RoleKeys.NEGOTIATE),
            on -> "trunk negotiation " + (on ? "on" : "off"),
            (one, other) ->
                "One port answers whoever negotiates a trunk with it, the other does not."));
  }

  private static Comparison.Asked<Boolean> effect(
      String name, Key<Effect> key, RoleKey<Boolean> role, String so) {
    return Comparison.Asked.of(
        name,
        Set.of(key),
        port -> Comparison.orElse(port.get(key).map(Effect.ON::equals), false),
        port -> port.wish(role),
        on -> name + (on ? " on" : " off"),
        (one, other) -> so);
  }

  /** Sizes, speeds, marking and limits. */
  static List<Part> rest(PairCase pair) {
    String host = pair.host().name();
    List<Part> all = new ArrayList<>();
    all.add(
        new Part(
            Comparison.Asked.of(
                "MTU",
                Set.of(Keys.MTU),
                port -> port.get(Keys.MTU),
                port -> port.wish(RoleKeys.MTU),
                octets -> "MTU " + octets,
                (one, other) ->
                    "Frames of more than "
                        + Math.min(one, other)
                        + " bytes of payload pass by "
                        + (one > other ? pair.pair().first() : pair.pair().second())
                        + " only: large transfers hang when "
                        + host
                        + " uses the other port.")));
    all.add(
        word(
            "speed",
            Keys.SPEED,
            AUTO,
            port -> port.wish(RoleKeys.SPEED),
            host
                + " gets another speed by one port than by the other, or no link by one of them."));
    all.add(
        word(
            "duplex",
            Keys.DUPLEX,
            AUTO,
            port -> port.wish(RoleKeys.DUPLEX),
            "Where one port ends up at half duplex, frames are lost under load when "
                + host
                + " uses it."));
    String calls = "Voice of " + host + " has priority by one port and not by the other.";
    all.add(
        new Part(
            Comparison.Asked.of(
                "trust",
                Set.of(Keys.QOS_TRUST),
                PairParts::trust,
                port -> qos(port, Qos::trust),
                trust -> "trust " + trust,
                (one, other) -> calls)));
    all.add(word("policy-in", Keys.POLICY_IN, NONE, port -> policy(port, Qos::policyIn), calls));
    all.add(word("policy-out", Keys.POLICY_OUT, NONE, port -> policy(port, Qos::policyOut), calls));
    all.add(
        flag(
            "storm control",
            Keys.STORM_CONTROL,
            RoleKeys.STORM_CONTROL,
            "A storm from " + host + " is limited at one port only."));
    all.add(
        flag(
            "port security",
            Keys.PORT_SECURITY,
            RoleKeys.PORT_SECURITY,
            "Machines that move to the limited port when the other fails can be cut off there."));
    return all;
  }

  private static Part word(
      String name,
      Key<String> key,
      String without,
      Function<PortCase, Optional<Wanted<String>>> wish,
      String so) {
    return new Part(
        Comparison.Asked.of(
            name,
            Set.of(key),
            port -> Comparison.orElse(port.get(key), without),
            wish,
            value -> name + " " + value,
            (one, other) -> so));
  }

  private static Part flag(String name, Key<Boolean> key, RoleKey<Boolean> role, String so) {
    return new Part(
        Comparison.Asked.of(
            name,
            Set.of(key),
            port -> Comparison.orElse(port.get(key), false),
            port -> port.wish(role),
            on -> name + (on ? " on" : " off"),
            (one, other) -> so));
  }

  private static Optional<Wanted<String>> qos(PortCase port, Function<Qos, Optional<String>> part) {
    return port.wish(RoleKeys.QOS)
        .flatMap(wish -> part.apply(wish.value()).map(word -> new Wanted<>(word, wish.at())));
  }

  /** A role that trusts nothing wants no policy either. */
  private static Optional<Wanted<String>> policy(
      PortCase port, Function<Qos, Optional<String>> part) {
    return qos(port, part)
        .or(() -> qos(port, Qos::trust).filter(trust -> trust.value().equals(NONE)));
  }

  /** Only switches of the classic campus kind mistrust what no line tells them to trust. */
  private static Setting<String> trust(PortCase port) {
    Setting<String> trust = Comparison.orElse(port.get(Keys.QOS_TRUST), NONE);
    boolean line = trust.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
    Dialect dialect = port.at().settings().dialect();
    return trust.is(NONE) && !line && dialect != Dialect.CAMPUS
        ? new Setting.Unknown<>(
            "whether a port trusts without a line differs between releases of the "
                + dialect
                + " dialect",
            trust.evidence())
        : trust;
  }
}
