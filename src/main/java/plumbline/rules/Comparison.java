package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import plumbline.design.Wanted;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Key;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * Holds settings of two ports against each other. A difference that goes away when each port is put
 * as its own role says is told with what it rests on, so that the findings of those ports can stand
 * for it; one in a setting that neither role names is untidy, and nothing where the text leaves it
 * open.
 */
final class Comparison {
  private final TwoEnds ends;
  private final Outcomes outcomes;
  private boolean asked;
  private boolean told;

  Comparison(TwoEnds ends, Outcomes outcomes) {
    this.ends = ends;
    this.outcomes = outcomes;
  }

  /**
   * A setting of two ports.
   *
   * @param name the setting in words, such as {@code native VLAN}
   * @param keys the settings that it rests on
   * @param found what a port does; absent where the setting has no meaning there
   * @param wish what a port's role says
   * @param words a value in words
   * @param so the consequence of two different values, the first port's first
   * @param about the VLANs that two different values are about
   * @param <T> type of the values
   */
  record Asked<T>(
      String name,
      Set<Key<?>> keys,
      Function<PortCase, Setting<T>> found,
      Function<PortCase, Optional<Wanted<T>>> wish,
      Function<T, String> words,
      BiFunction<T, T, String> so,
      BiFunction<T, T, VlanSet> about) {
    /** A setting that is about no VLAN. */
    static <T> Asked<T> of(
        String name,
        Set<Key<?>> keys,
        Function<PortCase, Setting<T>> found,
        Function<PortCase, Optional<Wanted<T>>> wish,
        Function<T, String> words,
        BiFunction<T, T, String> so) {
      return new Asked<>(name, keys, found, wish, words, so, (one, other) -> VlanSet.NONE);
    }
  }

  /** Holds a setting of the two ends against each other. */
  <T> void ask(Asked<T> what) {
    ask(what, ends.first(), ends.second(), false);
  }

  /**
   * The same of two other ports, such as members of the ends.
   *
   * @param always whether the difference stands at the rule's floor though no role names it
   */
  <T> void ask(Asked<T> what, PortCase first, PortCase second, boolean always) {
    Setting<T> one = what.found().apply(first);
    Setting<T> other = what.found().apply(second);
    Optional<Wanted<T>> wish = what.wish().apply(first);
    Optional<Wanted<T>> otherWish = what.wish().apply(second);
    boolean named = wish.isPresent() || otherWish.isPresent();
    if (!one.isDecided() || !other.isDecided()) {
      if (named || always) {
        undecided(what, one.isDecided() ? second : first, one.isDecided() ? other : one);
      }
      return;
    }
    if (one.value().isEmpty() || other.value().isEmpty()) {
      return;
    }
    asked = true;
    T here = one.value().get();
    T there = other.value().get();
    if (here.equals(there)) {
      return;
    }
    boolean departs = wish.filter(wanted -> !wanted.value().equals(here)).isPresent();
    boolean otherDeparts = otherWish.filter(wanted -> !wanted.value().equals(there)).isPresent();
    boolean second1 = !departs && otherDeparts;
    Optional<Wanted<T>> lead = second1 ? otherWish : wish.or(() -> otherWish);
    Difference difference =
        new Difference(
            second1,
            first,
            second,
            lead.map(wanted -> what.words().apply(wanted.value()) + " " + ends.both())
                .orElse("the same " + what.name() + " " + ends.both()),
            what.words().apply(second1 ? there : here),
            what.words().apply(second1 ? here : there),
            what.so().apply(here, there),
            what.about().apply(here, there),
            lead.map(Wanted::at).orElse(ends.at()),
            one,
            other);
    Candidate candidate = difference.candidate(ends);
    if (!named && !always) {
      candidate = candidate.at(Severity.UNTIDY);
    }
    boolean goes =
        wish.map(Wanted::value).orElse(here).equals(otherWish.map(Wanted::value).orElse(there));
    tell(goes || !named ? candidate.across(across(what.keys(), named)) : candidate);
  }

  /** What can be the cause of a difference in these settings. */
  Across across(Set<Key<?>> keys, boolean named) {
    return new Across(keys, ends.places(), named);
  }

  /** Tells a difference that was found elsewhere. */
  void tell(Candidate candidate) {
    told = true;
    outcomes.add(candidate);
  }

  /** Counts something that was compared elsewhere and is alike. */
  void alike() {
    asked = true;
  }

  private <T> void undecided(Asked<T> what, PortCase end, Setting<T> open) {
    Optional<Wanted<T>> wish = what.wish().apply(end);
    leaveOpen(
        end,
        open,
        wish.map(wanted -> what.words().apply(wanted.value()) + " " + ends.both())
            .orElse("the same " + what.name() + " " + ends.both()),
        wish.map(Wanted::at).orElse(ends.at()));
  }

  /** Tells that the text of one end leaves open whether both are alike. */
  void leaveOpen(PortCase end, Setting<?> open, String designed, Position at) {
    told = true;
    Undecided gap = end.gap(open, designed, at);
    Subject place = end.subject();
    outcomes.add(
        new Undecided(
            ends.words().isPresent() ? ends.subject(end) : place,
            gap.cause(),
            gap.why(),
            gap.designed(),
            gap.proofs(),
            gap.design(),
            gap.needsMode()));
  }

  /** Says that the ends are alike, where something was compared and nothing else was told. */
  void close() {
    if (asked && !told) {
      outcomes.conforms(ends.subject(ends.first()));
    }
  }

  /**
   * A difference between two ports.
   *
   * @param turned whether the second port is the one that departs
   */
  private record Difference(
      boolean turned,
      PortCase first,
      PortCase second,
      String designed,
      String found,
      String beside,
      String so,
      VlanSet vlans,
      Position at,
      Setting<?> one,
      Setting<?> other) {
    Candidate candidate(TwoEnds ends) {
      PortCase near = turned ? second : first;
      PortCase far = turned ? first : second;
      PortCase end = turned ? ends.second() : ends.first();
      return Candidate.of(
              ends.subject(end),
              designed,
              found
                  + (near.equals(end) ? "" : " at " + TwoEnds.name(near))
                  + "; "
                  + beside
                  + " at "
                  + TwoEnds.name(far),
              so,
              proofs(near, turned ? other : one, far, turned ? one : other),
              Optional.of(at))
          .about(vlans)
          .beside(ends.beside(end));
    }
  }

  /** Evidence of both ports, that of the place first. */
  static List<Proof> proofs(PortCase near, Setting<?> here, PortCase far, Setting<?> there) {
    return new ArrayList<>(
        Stream.concat(near.proofs(here).stream(), far.proofs(there).stream()).distinct().toList());
  }

  /** The setting, with a value in place of a known absence. */
  static <T> Setting<T> orElse(Setting<T> setting, T value) {
    return setting.isDecided() && setting.value().isEmpty()
        ? new Setting.Known<>(value, setting.evidence())
        : setting;
  }
}
