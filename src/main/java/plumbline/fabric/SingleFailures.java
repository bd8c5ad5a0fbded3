package plumbline.fabric;

import java.util.ArrayList;
import java.util.List;

/** Lists what can fail alone in a network of switches. */
final class SingleFailures {
  private SingleFailures() {}

  /** Switches and members of stacks, then links with the cables of bundles, in design order. */
  static List<Failure> of(Chassis chassis, List<FabricLink> links) {
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
