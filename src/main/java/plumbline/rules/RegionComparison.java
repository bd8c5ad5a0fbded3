package plumbline.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.fabric.Fabric;
import plumbline.fabric.MstNetwork;
import plumbline.fabric.MstRegion;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** The MST region of one switch beside those of the switches that it is joined to. */
final class RegionComparison {
  private final FabricCase network;
  private final Fabric fabric;
  private final MstNetwork mst;
  private final List<String> part;
  private final SwitchCase device;
  private final MstRegion own;
  private final List<String> alike;

  RegionComparison(
      FabricCase network,
      MstNetwork mst,
      List<String> part,
      SwitchCase device,
      List<String> alike) {
    this.network = network;
    this.fabric = network.sides().repaired();
    this.mst = mst;
    this.part = part;
    this.device = device;
    this.own = fabric.region(device.designed().name());
    this.alike = alike;
  }

  /** What is to be said of the switch. */
  Outcome outcome() {
    if (alike.isEmpty()) {
      return open(own.whyOpen().orElse("the regions of all switches joined to it are open"));
    }
    if (alike.contains(device.designed().name())) {
      return new Outcome.Conforms(device.subject());
    }
    MstRegion meant = fabric.region(alike.get(0));
    return switch (own.isOneWith(meant)) {
      case YES -> new Outcome.Conforms(device.subject());
      case NO -> differing(meant);
      case UNKNOWN -> open(own.whyOpen().orElse("the region of " + alike.get(0) + " is open"));
    };
  }

  private Undecided open(String why) {
    SpanningTree.Region region = region();
    Setting<?> setting =
        region.name().isDecided() && region.revision().isDecided()
            ? new Setting.Unknown<>(why, region.lines())
            : region.name().isDecided() ? region.revision() : region.name();
    return Undecided.of(
        device.subject(),
        device.cause(setting),
        why,
        "one MST region with " + Words.list(neighbours(part)),
        RootWords.proofs(device, lines(device, Set.of(Part.values()))),
        Optional.of(at()));
  }

  private SpanningTree.Region region() {
    return device.settings().tree().region();
  }

  private plumbline.yaml.Position at() {
    return device.designed().tree().mst().map(Wanted::at).orElse(device.designed().at());
  }

  private List<String> neighbours(List<String> among) {
    String name = device.designed().name();
    return mst.neighbours(name).stream().filter(among::contains).toList();
  }

  private Outcome differing(MstRegion meant) {
    List<String> found = new ArrayList<>();
    List<String> designed = new ArrayList<>();
    Set<Part> parts = new LinkedHashSet<>();
    if (own.hasNameOf(meant) == Truth.NO) {
      found.add(named(own));
      designed.add(named(meant));
      parts.add(Part.NAME);
    }
    if (own.revision().value().filter(is -> !meant.revision().is(is)).isPresent()) {
      found.add("revision " + own.revision().value().get());
      designed.add("revision " + meant.revision().value().orElseThrow());
      parts.add(Part.REVISION);
    }
    Map<VlanId, List<Integer>> moved = moved();
    if (!moved.isEmpty()) {
      found.addAll(instances(moved, 0));
      designed.addAll(instances(moved, 1));
      parts.add(Part.TABLE);
    }
    String beside = neighbours(alike).stream().findFirst().orElse(alike.get(0));
    List<Proof> proofs = new ArrayList<>(RootWords.proofs(device, lines(device, parts)));
    SwitchCase there = network.at(beside).orElseThrow();
    proofs.addAll(RootWords.proofs(there, lines(there, parts)));
    return Candidate.of(
            device.subject(),
            "the region of " + beside + others() + ": " + Words.list(designed),
            Words.list(found),
            consequence(),
            proofs,
            Optional.of(at()))
        .about(VlanSet.of(List.copyOf(moved.keySet())))
        .beside(List.of(Place.ofSwitch(beside)));
  }

  private String others() {
    int others = alike.size() - 1;
    return others == 0
        ? ""
        : " and " + others + (others == 1 ? " other switch" : " other switches");
  }

  private static String named(MstRegion region) {
    return region.name().value().map(name -> "region " + name).orElse("no region name");
  }

  /** Every VLAN whose instance differs, with the one here and the one that is meant. */
  private Map<VlanId, List<Integer>> moved() {
    SpanningTree.Region here = region(device.designed().name());
    SpanningTree.Region there = region(alike.get(0));
    Map<VlanId, List<Integer>> moved = new LinkedHashMap<>();
    if (here.doubt().isPresent() || here.instances().equals(there.instances())) {
      return moved;
    }
    for (VlanId vlan : IntStream.rangeClosed(1, VlanId.MAX).mapToObj(VlanId::new).toList()) {
      List<Integer> both =
          List.of(
              here.instanceOf(vlan).value().orElse(0), there.instanceOf(vlan).value().orElse(0));
      if (!both.get(0).equals(both.get(1))) {
        moved.put(vlan, both);
      }
    }
    return moved;
  }

  private List<String> instances(Map<VlanId, List<Integer>> moved, int side) {
    Map<Integer, List<VlanId>> vlans = new TreeMap<>();
    moved.forEach(
        (vlan, both) -> vlans.computeIfAbsent(both.get(side), any -> new ArrayList<>()).add(vlan));
    return vlans.entrySet().stream()
        .map(
            one ->
                Words.vlans(network.design(), VlanSet.of(one.getValue()))
                    + " in instance "
                    + one.getKey())
        .toList();
  }

  private SpanningTree.Region region(String name) {
    return fabric.settings(name).orElseThrow().tree().region();
  }

  private String consequence() {
    String name = device.designed().name();
    List<String> beside =
        mst.neighbours(name).stream()
            .filter(other -> own.isOneWith(fabric.region(other)) == Truth.NO)
            .toList();
    String borders =
        beside.isEmpty()
            ? name + " is in a region apart: between it and the others"
            : name
                + " is a region apart from "
                + Words.list(beside)
                + ": on the links between them";
    Set<Integer> instances = new LinkedHashSet<>();
    VlanSet planned = VlanSet.NONE;
    SpanningTree.Region there = region(alike.get(0));
    for (Map.Entry<Integer, VlanSet> instance : there.instances().entrySet()) {
      VlanSet known =
          VlanSet.of(
              network.design().vlans().values().stream()
                  .map(vlan -> vlan.id())
                  .filter(vlan -> instance.getValue().contains(vlan))
                  .<VlanId>map(vlan -> vlan)
                  .toList());
      if (!known.isEmpty()) {
        instances.add(instance.getKey());
        planned = planned.plus(known);
      }
    }
    String lost =
        planned.isEmpty()
            ? ""
            : " What is planned for "
                + Words.vlans(network.design(), planned)
                + " ("
                + (instances.size() == 1 ? "instance " : "instances ")
                + instances.stream().map(Object::toString).collect(Collectors.joining(", "))
                + ") does not hold across them: a link that this tree blocks is blocked for all"
                + " of them, and the root of an instance is root in its own region only.";
    return borders + " all VLANs follow one common tree, instance 0." + lost;
  }

  /** What makes these parts of the region. */
  private static List<Evidence> lines(SwitchCase device, Set<Part> parts) {
    SpanningTree.Region region = device.settings().tree().region();
    List<Evidence> lines = new ArrayList<>();
    for (Part part : parts) {
      lines.addAll(
          switch (part) {
            case NAME -> region.name().evidence();
            case REVISION -> region.revision().evidence();
            case TABLE -> region.lines();
          });
    }
    return lines;
  }

  /** What a region is made of. */
  private enum Part {
    NAME,
    REVISION,
    TABLE
  }
}
