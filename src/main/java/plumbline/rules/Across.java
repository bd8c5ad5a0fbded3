package plumbline.rules;

import java.util.List;
import java.util.Set;
import plumbline.finding.Place;
import plumbline.setting.Key;

/**
 * Says of a difference between ports which findings about single ports would take it away: those
 * about these settings at these places.
 *
 * @param settings what the ports differ in
 * @param ports the ports that are compared, with the members of bundles
 * @param byRole whether a role names one of the settings; if none does, only findings that need no
 *     key of a role can be the cause
 */
public record Across(Set<Key<?>> settings, List<Place> ports, boolean byRole) {
  /** Copies the collections. */
  public Across {
    settings = Set.copyOf(settings);
    ports = List.copyOf(ports);
  }
}
