package plumbline.rules;

import java.util.Set;
import plumbline.effective.SpanningTree;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.Truth;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;

/**
 * Says whether an end of a link speaks and hears spanning trees per VLAN. What such a tree sends
 * from a trunk names its VLAN: two trunks with unlike native VLANs notice it, and so does an access
 * port that hears a trunk. An access port sends what a single tree would send (common practice, no
 * source).
 */
final class PerVlanTree {
  private static final Set<TreeMode.Mode> MODES =
      Set.of(TreeMode.Mode.PVST, TreeMode.Mode.RAPID_PVST);

  private PerVlanTree() {}

  /** Whether one runs there for certain. */
  static boolean runs(PortCase end, VlanId vlan) {
    return mayRun(end, vlan)
        && tree(end).mode().isDecided()
        && tree(end).isOff(vlan) == Truth.NO
        && end.get(Keys.BPDU_FILTER).isDecided();
  }

  /** Whether nothing speaks against it. */
  static boolean mayRun(PortCase end, VlanId vlan) {
    boolean perVlan =
        !tree(end).mode().isDecided()
            || tree(end).mode().value().filter(MODES::contains).isPresent();
    return perVlan
        && tree(end).isOff(vlan) != Truth.YES
        && !end.get(Keys.BPDU_FILTER).is(Effect.ON);
  }

  private static SpanningTree tree(PortCase end) {
    return end.at().settings().tree();
  }
}
