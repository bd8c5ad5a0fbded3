package plumbline.fabric;

import java.util.Optional;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/**
 * A link as spanning tree sees it.
 *
 * @param index index of the link in the fabric
 * @param first one end
 * @param second the other end
 */
record TreeLink(int index, TreeEnd first, TreeEnd second) {
  /**
   * One end.
   *
   * @param switchName the switch
   * @param id the port's identifier; empty where its priority is open
   * @param cost its path cost; empty where the text does not bound it
   */
  record TreeEnd(String switchName, Optional<PortId> id, Optional<CostRange> cost) {
    private static TreeEnd of(LinkEnd end, FabricLink link, TreeScope scope) {
      return new TreeEnd(
          end.port().switchName(), portId(end, scope), CostRange.of(end, link, scope));
    }

    private static Optional<PortId> portId(LinkEnd end, TreeScope scope) {
      Optional<Setting<Long>> priority =
          end.settings()
              .map(port -> port.inTree(Keys.PORT_PRIORITY_BY_TREE, scope::number))
              .filter(Setting::isDecided);
      return priority.map(
          known ->
              new PortId(
                  known.value().map(Math::toIntExact).orElse(PortId.DEFAULT_PRIORITY),
                  number(end)));
    }

    /** Common practice, no source: ports are numbered in the order of their names. */
    private static int number(LinkEnd end) {
      SwitchSettings device = end.device().orElseThrow();
      return 1 + device.ports().headMap(end.port().port()).size();
    }

    boolean isBounded() {
      return id.isPresent() && cost.isPresent();
    }
  }

  /** A link in one tree. */
  static TreeLink of(int index, FabricLink link, TreeScope scope) {
    return new TreeLink(
        index, TreeEnd.of(link.first(), link, scope), TreeEnd.of(link.second(), link, scope));
  }

  /** Whether priorities and costs of both ends are known well enough to try every reading. */
  boolean isBounded() {
    return first.isBounded() && second.isBounded();
  }
}
