package plumbline.rules;

import java.util.Optional;
import java.util.Set;
import plumbline.design.Qos;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.Dialect;
import plumbline.effective.PortSettings;
import plumbline.finding.Severity;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.yaml.Position;

/** A port that trusts or treats the marking of frames otherwise than designed. */
final class QosDiffers implements PortRule {
  private static final String NONE = "none";

  private static final RuleInfo INFO =
      new RuleInfo(
          "qos-differs",
          Group.PORT,
          Severity.WEAKENS,
          "the trusted marking or the QoS policy of a port is not that of its role",
          RuleInfo.COMMON_PRACTICE,
          Set.of("qos"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<Qos>> wish = port.wish(RoleKeys.QOS);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    Differences differences = new Differences(port);
    Qos wanted = wish.get().value();
    Position at = wish.get().at();
    wanted.trust().ifPresent(trust -> differences.add(trust(port, trust, at)));
    boolean none = wanted.trust().filter(NONE::equals).isPresent();
    for (boolean input : new boolean[] {true, false}) {
      Optional<String> policy = input ? wanted.policyIn() : wanted.policyOut();
      if (none || policy.isPresent()) {
        differences.add(policy(port, policy, input, at));
      }
    }
    differences.tell(outcomes);
  }

  private static Differences.Asked trust(PortCase port, String wanted, Position at) {
    Setting<String> trust =
        withoutLine(port, OnBundle.setting(port, Keys.QOS_TRUST, one -> one.is(wanted)), wanted);
    String found = trust.value().orElse(NONE);
    return asked(
        trust,
        trust.is(wanted),
        wanted.equals(NONE) ? "no trust in the marking" : "trust in the " + marking(wanted),
        isOff(trust)
            ? "a trust line without effect: QoS is off on the switch"
            : found.equals(NONE)
                ? "no line that trusts a marking"
                : "trust in the " + marking(found),
        isOff(trust)
            ? "No port of this switch sorts frames by their marking: when a link is full, voice"
                + " waits in line with everything else."
            : trustConsequence(Words.farEnd(port.port()), wanted, found),
        at);
  }

  private static boolean isOff(Setting<String> trust) {
    return trust.evidence().contains(PortSettings.QOS_OFF);
  }

  /** Only switches of the classic campus kind mistrust what no line tells them to trust. */
  private static Setting<String> withoutLine(PortCase port, Setting<String> trust, String wanted) {
    boolean line = trust.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
    Dialect dialect = port.at().settings().dialect();
    return trust.is(NONE) && !line && !wanted.equals(NONE) && dialect != Dialect.CAMPUS
        ? new Setting.Unknown<>(
            "whether a port trusts without a line differs between releases of the "
                + dialect
                + " dialect",
            trust.evidence())
        : trust;
  }

  private static String marking(String word) {
    return word.equals("cos") ? "CoS of the tag" : word.equals("dscp") ? "DSCP" : word;
  }

  private static String trustConsequence(String behind, String wanted, String found) {
    if (wanted.equals(NONE)) {
      return Words.capital(behind)
          + " can mark any frame as urgent: when a link is full, it goes before voice.";
    }
    if (found.equals(NONE)) {
      return "Where QoS is on, frames from "
          + behind
          + " lose their marking: when a link is full, voice waits in line with everything else.";
    }
    return found.equals("cos")
        ? "Untagged frames from " + behind + " have no CoS and travel without priority."
        : "Priority follows the DSCP that "
            + behind
            + " writes into its packets and not the CoS of its tags.";
  }

  private static Differences.Asked policy(
      PortCase port, Optional<String> wanted, boolean input, Position at) {
    Key<String> key = input ? Keys.POLICY_IN : Keys.POLICY_OUT;
    Setting<String> policy = OnBundle.setting(port, key, one -> one.value().equals(wanted));
    String frames = input ? " for received frames" : " for sent frames";
    String direction = (input ? "from " : "to ") + Words.farEnd(port.port());
    return asked(
        policy,
        policy.value().equals(wanted),
        words(wanted) + frames,
        words(policy.value()) + frames,
        wanted.isPresent()
            ? "Frames "
                + direction
                + " do not get the queues, limits and marking of policy "
                + wanted.get()
                + "."
            : "Frames "
                + direction
                + " are marked, limited or queued by a policy that the design does not want.",
        at);
  }

  private static String words(Optional<String> policy) {
    return policy.map(name -> "policy " + name).orElse("no policy");
  }

  private static Differences.Asked asked(
      Setting<String> setting,
      boolean fits,
      String designed,
      String found,
      String so,
      Position at) {
    return new Differences.Asked(setting, fits, designed, found, so, Optional.empty(), at);
  }
}
