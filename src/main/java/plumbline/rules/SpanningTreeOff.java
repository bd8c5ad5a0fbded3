package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.effective.SpanningTree;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Carried;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** VLANs that cross covered ports and that no spanning tree protects. */
final class SpanningTreeOff implements SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "spanning-tree-off",
          Group.SWITCH,
          Severity.WEAKENS,
          "spanning tree is off for a VLAN that a covered port carries",
          "common practice; IEEE 802.1Q (a tree keeps a bridged network free of loops)");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    Crossing crossing = Crossing.of(device);
    if (crossing.perhaps().isEmpty()) {
      return;
    }
    SpanningTree tree = device.settings().tree();
    VlanSet off = having(tree, crossing.certain(), Truth.YES);
    VlanSet openTree = having(tree, crossing.perhaps(), Truth.UNKNOWN);
    VlanSet perhapsCarried = having(tree, crossing.perhaps().minus(crossing.certain()), Truth.YES);
    if (!off.isEmpty()) {
      outcomes.add(candidate(device, off));
    } else if (!openTree.isEmpty()) {
      Setting<?> open = tree.mode().isDecided() ? tree.off() : tree.mode();
      outcomes.add(
          undecided(
              device,
              device.cause(open),
              open.reason().orElse("the text does not tell"),
              open.evidence()));
    } else if (!perhapsCarried.isEmpty()) {
      outcomes.add(
          undecided(
              device,
              cause(device),
              "it is off for "
                  + Words.vlans(device.design(), perhapsCarried)
                  + ", and the text leaves open whether a covered port carries "
                  + Words.them(perhapsCarried.size()),
              evidence(tree)));
    } else {
      outcomes.conforms(device.subject());
    }
  }

  private static VlanSet having(SpanningTree tree, VlanSet vlans, Truth off) {
    return VlanSet.of(
        vlans.ids().mapToObj(VlanId::new).filter(vlan -> tree.isOff(vlan) == off).toList());
  }

  private static Candidate candidate(SwitchCase device, VlanSet off) {
    SpanningTree tree = device.settings().tree();
    boolean all = tree.mode().is(TreeMode.Mode.NONE);
    String vlans = Words.vlans(device.design(), off);
    return Candidate.of(
            device.subject(),
            "spanning tree on for every VLAN that a covered port carries",
            all ? "spanning tree off for every VLAN" : "spanning tree off for " + vlans,
            "A loop in "
                + vlans
                + " is not broken here: one wrong cable floods "
                + Words.them(off.size())
                + " through every switch that carries "
                + Words.them(off.size())
                + ", until it is pulled.",
            device.proofs(evidence(tree)),
            Optional.of(device.designed().at()))
        .about(off);
  }

  private static List<Evidence> evidence(SpanningTree tree) {
    return tree.mode().is(TreeMode.Mode.NONE) ? tree.mode().evidence() : tree.off().evidence();
  }

  private static Undecided undecided(
      SwitchCase device, Undecided.Cause cause, String why, List<Evidence> evidence) {
    return Undecided.of(
        device.subject(),
        cause,
        why,
        "spanning tree on for every VLAN that a covered port carries",
        evidence.isEmpty() ? device.absence("no line about it") : device.proofs(evidence),
        Optional.of(device.designed().at()));
  }

  private static Undecided.Cause cause(SwitchCase device) {
    return device.settings().vlans().known() ? device.listCause() : Undecided.Cause.VLAN_DATABASE;
  }

  /**
   * What crosses the covered ports of a switch.
   *
   * @param certain for certain
   * @param perhaps for certain or perhaps
   */
  private record Crossing(VlanSet certain, VlanSet perhaps) {
    static Crossing of(SwitchCase device) {
      VlanSet certain = VlanSet.NONE;
      VlanSet perhaps = VlanSet.NONE;
      List<Setting<Carried>> carried = new ArrayList<>();
      device.ports().stream()
          .filter(port -> port.isSwitching() && port.settings().isPresent())
          .forEach(port -> carried.add(port.get(Keys.CARRIED)));
      for (Setting<Carried> one : carried) {
        certain = certain.plus(one.value().map(Carried::certain).orElse(VlanSet.NONE));
        VlanSet open = one.isDecided() ? VlanSet.NONE : VlanSet.ALL;
        perhaps = perhaps.plus(one.value().map(Carried::possible).orElse(open));
      }
      return new Crossing(certain.minus(VlanSet.RESERVED), perhaps.minus(VlanSet.RESERVED));
    }
  }
}
