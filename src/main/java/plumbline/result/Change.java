package plumbline.result;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.port.PortName;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * One effective setting that a change window changed, or that it was to change and did not. Of a
 * list of VLANs whose changed members are judged unlike each other each part is a change of its
 * own.
 *
 * @param place the switch, or the port of it
 * @param portOrder numeric sort key of the port; empty where the change has none
 * @param subject what is behind the port, in words, where the design says so; else empty
 * @param setting the trade's word, lower case with hyphens
 * @param vlans the VLANs that changed, or that were to change; none for what is about none
 * @param before the value in words; {@link #UNKNOWN} where the text does not tell; empty where
 *     nothing is set
 * @param after the same after the window
 * @param designed what the design says, in words, if it says something
 * @param kind how it stands to the plan, or to the design where no plan was given
 * @param evidenceBefore what the value before rests on
 * @param evidenceAfter what the value after rests on
 * @param design where the design says so
 */
public record Change(
    Place place,
    Optional<PortName> portOrder,
    String subject,
    String setting,
    VlanSet vlans,
    Optional<String> before,
    Optional<String> after,
    Optional<String> designed,
    Kind kind,
    List<Proof> evidenceBefore,
    List<Proof> evidenceAfter,
    Optional<Position> design) {
  /** Stands for a value that the text does not tell. */
  public static final String UNKNOWN = "unknown";

  /** Stands for something that is there. */
  public static final String PRESENT = "present";

  /** Copies the evidence. */
  public Change {
    Objects.requireNonNull(kind);
    evidenceBefore = List.copyOf(evidenceBefore);
    evidenceAfter = List.copyOf(evidenceAfter);
  }

  /** The value before in words, also where nothing is set. */
  public String wordsBefore() {
    return words(before, after);
  }

  /** The value after in words, also where nothing is set. */
  public String wordsAfter() {
    return words(after, before);
  }

  private static String words(Optional<String> value, Optional<String> other) {
    boolean presence = other.filter(PRESENT::equals).isPresent();
    return value.orElse(presence ? "absent" : "not set");
  }

  /** How a change stands to the plan, or to the design; those that ask for action first. */
  public enum Kind {
    /** The designs differ here, and the switch does not do what the new one says. */
    PLANNED_NOT_DONE,
    /** The designs do not differ here. */
    UNPLANNED,
    /** It was as designed and is not any more. */
    AWAY,
    /** The design says nothing here, or allows both values, or neither. */
    BESIDE,
    /** The text of one side does not tell the value. */
    UNDECIDED,
    /** The designs differ here, and the switch does what the new one says. */
    PLANNED_DONE,
    /** It was not as designed and is now. */
    TOWARDS,
    /** It rests on no line of its own: it follows from other changes. */
    FOLLOWS;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
