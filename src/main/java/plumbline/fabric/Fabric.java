package plumbline.fabric;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * The switches of a design, joined by its links as the effective settings of both ends let them. A
 * link that leaves the design joins nothing.
 */
public final class Fabric {
  private final Design design;
  private final Map<String, SwitchSettings> settings;
  private final Chassis chassis;
  private final List<FabricLink> links;
  private final Map<VlanId, VlanGraph> graphs = new TreeMap<>();

  private Fabric(Design design, Map<String, SwitchSettings> settings) {
    this.design = design;
    this.settings = Map.copyOf(settings);
    this.chassis = Chassis.of(design);
    Set<DesignPort> shared = shared(design);
    List<FabricLink> joined = new ArrayList<>();
    design.links().stream()
        .filter(link -> link.second().isPresent())
        .forEach(
            link ->
                joined.add(
                    FabricLink.of(
                        link,
                        settings(link.first().switchName()),
                        settings(link.second().get().switchName()),
                        shared)));
    this.links = List.copyOf(joined);
  }

  /** The ports that two links end on: bundles that end on both switches of a pair. */
  private static Set<DesignPort> shared(Design design) {
    Set<DesignPort> once = new HashSet<>();
    return design.links().stream()
        .flatMap(link -> Stream.concat(Stream.of(link.first()), link.second().stream()))
        .filter(port -> !once.add(port))
        .collect(Collectors.toUnmodifiableSet());
  }

  /**
   * Joins switches.
   *
   * @param settings what was read, by the switch's name in the design
   */
  public static Fabric of(Design design, Map<String, SwitchSettings> settings) {
    return new Fabric(design, settings);
  }

  /** The design. */
  public Design design() {
    return design;
  }

  /** The settings of a switch, if its config was read. */
  public Optional<SwitchSettings> settings(String switchName) {
    return Optional.ofNullable(settings.get(switchName));
  }

  /** The links between switches of the design, in its order. */
  public List<FabricLink> links() {
    return links;
  }

  /** Where frames of a VLAN go between switches. */
  public VlanGraph graph(VlanId vlan) {
    return graphs.computeIfAbsent(vlan, one -> new VlanGraph(chassis, links, one));
  }

  /** The parts of a spanning tree while something fails, in design order. */
  public List<TreePart> tree(TreeScope scope, Failure failure) {
    return TreeSurvey.of(this, scope, failure);
  }

  /** Whether a link stays up when a member of a stack takes its cables with it. */
  Truth survivesBox(FabricLink link, Failure.OfSwitch box) {
    int failed = chassis.indexOf(box.name(), box.member());
    int lost = 0;
    for (Cable cable : link.cables()) {
      boolean ends =
          chassis.indexOf(link.first().port().switchName(), cable.first()) == failed
              || chassis.indexOf(link.second().port().switchName(), cable.second()) == failed;
      lost += ends && cable.up() != Truth.NO ? 1 : 0;
    }
    return lost == 0 ? Truth.YES : link.survives(lost);
  }

  /** Every single failure of a switch, stack member, link or cable of a bundle, in design order. */
  public List<Failure> failures() {
    List<Failure> all = new ArrayList<>();
    for (int at = 0; at < chassis.count(); at++) {
      all.add(new Failure.OfSwitch(chassis.box(at).name(), chassis.box(at).member()));
    }
    for (int link = 0; link < links.size(); link++) {
      all.add(new Failure.OfLink(link));
      int cables = links.get(link).cables().size();
      for (int cable = 0; cable < cables && cables > 1; cable++) {
        all.add(new Failure.OfCable(link, cable));
      }
    }
    return all;
  }
}
