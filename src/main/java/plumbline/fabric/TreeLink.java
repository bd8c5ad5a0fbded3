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
    private static TreeEnd of(LinkEnd end, FabricLink link) {
      return new TreeEnd(end.port().switchName(), portId(end), CostRange.of(end, link));
    }

    private static Optional<PortId> portId(LinkEnd end) {
      Optional<Setting<Integer>> priority =
          end.settings().map(port -> port.get(Keys.STP_PORT_PRIORITY)).filter(Setting::isDecided);
      return priority.map(
          known -> new PortId(known.value().orElse(PortId.DEFAULT_PRIORITY), number(end)));
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

  static TreeLink of(int index, FabricLink link) {
    return new TreeLink(index, TreeEnd.of(link.first(), link), TreeEnd.of(link.second(), link));
  }

  /** Whether priorities and costs of both ends are known well enough to try every reading. */
  boolean isBounded() {
    return first.isBounded() && second.isBounded();
  }
}
