package plumbline.waiver;

import java.time.LocalDate;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.result.Waiver;
import plumbline.vlan.VlanSet;

/**
 * One waiver of a file.
 *
 * @param what what it is for
 * @param told what reports say of it
 */
record WaiverEntry(Selector what, Waiver told) {
  /** Whether it is for a finding, whatever VLANs, severity and day. */
  boolean isFor(Finding finding) {
    return what.fits(
        finding.rule(),
        finding.switchName(),
        finding.place().flatMap(Place::port).orElse(""),
        finding.portOrder(),
        finding.subject());
  }

  /** Whether it names what the finding is about: some of its VLANs, or none where it has none. */
  boolean names(VlanSet vlans) {
    return vlans.isEmpty() ? told.vlans().isEmpty() : told.vlans().intersects(vlans);
  }

  /** Whether its last day is over. */
  boolean isExpired(LocalDate today) {
    return today.isAfter(told.until());
  }

  /** Whether it was accepted at the severity that the finding has, or at a worse one. */
  boolean allows(Finding finding) {
    return told.severity().reaches(finding.severity());
  }
}
