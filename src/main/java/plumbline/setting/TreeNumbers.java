package plumbline.setting;

import java.util.ArrayList;
import java.util.List;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * A number of a port that may differ from tree to tree, such as its path cost: the lines about some
 * trees, of which the last that names a tree decides, and what holds in all others.
 *
 * @param lines in the order of the text, only those that have an effect in the spanning-tree mode
 * @param others the number in the trees that no line names
 */
public record TreeNumbers(List<Line> lines, Setting<Long> others) {
  /** Copies the lines. */
  public TreeNumbers {
    lines = List.copyOf(lines);
  }

  /**
   * A line about some trees.
   *
   * @param vlans the VLANs whose trees it names, in the per-VLAN modes
   * @param instances the instances of multiple spanning tree that it names
   * @param number what holds there by it
   */
  public record Line(VlanSet vlans, List<Integer> instances, Setting<Long> number) {
    /** Copies the instances. */
    public Line {
      instances = List.copyOf(instances);
    }
  }

  /** The number in the tree of a VLAN, in the modes with a tree for each VLAN or one for all. */
  public Setting<Long> of(VlanId vlan) {
    return lines.stream()
        .filter(line -> line.vlans().contains(vlan))
        .reduce((before, last) -> last)
        .map(Line::number)
        .orElse(others);
  }

  /** The number in an instance of multiple spanning tree. */
  public Setting<Long> of(int instance) {
    return lines.stream()
        .filter(line -> line.instances().contains(instance))
        .reduce((before, last) -> last)
        .map(Line::number)
        .orElse(others);
  }

  /** All that the numbers rest on, in the order of the text. */
  public List<Evidence> evidence() {
    List<Evidence> all = new ArrayList<>();
    lines.forEach(line -> all.addAll(line.number().evidence()));
    return Evidence.joined(all.stream().distinct().toList(), others.evidence());
  }

  /** The same numbers with further evidence behind that of each. */
  public TreeNumbers because(List<Evidence> further) {
    return new TreeNumbers(
        lines.stream()
            .map(line -> new Line(line.vlans(), line.instances(), line.number().because(further)))
            .toList(),
        others.because(further));
  }
}
