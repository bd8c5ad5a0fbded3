package plumbline.design;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.design.DesignSwitch.Mst;
import plumbline.text.Wording;

/**
 * Refuses plans in which a spanning tree would have two roots: one tree for each VLAN, or in an MST
 * region one for each instance (IEEE 802.1Q, multiple spanning tree).
 */
final class RootCheck {
  private final Collection<DesignSwitch> switches;
  private final Problems problems;

  RootCheck(Collection<DesignSwitch> switches, Problems problems) {
    this.switches = switches;
    this.problems = problems;
  }

  /** A plan for one tree. */
  private record Plan(DesignSwitch by, Wanted<DesignVlan> vlan) {}

  /** Reports all trees with two planned roots, or two planned successors of the root. */
  void run() {
    Map<String, Plan> roots = new HashMap<>();
    Map<String, Plan> seconds = new HashMap<>();
    for (DesignSwitch one : switches) {
      one.tree().rootOf().forEach(vlan -> plan(new Plan(one, vlan), roots, "root"));
      one.tree().secondFor().forEach(vlan -> plan(new Plan(one, vlan), seconds, "second"));
    }
    for (DesignSwitch one : switches) {
      for (Wanted<DesignVlan> vlan : one.tree().secondFor()) {
        Plan root = roots.get("VLAN " + Wording.quote(vlan.value().name()));
        if (root != null && root.by().equals(one)) {
          problems.add(
              vlan.at(),
              "switch "
                  + Wording.quote(one.name())
                  + " cannot be second for VLAN "
                  + Wording.quote(vlan.value().name())
                  + ", whose root it is; first at "
                  + root.vlan().at());
        }
      }
    }
  }

  private void plan(Plan plan, Map<String, Plan> plans, String what) {
    String vlan = "VLAN " + Wording.quote(plan.vlan().value().name());
    Plan other = plans.putIfAbsent(vlan, plan);
    if (other != null) {
      report(vlan, plan, other, what);
      return;
    }
    Optional<Mst> region = regionOf(plan.by());
    if (region.isPresent()) {
      String instance = instance(region.get(), plan.vlan().value());
      Plan inInstance = plans.putIfAbsent(instance, plan);
      if (inInstance != null && !inInstance.by().equals(plan.by())) {
        report(instance, plan, inInstance, what);
      }
    }
  }

  private void report(String tree, Plan plan, Plan other, String what) {
    problems.add(
        plan.vlan().at(),
        tree
            + (what.equals("root") ? " has two planned roots, " : " has two planned seconds, ")
            + Wording.quote(other.by().name())
            + " and "
            + Wording.quote(plan.by().name())
            + "; first at "
            + other.vlan().at());
  }

  /** The region of a switch: its own, or the only one of the design where it runs MST without. */
  private Optional<Mst> regionOf(DesignSwitch one) {
    Optional<Mst> own = one.tree().mst().map(Wanted::value);
    boolean runsMst = one.tree().mode().map(mode -> mode.value().equals("mst")).orElse(false);
    if (own.isPresent() || !runsMst) {
      return own;
    }
    List<Mst> regions =
        switches.stream().flatMap(other -> other.tree().mst().stream()).map(Wanted::value).toList();
    Set<String> names = regions.stream().map(Mst::name).collect(Collectors.toSet());
    return names.size() == 1 ? Optional.of(regions.get(0)) : Optional.empty();
  }

  private static String instance(Mst region, DesignVlan vlan) {
    int number =
        region.instances().entrySet().stream()
            .filter(entry -> entry.getValue().contains(vlan))
            .map(Map.Entry::getKey)
            .findFirst()
            .orElse(0);
    return "MST instance " + number + " of region " + Wording.quote(region.name());
  }
}
