package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.SwitchCommand.TreeMode.Mode;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * A switch whose spanning-tree protocol, path costs or MST region are not those of the design. Who
 * is root, and whether neighbours agree, is not asked here: that takes more than one switch.
 */
final class SpanningTreeModeDiffers implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "spanning-tree-mode-differs",
          Group.SWITCH,
          Severity.WEAKENS,
          "spanning-tree mode, path costs or MST region differ from the design",
          "IEEE 802.1Q, MST Configuration Identifier; layer-2 guide, rapid spanning tree; common practice",
          Set.of(
              "switches.spanning-tree.mode",
              "switches.spanning-tree.path-cost",
              "switches.spanning-tree.mst"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    DesignSwitch.Tree wanted = device.designed().tree();
    boolean none = device.settings().tree().mode().is(Mode.NONE);
    wanted.mode().ifPresent(wish -> mode(device, wish, outcomes));
    wanted.pathCost().filter(wish -> !none).ifPresent(wish -> costs(device, wish, outcomes));
    wanted.mst().ifPresent(wish -> region(device, wish, outcomes));
  }

  private static Subject subject(SwitchCase device, String words) {
    Subject whole = device.subject();
    return new Subject(whole.place(), whole.port(), words);
  }

  private static List<Proof> proofs(SwitchCase device, List<Evidence> evidence) {
    if (evidence.isEmpty()) {
      return device.absence("no line about it");
    }
    List<Evidence> all = new ArrayList<>(evidence);
    if (evidence.stream().noneMatch(Evidence.Line.class::isInstance)) {
      device.settings().hostname().evidence().stream()
          .filter(Evidence.Line.class::isInstance)
          .forEach(all::add);
    }
    return device.proofs(all);
  }

  private static Undecided open(
      SwitchCase device, String words, Setting<?> setting, String designed, Position at) {
    return Undecided.of(
        subject(device, words),
        device.cause(setting),
        setting.reason().orElse("the text does not tell"),
        designed,
        proofs(device, setting.evidence()),
        Optional.of(at));
  }

  private static void mode(SwitchCase device, Wanted<String> wish, Outcomes outcomes) {
    Setting<Mode> mode = device.settings().tree().mode();
    String designed = "spanning-tree mode " + wish.value();
    if (mode.value().isEmpty()) {
      outcomes.add(open(device, "mode", mode, designed, wish.at()));
    } else if (mode.value().get().toString().equals(wish.value())) {
      outcomes.conforms(subject(device, "mode"));
    } else {
      outcomes.add(
          Candidate.of(
              subject(device, "mode"),
              designed,
              "spanning-tree mode " + mode.value().get(),
              modeConsequence(wish.value(), mode.value().get()),
              proofs(device, mode.evidence()),
              Optional.of(wish.at())));
    }
  }

  /** Timers by default: twice a forward delay of 15 s, up to 20 s of max age (RFC 4188). */
  private static String modeConsequence(String wanted, Mode found) {
    if (found == Mode.NONE) {
      return "Nothing here takes part in the spanning tree that the design plans.";
    }
    boolean slow = found == Mode.PVST || found == Mode.STP;
    boolean perVlan = found == Mode.PVST || found == Mode.RAPID_PVST;
    String delay =
        slow && !wanted.equals("pvst")
            ? "After a failure the port that takes over waits 30 to 50 seconds before it forwards."
            : "";
    String trees =
        perVlan == wanted.equals("mst")
            ? "What the design plans for each "
                + (perVlan ? "instance" : "VLAN")
                + ", roots and blocked links, does not hold here: this switch has "
                + (perVlan
                    ? "one tree per VLAN"
                    : found == Mode.MST ? "one tree per instance" : "one tree for all VLANs")
                + "."
            : "";
    String both = (trees + " " + delay).strip();
    return both.isEmpty()
        ? "Which port takes over after a failure, and how fast, is not what the other switches and"
            + " the design count on."
        : both;
  }

  private static void costs(SwitchCase device, Wanted<String> wish, Outcomes outcomes) {
    SpanningTree tree = device.settings().tree();
    Setting<Boolean> found = tree.longCosts();
    boolean wanted = wish.value().equals("long");
    String designed = "path costs by the " + wish.value() + " method";
    if (found.value().isEmpty()) {
      outcomes.add(open(device, "path-cost", found, designed, wish.at()));
    } else if (found.is(wanted)) {
      outcomes.conforms(subject(device, "path-cost"));
    } else if (!followsWrongMode(device, found)) {
      outcomes.add(
          Candidate.of(
              subject(device, "path-cost"),
              designed,
              "path costs by the " + (wanted ? "short" : "long") + " method",
              "This switch adds "
                  + (wanted
                      ? "4 for a link of 1 Gb/s where the design counts 20000"
                      : "20000 for a link of 1 Gb/s where the design counts 4")
                  + ": beside switches that count as designed, paths over it look far too "
                  + (wanted ? "cheap" : "dear")
                  + ", and other links block than planned.",
              proofs(device, found.evidence()),
              Optional.of(wish.at())));
    }
  }

  /** A method that only the mode brings changes with the mode. */
  private static boolean followsWrongMode(SwitchCase device, Setting<Boolean> costs) {
    Setting<Mode> mode = device.settings().tree().mode();
    boolean wrong =
        device
            .designed()
            .tree()
            .mode()
            .filter(
                wish -> mode.value().filter(is -> !is.toString().equals(wish.value())).isPresent())
            .isPresent();
    return wrong && !mode.evidence().isEmpty() && costs.evidence().containsAll(mode.evidence());
  }

  private static void region(SwitchCase device, Wanted<DesignSwitch.Mst> wish, Outcomes outcomes) {
    SpanningTree tree = device.settings().tree();
    // outside multiple spanning tree a region has no effect: the mode is what is wrong, or open
    if (!tree.mode().is(Mode.MST)) {
      return;
    }
    DesignSwitch.Mst wanted = wish.value();
    SpanningTree.Region region = tree.region();
    List<String> designed = new ArrayList<>();
    List<String> found = new ArrayList<>();
    List<Evidence> evidence = new ArrayList<>();
    List<Setting<?>> open = new ArrayList<>();
    if (!region.name().isDecided()) {
      open.add(region.name());
    } else if (!region.name().is(wanted.name())) {
      designed.add("region " + wanted.name());
      found.add(region.name().value().map(name -> "region " + name).orElse("no region name"));
      evidence.addAll(region.name().evidence());
    }
    if (region.revision().value().isEmpty()) {
      open.add(region.revision());
    } else if (!region.revision().is(wanted.revision())) {
      designed.add("revision " + wanted.revision());
      found.add("revision " + region.revision().value().get());
      evidence.addAll(region.revision().evidence());
    }
    VlanSet moved = VlanSet.NONE;
    for (DesignVlan vlan : device.design().vlans().values()) {
      int instance = instanceOf(wanted, vlan);
      Setting<Integer> is = region.instanceOf(vlan.id());
      if (is.value().isEmpty()) {
        open.add(is);
      } else if (is.value().get() != instance) {
        designed.add(vlan + " in instance " + instance);
        found.add(vlan + " in instance " + is.value().get());
        moved = moved.plus(VlanSet.of(vlan.id().number()));
        evidence.addAll(region.lines());
      }
    }
    if (!found.isEmpty()) {
      outcomes.add(
          Candidate.of(
                  subject(device, "region"),
                  Words.list(designed),
                  Words.list(found),
                  "A switch whose region differs in any of name, revision or table is a region of"
                      + " its own: towards the others all its VLANs follow one common tree, and links"
                      + " planned for other instances block.",
                  proofs(device, evidence),
                  Optional.of(wish.at()))
              .about(moved));
    } else if (!open.isEmpty()) {
      outcomes.add(open(device, "region", open.get(0), "region " + wanted.name(), wish.at()));
    } else {
      outcomes.conforms(subject(device, "region"));
    }
  }

  /** Instance 0 holds what the design puts into no other. */
  private static int instanceOf(DesignSwitch.Mst region, DesignVlan vlan) {
    return region.instances().entrySet().stream()
        .filter(entry -> entry.getValue().contains(vlan))
        .map(java.util.Map.Entry::getKey)
        .findFirst()
        .orElse(0);
  }
}
