package plumbline.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.fabric.TreeScope;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * A spanning tree whose root is not the switch that the design plans, now or after the root's
 * failure. A switch that takes the place of planned ones by a line of its own is one finding,
 * however many trees it takes.
 */
final class RootUnplanned implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "root-unplanned",
          Group.FABRIC,
          Severity.WEAKENS,
          "a spanning tree has another root than planned, or will when its root fails",
          "IEEE 802.1Q, bridge identifier and root election; common practice",
          Set.of("switches.spanning-tree.root-of", "switches.spanning-tree.second-for"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    Plans plans = new Plans(network);
    for (DesignVlan vlan : network.design().vlans().values()) {
      for (SwitchCase device : network.switches().values()) {
        plans.ask(device, vlan);
      }
    }
    plans.tell(outcomes);
  }

  /**
   * A plan that another switch upsets.
   *
   * @param planned the planned switch
   * @param vlan the VLAN
   * @param at where the design plans it
   * @param taken by whom
   */
  record Upset(SwitchCase planned, DesignVlan vlan, Position at, RootAnswer.Taken taken) {}

  /** All plans of a design, and what was found about them. */
  private static final class Plans {
    private final FabricCase network;
    private final PlannedTrees trees;
    private final Map<Subject, List<Upset>> upset = new LinkedHashMap<>();
    private final Map<Subject, List<Undecided>> open = new LinkedHashMap<>();
    private final Set<Subject> kept = new LinkedHashSet<>();
    private final Set<Subject> broken = new LinkedHashSet<>();
    private final List<Outcome> apart = new ArrayList<>();

    Plans(FabricCase network) {
      this.network = network;
      this.trees = new PlannedTrees(network.sides().found(), network.sides().repaired());
    }

    void ask(SwitchCase device, DesignVlan vlan) {
      DesignSwitch.Tree plan = device.designed().tree();
      wish(plan.rootOf(), vlan)
          .ifPresent(
              at -> take(device, vlan, at, true, trees.root(device.designed().name(), vlan)));
      wish(plan.secondFor(), vlan)
          .ifPresent(
              at -> take(device, vlan, at, false, trees.second(device.designed().name(), vlan)));
    }

    private static Optional<Position> wish(List<Wanted<DesignVlan>> wishes, DesignVlan vlan) {
      return wishes.stream().filter(wish -> wish.value().equals(vlan)).map(Wanted::at).findFirst();
    }

    private void take(
        SwitchCase device, DesignVlan vlan, Position at, boolean root, RootAnswer answer) {
      Subject subject = subject(device.designed().name(), "planned", root, Optional.empty());
      if (answer instanceof RootAnswer.Kept) {
        kept.add(subject);
      } else if (answer instanceof RootAnswer.Taken taken) {
        broken.add(subject);
        upset
            .computeIfAbsent(place(device, root, taken), any -> new ArrayList<>())
            .add(new Upset(device, vlan, at, taken));
      } else if (answer instanceof RootAnswer.Open gap) {
        open.computeIfAbsent(subject, any -> new ArrayList<>())
            .add(undecided(device, vlan, at, root, gap));
      } else if (answer instanceof RootAnswer.Apart other) {
        broken.add(subject);
        apart.add(apart(device, vlan, at, other));
      }
    }

    private static Subject subject(
        String name, String kind, boolean root, Optional<TreeScope> instance) {
      Subject whole = Subject.ofSwitch(name);
      String of =
          instance
              .filter(scope -> scope.instance().isPresent())
              .map(scope -> " of instance " + scope.instance().getAsInt())
              .orElse("");
      return new Subject(whole.place(), whole.port(), kind + (root ? " root" : " second") + of);
    }

    /**
     * The switch to repair: one that has no business in front and is there by a line of its own,
     * although the planned one has a line too; else the planned one.
     */
    private Subject place(SwitchCase device, boolean root, RootAnswer.Taken taken) {
      String planned = device.designed().name();
      boolean intruder =
          !trees.isPlanned(taken.by(), taken.scope())
              && isLowered(taken.by(), taken.scope())
              && isLowered(planned, taken.scope());
      return intruder
          ? subject(taken.by(), "unplanned", root, Optional.of(taken.scope()))
          : subject(planned, "planned", root, Optional.of(taken.scope()));
    }

    private boolean isLowered(String name, TreeScope scope) {
      Setting<Integer> priority = trees.priority(name, scope).value();
      return priority.value().orElseThrow() < SpanningTree.DEFAULT_PRIORITY
          && priority.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
    }

    private Undecided undecided(
        SwitchCase device, DesignVlan vlan, Position at, boolean root, RootAnswer.Open gap) {
      List<Evidence> lines = new ArrayList<>();
      gap.setting().ifPresent(setting -> lines.addAll(setting.evidence()));
      if (lines.isEmpty()) {
        trees
            .scope(device.designed().name(), vlan.id())
            .flatMap(Setting::value)
            .ifPresent(
                scope ->
                    lines.addAll(
                        trees.priority(device.designed().name(), scope).value().evidence()));
      }
      return Undecided.of(
          subject(device.designed().name(), "planned", root, Optional.empty()),
          gap.setting().map(device::cause).orElse(Undecided.Cause.OWN),
          gap.why(),
          (root ? "the root of " : "second for ") + vlan,
          proofs(device, lines),
          Optional.of(at));
    }

    private Candidate apart(
        SwitchCase device, DesignVlan vlan, Position at, RootAnswer.Apart other) {
      String name = device.designed().name();
      String root = other.others().root().orElseThrow();
      List<Evidence> lines =
          new ArrayList<>(trees.priority(root, other.scope()).value().evidence());
      SwitchCase there = network.at(root).orElseThrow();
      return Candidate.of(
              new Subject(
                  device.subject().place(), Optional.empty(), "planned root of " + vlan.name()),
              name + " the root of " + vlan,
              "no link of " + name + " carries " + vlan + "; its root is " + root,
              "The tree of "
                  + vlan
                  + " that joins "
                  + Words.list(other.others().switches())
                  + " does not reach "
                  + name
                  + ": its paths are laid towards "
                  + root
                  + ".",
              proofs(there, lines),
              Optional.of(at))
          .about(VlanSet.of(vlan.id().number()));
    }

    private static List<Proof> proofs(SwitchCase device, List<Evidence> evidence) {
      return RootWords.proofs(device, evidence);
    }

    void tell(Outcomes outcomes) {
      upset.forEach(
          (subject, all) -> outcomes.add(new RootWords(network, trees, subject, all).candidate()));
      apart.forEach(outcomes::add);
      open.forEach((subject, all) -> outcomes.add(joined(subject, all)));
      kept.stream()
          .filter(subject -> !broken.contains(subject) && !open.containsKey(subject))
          .forEach(outcomes::conforms);
    }

    /** All that one switch is planned for and that is open, told once. */
    private Undecided joined(Subject subject, List<Undecided> all) {
      Undecided first = all.get(0);
      boolean taken = upset.containsKey(subject);
      return Undecided.of(
          taken
              ? new Subject(subject.place(), subject.port(), subject.words() + " of other VLANs")
              : subject,
          first.cause(),
          String.join("; ", all.stream().map(Undecided::why).distinct().limit(3).toList()),
          all.size() == 1
              ? first.designed()
              : first.designed() + " and " + Words.count(all.size() - 1, "more VLAN"),
          all.stream().flatMap(one -> one.proofs().stream()).distinct().toList(),
          first.design());
    }
  }

  /** The VLANs of some upset plans, in the order of the design. */
  static VlanSet vlans(List<Upset> all) {
    return VlanSet.of(all.stream().map(one -> one.vlan().id()).<VlanId>map(id -> id).toList());
  }
}
