package plumbline.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.design.DesignSwitch;
import plumbline.design.Wanted;
import plumbline.fabric.Fabric;
import plumbline.fabric.MstNetwork;
import plumbline.fabric.MstRegion.Identity;
import plumbline.finding.Severity;

/**
 * A switch whose MST region is not that of the switches that it is joined to, whether the design
 * names a region or not. What most of them share is taken as the region that is meant; of several
 * the one that comes first in the design. Regions that the design itself keeps apart are no
 * difference.
 */
final class MstRegionDiffers implements FabricRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "mst-region-differs",
          Group.FABRIC,
          Severity.WEAKENS,
          "a switch is in another MST region than the switches that it is joined to",
          "IEEE 802.1Q, MST Configuration Identifier (name, revision, digest of the table)");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(FabricCase network, Outcomes outcomes) {
    Fabric fabric = network.sides().repaired();
    MstNetwork mst = MstNetwork.of(fabric);
    for (List<String> part : mst.parts()) {
      Map<Optional<DesignSwitch.Mst>, List<String>> meant = new HashMap<>();
      for (String name : part) {
        SwitchCase device = network.at(name).orElseThrow();
        List<String> alike =
            meant.computeIfAbsent(wanted(device), any -> alike(network, part, any));
        outcomes.add(new RegionComparison(network, mst, part, device, alike).outcome());
      }
    }
  }

  private static Optional<DesignSwitch.Mst> wanted(SwitchCase device) {
    return device.designed().tree().mst().map(Wanted::value);
  }

  /** The switches that share what most of a part do, as far as the design lets them be alike. */
  private static List<String> alike(
      FabricCase network, List<String> part, Optional<DesignSwitch.Mst> wanted) {
    Map<Identity, List<String>> regions = new LinkedHashMap<>();
    for (String name : part) {
      Optional<DesignSwitch.Mst> theirs = wanted(network.at(name).orElseThrow());
      if (wanted.isEmpty() || theirs.isEmpty() || wanted.equals(theirs)) {
        network
            .sides()
            .repaired()
            .region(name)
            .identity()
            .ifPresent(known -> regions.computeIfAbsent(known, any -> new ArrayList<>()).add(name));
      }
    }
    return regions.values().stream()
        .reduce((one, other) -> other.size() > one.size() ? other : one)
        .orElse(List.of());
  }
}
