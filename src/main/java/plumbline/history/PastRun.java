package plumbline.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.result.Past;

/**
 * An earlier run.
 *
 * @param file its name in the folder
 * @param at when it was, UTC, whole seconds
 * @param site the site that its design was of
 * @param design SHA-256 of each of its design's files
 * @param configs SHA-256 of the files that its switches were read from, by switch
 * @param waivers SHA-256 of its file of waivers, where it had one
 * @param point what was open after it
 * @param findings its findings in order; empty where only its head was read
 */
public record PastRun(
    String file,
    Instant at,
    Optional<String> site,
    Set<String> design,
    Map<String, Set<String>> configs,
    Optional<String> waivers,
    Past.TrendPoint point,
    List<PastFinding> findings) {
  /** Copies the collections. */
  public PastRun {
    design = Set.copyOf(design);
    configs = Map.copyOf(configs);
    findings = List.copyOf(findings);
  }

  /** The day of the run, UTC. */
  LocalDate day() {
    return LocalDate.ofInstant(at, ZoneOffset.UTC);
  }

  /** The findings that were there, or might have been, by id. */
  public Map<String, PastFinding> open() {
    Map<String, PastFinding> open = new LinkedHashMap<>();
    findings.stream()
        .filter(PastFinding::isOpen)
        .forEach(one -> open.putIfAbsent(one.finding().id(), one));
    return open;
  }

  /** How reports name it. */
  Past.Run named() {
    return new Past.Run(file, at);
  }
}
