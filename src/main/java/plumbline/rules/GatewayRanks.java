package plumbline.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.effective.Gateway.Group;
import plumbline.finding.Severity;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.PortCommand.Redundancy;

/**
 * Which of two gateways is active, by priority, and whether it is the designed one. Of equal
 * priorities the higher address wins (RFC 5798, section 6.4.2; of the proprietary protocols common
 * practice, no source).
 */
final class GatewayRanks {
  private final GatewaySide first;
  private final GatewaySide second;
  private final Optional<GatewaySide> active;

  /**
   * Two gateways.
   *
   * @param first the first in design order
   * @param active the one that the design makes active, if it is one of them
   */
  GatewayRanks(GatewaySide first, GatewaySide second, Optional<GatewaySide> active) {
    this.first = first;
    this.second = second;
    this.active = active;
  }

  /**
   * Two groups that hear each other.
   *
   * @param one the first gateway's
   * @param other the second's
   */
  private record Twins(Group one, Group other) {}

  private List<Twins> twins() {
    List<Twins> all = new ArrayList<>();
    for (Group one : first.gateway().groups()) {
      second
          .twin(one)
          .filter(other -> one.kind() != Redundancy.Kind.ANYCAST)
          .filter(other -> one.version().value().equals(other.version().value()))
          .ifPresent(other -> all.add(new Twins(one, other)));
    }
    return all;
  }

  /** What the priorities leave to chance, or turn the wrong way round. */
  List<PairGap> gaps() {
    List<PairGap> gaps = new ArrayList<>();
    List<Twins> all = twins();
    // groups that share the load between the two may each have another active gateway
    boolean spread = all.stream().anyMatch(twins -> compare(twins).filter(this::suits).isPresent());
    for (Twins twins : all) {
      Optional<Integer> order = compare(twins);
      if (order.isPresent() && order.get() == 0) {
        gaps.add(equal(twins));
      } else if (order.isPresent() && suits(order.get())) {
        reboot(twins).ifPresent(gaps::add);
      } else if (order.isPresent() && active.isPresent() && !spread) {
        gaps.add(turned(twins));
      }
    }
    return gaps;
  }

  /** Positive where the first has the higher priority. */
  private Optional<Integer> compare(Twins twins) {
    Optional<Integer> one = first.priority(twins.one()).value();
    Optional<Integer> other = second.priority(twins.other()).value();
    return one.flatMap(here -> other.map(there -> Integer.compare(here, there)));
  }

  /** Whether the one with the higher priority is the designed one. */
  private boolean suits(int order) {
    return order != 0 && active.filter((order > 0 ? first : second)::equals).isPresent();
  }

  private PairGap equal(Twins twins) {
    Optional<GatewaySide> higher = higher();
    boolean wrong = active.isPresent() && higher.isPresent() && !higher.equals(active);
    String by =
        higher
            .map(side -> "the higher address, " + highest(side).host() + " of " + side.name())
            .orElse("the higher address");
    String so =
        wrong
            ? "The active one is the one with " + by + ", and not " + active.get().name() + "."
            : "Which one is active is left to " + by + ", or to which came up first.";
    return gap(twins, "", so, wrong ? Severity.WEAKENS : Severity.UNTIDY);
  }

  private Optional<GatewaySide> higher() {
    if (first.addresses().isEmpty() || second.addresses().isEmpty()) {
      return Optional.empty();
    }
    int order = Long.compare(highest(first).number(), highest(second).number());
    return order == 0 ? Optional.empty() : Optional.of(order > 0 ? first : second);
  }

  private static Subnet highest(GatewaySide side) {
    return side.addresses().stream().max(Comparator.comparingLong(Subnet::number)).orElseThrow();
  }

  private PairGap turned(Twins twins) {
    GatewaySide wanted = active.orElseThrow();
    GatewaySide found = wanted.equals(first) ? second : first;
    return gap(
        twins,
        "",
        found.name()
            + " has the higher priority and is active instead of "
            + wanted.name()
            + ": what hosts in "
            + wanted.served().vlan()
            + " send takes another way than designed.",
        Severity.WEAKENS);
  }

  /** The designed one wins by priority; after a reboot only if it takes over again. */
  private Optional<PairGap> reboot(Twins twins) {
    GatewaySide wanted = active.orElseThrow();
    boolean leads = wanted.equals(first);
    Setting<Boolean> preempt = wanted.preempt(leads ? twins.one() : twins.other());
    return preempt.is(false)
        ? Optional.of(
            gap(
                twins,
                " without preemption",
                "After "
                    + wanted.name()
                    + " was down, it does not take over again: "
                    + (leads ? second : first).name()
                    + " stays active until it fails.",
                Severity.WEAKENS))
        : Optional.empty();
  }

  private PairGap gap(Twins twins, String more, String so, Severity severity) {
    boolean leads = active.filter(first::equals).isPresent();
    boolean follows = active.filter(second::equals).isPresent();
    boolean departs = severity != Severity.UNTIDY;
    return new PairGap(
        departs && leads
            ? PairGap.End.FIRST
            : departs && follows ? PairGap.End.SECOND : PairGap.End.NEITHER,
        words(first, twins.one()) + (leads ? more : ""),
        words(second, twins.other()) + (follows ? more : ""),
        so + tracked(twins),
        evidence(first, twins.one(), leads && !more.isEmpty()),
        evidence(second, twins.other(), follows && !more.isEmpty()),
        severity);
  }

  private static String words(GatewaySide side, Group group) {
    return "priority " + side.priority(group).value().orElseThrow();
  }

  private static List<Evidence> evidence(GatewaySide side, Group group, boolean preempt) {
    return Stream.concat(
            side.priority(group).evidence().stream(),
            preempt ? side.preempt(group).evidence().stream() : Stream.empty())
        .toList();
  }

  /** A config tells no states of tracked objects. */
  private String tracked(Twins twins) {
    List<String> all =
        Stream.concat(
                Stream.of(first.name()).filter(any -> twins.one().tracks()),
                Stream.of(second.name()).filter(any -> twins.other().tracks()))
            .toList();
    return all.isEmpty()
        ? ""
        : " A tracked object changes the priority of "
            + Words.list(all)
            + " while it is down; whether it is cannot be told from a config.";
  }
}
