package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Place;
import plumbline.yaml.Position;

/**
 * Two ports that are held against each other.
 *
 * @param first the first in design order
 * @param second the other
 * @param words what is behind both, where they are not named each for itself
 * @param at where the design joins them
 */
record TwoEnds(PortCase first, PortCase second, Optional<String> words, Position at) {
  /** The end as the place of an outcome. */
  Subject subject(PortCase end) {
    Subject own = end.subject();
    return words.map(both -> new Subject(own.place(), own.port(), both)).orElse(own);
  }

  /** The end that is not this one. */
  PortCase other(PortCase end) {
    return end.equals(first) ? second : first;
  }

  /** The other end as a place beside an outcome. */
  List<Place> beside(PortCase end) {
    return other(end).subject().place().stream().toList();
  }

  /** Both ports, with the members of bundles: wherever the cause of a difference can be told. */
  List<Place> places() {
    List<Place> all = new ArrayList<>();
    for (PortCase end : List.of(first, second)) {
      all.addAll(end.subject().place().stream().toList());
      all.add(
          Place.ofPort(end.port().switchName(), end.at().settings().fullName(end.port().port())));
      end.at().settings().membersOf(end.port().port()).stream()
          .map(member -> Place.ofPort(end.port().switchName(), member.fullName()))
          .forEach(all::add);
      end.members().stream().flatMap(one -> one.subject().place().stream()).forEach(all::add);
    }
    return all.stream().distinct().toList();
  }

  /** Both ports, or none. */
  List<PortCase> both(boolean wanted) {
    return wanted ? List.of(first, second) : List.of();
  }

  /** How both are spoken of. */
  String both() {
    return words.isPresent() ? "on both ports" : "at both ends";
  }

  /** The place of an end as the object of a sentence. */
  static String name(PortCase end) {
    return end.subject().place().map(Place::toString).orElse("");
  }
}
