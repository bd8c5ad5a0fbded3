package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.design.DesignVlan;
import plumbline.fabric.VlanGraph.Point;
import plumbline.promise.Reaching;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.vlan.VlanSet;

/**
 * What everybody in a VLAN must reach, as a question to the network.
 *
 * @param network the network
 * @param vlan the VLAN
 * @param wanted what the design says
 * @param object what is to be reached, as the object of a sentence
 */
record Reached(FabricCase network, DesignVlan vlan, String wanted, String object) {
  /**
   * The answer, if there is one: what hangs on a switch that was not read is said of the run, not
   * of the network.
   *
   * @param designed who reaches it in the repaired network, unread switches as designed
   * @param read the same as far as switches were read
   * @param consequence what it means that it is not reached
   */
  Optional<Outcome> judge(Reaching designed, Optional<Reaching> read, String consequence) {
    Subject subject = Subject.ofNetwork(vlan.name());
    if (!designed.without().isEmpty()) {
      return Optional.of(candidate(subject, designed, consequence));
    }
    if (designed.around()) {
      // the design does not say how frames get there
      return Optional.empty();
    }
    if (read.filter(all -> all.without().isEmpty() && all.open().isEmpty()).isPresent()) {
      return Optional.of(new Outcome.Conforms(subject));
    }
    return network.sides().isWhole()
        ? Optional.of(
            Undecided.of(
                subject,
                Undecided.Cause.OWN,
                "whether "
                    + Words.list(read.stream().flatMap(all -> who(all.open()).stream()).toList())
                    + " reach "
                    + object,
                wanted,
                List.of(),
                Optional.of(vlan.at())))
        : Optional.empty();
  }

  private static List<String> who(List<Reaching.Cut> cuts) {
    return cuts.stream().map(Reaching.Cut::who).toList();
  }

  private Candidate candidate(Subject subject, Reaching reaching, String consequence) {
    List<Point> points =
        reaching.without().stream().flatMap(cut -> cut.points().stream()).distinct().toList();
    Barriers barriers = new Barriers(network, network.designed().side(vlan.id()), points);
    List<String> who = who(reaching.without());
    List<String> found = new ArrayList<>();
    found.add(Words.list(who) + (who.size() == 1 ? " does" : " do") + " not reach " + object);
    barriers.found().ifPresent(found::add);
    return Candidate.of(
            subject,
            wanted,
            String.join("; ", found),
            consequence,
            barriers.proofs(),
            Optional.of(vlan.at()))
        .about(VlanSet.of(vlan.id().number()))
        .beside(barriers.places());
  }
}
