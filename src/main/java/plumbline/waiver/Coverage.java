package plumbline.waiver;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.finding.Finding;
import plumbline.result.Accepted.Acceptance;
import plumbline.result.Waiver;
import plumbline.vlan.VlanSet;

/**
 * What the waivers of a file cover of the findings of a run. A waiver covers the VLANs that it
 * names, of a finding that is no worse than it was when it was accepted, up to its last day; what
 * is left of the finding stays open.
 */
final class Coverage {
  private final List<WaiverEntry> entries;
  private final LocalDate today;
  private final Map<String, Acceptance> acceptances = new LinkedHashMap<>();

  /** The findings that each waiver covers, or would cover if it had not ended. */
  private final Map<WaiverEntry, List<Finding>> fits = new HashMap<>();

  /** The waivers that are for a finding, whether they cover it or not. */
  private final Set<WaiverEntry> seen = new HashSet<>();

  /** A finding that a waiver is for, about other VLANs than it names. */
  private final Map<WaiverEntry, Finding> besides = new HashMap<>();

  Coverage(List<WaiverEntry> entries, LocalDate today) {
    this.entries = entries;
    this.today = today;
  }

  /** Whether waivers cover all of a finding. */
  boolean isWhole(Finding finding) {
    List<WaiverEntry> meant = new ArrayList<>();
    for (WaiverEntry entry : entries) {
      if (entry.isFor(finding)) {
        seen.add(entry);
        if (entry.names(finding.vlans())) {
          meant.add(entry);
        } else {
          besides.putIfAbsent(entry, finding);
        }
      }
    }
    if (meant.isEmpty()) {
      return false;
    }
    List<Waiver> by = new ArrayList<>();
    VlanSet covered = VlanSet.NONE;
    Optional<Waiver> tooLow = Optional.empty();
    for (WaiverEntry entry : meant) {
      if (entry.isExpired(today)) {
        continue;
      }
      fits.computeIfAbsent(entry, any -> new ArrayList<>()).add(finding);
      if (!entry.allows(finding)) {
        tooLow = tooLow.or(() -> Optional.of(entry.told()));
      } else if (finding.vlans().isEmpty() ? by.isEmpty() : adds(entry, finding, covered)) {
        by.add(entry.told());
        covered = covered.plus(entry.told().vlans().and(finding.vlans()));
      }
    }
    VlanSet rest = finding.vlans().minus(covered);
    boolean whole = !by.isEmpty() && rest.isEmpty();
    if (!whole) {
      for (WaiverEntry entry : meant) {
        if (entry.isExpired(today) && entry.names(rest)) {
          fits.computeIfAbsent(entry, any -> new ArrayList<>()).add(finding);
        }
      }
    }
    if (!by.isEmpty() || tooLow.isPresent()) {
      acceptances.put(
          finding.id(), new Acceptance(whole, covered, by, whole ? Optional.empty() : tooLow));
    }
    return whole;
  }

  private static boolean adds(WaiverEntry entry, Finding finding, VlanSet covered) {
    return !entry.told().vlans().and(finding.vlans()).minus(covered).isEmpty();
  }

  /** What is covered, by id of the finding. */
  Map<String, Acceptance> acceptances() {
    return acceptances;
  }

  /** The findings that a waiver covers, or would cover if it had not ended. */
  List<Finding> fits(WaiverEntry entry) {
    return fits.getOrDefault(entry, List.of());
  }

  /** Whether a waiver is for a finding, covered by it or not. */
  boolean isSeen(WaiverEntry entry) {
    return seen.contains(entry);
  }

  /** A finding that a waiver is for, about other VLANs than it names. */
  Optional<Finding> beside(WaiverEntry entry) {
    return Optional.ofNullable(besides.get(entry));
  }
}
