package plumbline.rules;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.statement.SwitchText.Stamp;
import plumbline.statement.SwitchText.Times;

/** Answers what the times in a config tell of its age. */
public final class ConfigAge {
  /** A run said to be on a day is at its beginning; the config may be of that day. */
  static final Duration DAY = Duration.ofDays(1);

  /** Zones whose clock is known: abbreviations of others are used by several. */
  private static final Set<String> UNIVERSAL = Set.of("UTC", "GMT", "Z");

  /** A clock of a zone that is not known is so far ahead of UTC at most, or so far behind. */
  private static final Duration AHEAD = Duration.ofHours(14);

  private static final Duration BEHIND = Duration.ofHours(12);

  private ConfigAge() {}

  /**
   * Whether a config tells if it is older than so many days: it says when it was taken, or it was
   * taken at some time after a change or a save that is younger.
   */
  public static boolean isTold(Times times, Instant at, int days) {
    return times.taken().isPresent()
        || Stream.of(times.changed(), times.saved())
            .flatMap(Optional::stream)
            .anyMatch(stamp -> isYoung(stamp, at, days));
  }

  private static boolean isYoung(Stamp stamp, Instant at, int days) {
    return stamp.time().isPresent()
        && !earliest(stamp).isBefore(at.minus(Duration.ofDays(days)))
        && !latest(stamp).isAfter(at.plus(DAY));
  }

  /** The earliest time that a stamp can mean. */
  static Instant earliest(Stamp stamp) {
    return universal(stamp).minus(isUniversal(stamp) ? Duration.ZERO : AHEAD);
  }

  /** The latest time that a stamp can mean. */
  static Instant latest(Stamp stamp) {
    return universal(stamp).plus(isUniversal(stamp) ? Duration.ZERO : BEHIND);
  }

  private static Instant universal(Stamp stamp) {
    return stamp.time().orElseThrow().toInstant(ZoneOffset.UTC);
  }

  private static boolean isUniversal(Stamp stamp) {
    return UNIVERSAL.contains(stamp.zone());
  }
}
