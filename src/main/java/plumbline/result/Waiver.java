package plumbline.result;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Severity;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * An accepted difference, as reports show it.
 *
 * @param at where the file of waivers says so
 * @param what what it is for, in words: rule, switch, port, subject
 * @param vlans the VLANs that it names; none where it names none
 * @param severity the severity at which it was accepted: it covers nothing worse
 * @param why the reason
 * @param acceptedBy who accepted it
 * @param ticket the change record, where there is one
 * @param until the last day on which it holds, UTC
 * @param renewed the last days that it had before, oldest first
 */
public record Waiver(
    Position at,
    String what,
    VlanSet vlans,
    Severity severity,
    String why,
    String acceptedBy,
    Optional<String> ticket,
    LocalDate until,
    List<LocalDate> renewed) {
  /** Copies the list. */
  public Waiver {
    renewed = List.copyOf(renewed);
  }
}
