package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Undecided;
import plumbline.rules.Outcome.Undecided.Cause;

/**
 * What one line of a port, or the lack of one, leaves open there.
 *
 * @param lead the outcome that is given
 * @param others outcomes that the same leaves open; named in the given one
 */
record Gap(Spoken lead, List<Spoken> others) {
  /** Which rule speaks first of a cause that leaves several open; the rest by id. */
  private static final List<String> FIRST =
      List.of("mode-differs", "negotiation-open", "native-vlan-differs", "tagged-vlan-missing");

  private static final Comparator<Spoken> ORDER =
      Comparator.<Spoken>comparingInt(one -> rank(one.rule().id()))
          .thenComparing(one -> one.rule().id())
          .thenComparing(one -> one.outcome().subject().words());

  /** Copies the list. */
  Gap {
    others = List.copyOf(others);
  }

  /** Puts together what one cause leaves open at one port. */
  static List<Gap> of(List<Spoken> open) {
    Map<Object, List<Gap>> gaps = new LinkedHashMap<>();
    for (Spoken one : open.stream().sorted(ORDER).toList()) {
      List<Gap> here = gaps.computeIfAbsent(portOf(one), any -> new ArrayList<>());
      Optional<Gap> known = here.stream().filter(gap -> gap.explains(one)).findFirst();
      if (known.isPresent()) {
        here.set(here.indexOf(known.get()), known.get().with(one));
      } else {
        here.add(new Gap(one, List.of()));
      }
    }
    return gaps.values().stream().flatMap(List::stream).toList();
  }

  /** The checks that stay open, by the ids of their rules. */
  static String checks(Stream<Spoken> said) {
    return said.map(one -> one.rule().id()).distinct().sorted().collect(Collectors.joining(", "));
  }

  /** All outcomes, the given one first. */
  Stream<Spoken> all() {
    return Stream.concat(Stream.of(lead), others.stream());
  }

  /** Where the gap is. */
  Optional<Place> place() {
    return lead.outcome().subject().place();
  }

  /** The lines that leave it open. */
  List<Proof> proofs() {
    return undecided(lead).proofs();
  }

  private Gap with(Spoken one) {
    return new Gap(lead, Stream.concat(others.stream(), Stream.of(one)).toList());
  }

  private boolean explains(Spoken one) {
    if (lead.outcome().subject().port().isEmpty()) {
      return false;
    }
    Undecided cause = undecided(lead);
    Undecided open = undecided(one);
    boolean same = cause.proofs().equals(open.proofs()) && cause.why().equals(open.why());
    return same || (Judge.MODE_RULES.contains(lead.rule().id()) && open.cause() == Cause.MODE);
  }

  private static Undecided undecided(Spoken one) {
    return (Undecided) one.outcome();
  }

  private static Object portOf(Spoken one) {
    Optional<PortName> port = one.outcome().subject().port();
    return port.isPresent() ? port.get() : one.outcome().subject();
  }

  private static int rank(String rule) {
    int place = FIRST.indexOf(rule);
    return place < 0 ? FIRST.size() : place;
  }
}
