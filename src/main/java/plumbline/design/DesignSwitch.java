package plumbline.design;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import plumbline.yaml.Position;

/**
 * A switch of the design.
 *
 * @param name its name in the design
 * @param hostname the name its config says, {@code name} unless given
 * @param dialect table of defaults, where the design overrides detection
 * @param stack members that can fail on their own; empty for a single chassis
 * @param managementVlan VLAN of its own address
 * @param place where it is mounted
 * @param tree what its spanning tree must look like
 * @param at where it is declared
 */
public record DesignSwitch(
    String name,
    String hostname,
    Optional<Wanted<String>> dialect,
    List<Integer> stack,
    Optional<Wanted<DesignVlan>> managementVlan,
    Optional<RackPlace> place,
    Tree tree,
    Position at) {
  /** Copies the list. */
  public DesignSwitch {
    stack = List.copyOf(stack);
  }

  /**
   * A place in a rack.
   *
   * @param rack its label
   * @param unit lowest rack unit
   */
  public record RackPlace(String rack, int unit) {}

  /**
   * Spanning tree of a switch.
   *
   * @param mode {@code pvst}, {@code rapid-pvst} or {@code mst}
   * @param pathCost {@code short} or {@code long}
   * @param bridgeAddress its own address, lower case with colons: decides ties
   * @param mst the region
   * @param rootOf VLANs whose root it is
   * @param secondFor VLANs whose root it becomes when the root fails
   */
  public record Tree(
      Optional<Wanted<String>> mode,
      Optional<Wanted<String>> pathCost,
      Optional<Wanted<String>> bridgeAddress,
      Optional<Wanted<Mst>> mst,
      List<Wanted<DesignVlan>> rootOf,
      List<Wanted<DesignVlan>> secondFor) {
    /** Copies the lists. */
    public Tree {
      rootOf = List.copyOf(rootOf);
      secondFor = List.copyOf(secondFor);
    }

    /** Nothing asked. */
    public static final Tree NONE =
        new Tree(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            List.of());
  }

  /**
   * An MST region.
   *
   * @param name its name
   * @param revision 0..65535
   * @param instances VLANs by instance
   */
  public record Mst(String name, int revision, SortedMap<Integer, List<DesignVlan>> instances) {
    /** Copies the map. */
    public Mst {
      instances =
          java.util.Collections.unmodifiableSortedMap(
              new java.util.TreeMap<>(Map.copyOf(instances)));
    }
  }
}
