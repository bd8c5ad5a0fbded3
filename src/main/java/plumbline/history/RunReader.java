package plumbline.history;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import plumbline.result.Past.TrendPoint;

/** Reads a run from its report, {@code plumbline-report/1}, as a stream. */
final class RunReader {
  private static final String FORMAT = "plumbline-report/1";

  /** Where a text breaks off inside a word, nobody can tell that from damage. */
  static final String DAMAGED = "breaks off, is damaged, or is no report of plumbline";

  private static final JsonFactory JSON = new JsonFactory();

  private final JsonObjects json;
  private final boolean headOnly;

  private boolean known;
  private Optional<Instant> at = Optional.empty();
  private Optional<String> site = Optional.empty();
  private Optional<String> waivers = Optional.empty();
  private Optional<TrendPoint> point = Optional.empty();
  private final int[] counts = new int[5];
  private boolean counted;
  private final Set<String> design = new HashSet<>();
  private final Map<String, Set<String>> configs = new TreeMap<>();
  private final List<PastFinding> findings = new ArrayList<>();
  private boolean listed;

  private RunReader(JsonParser parser, boolean headOnly) {
    this.json = new JsonObjects(parser);
    this.headOnly = headOnly;
  }

  /** A text is no run, or not a whole one. */
  static final class NoRun extends Exception {
    private static final long serialVersionUID = 1L;

    NoRun(String reason) {
      super(reason, null, false, false);
    }
  }

  /**
   * Reads a run.
   *
   * @param file its name, for messages
   * @param headOnly whether what stands before the findings is enough
   * @throws NoRun where the text is no run, or breaks off; its message is a clause for readers
   * @throws IOException where the file cannot be read
   */
  static PastRun read(String file, InputStream text, boolean headOnly) throws IOException, NoRun {
    try (JsonParser parser = JSON.createParser(text)) {
      return new RunReader(parser, headOnly).run(file);
    } catch (JsonProcessingException | DateTimeException | IllegalArgumentException e) {
      // Not its message: it may quote what stands there.
      throw new NoRun(DAMAGED);
    }
  }

  private PastRun run(String file) throws IOException, NoRun {
    json.next();
    boolean whole = json.object(this::top);
    if (!known) {
      throw new NoRun(DAMAGED);
    }
    if (at.isEmpty() || !counted || (whole && !listed)) {
      throw new NoRun("lacks a part that every report has");
    }
    if (whole && json.next() != null) {
      throw new NoRun("goes on after its end");
    }
    return new PastRun(
        file,
        at.get(),
        site,
        design,
        configs,
        waivers,
        point.orElseGet(
            () ->
                new TrendPoint(
                    at.get(),
                    counts[0],
                    counts[1],
                    counts[2],
                    counts[3],
                    counts[4],
                    0,
                    Optional.empty())),
        findings);
  }

  /** Says whether to go on: behind the head only the findings follow. */
  private boolean top(String name) throws IOException, NoRun {
    switch (name) {
      case "format" -> {
        String format = json.text();
        if (!format.equals(FORMAT)) {
          throw new NoRun("is no report of a kind that this version reads");
        }
        known = true;
      }
      case "run" -> json.object(this::ofRun);
      case "verdict" -> {
        json.object(this::count);
        counted = true;
      }
      case "history" ->
          json.object(
              field -> {
                if (field.equals("trend")) {
                  json.array(() -> point = Optional.of(point()));
                } else {
                  json.skip();
                }
                return true;
              });
      case "findings" -> {
        if (headOnly && known && counted) {
          return false;
        }
        json.array(() -> findings.add(new FindingReader(json).read()));
        listed = true;
      }
      default -> json.skip();
    }
    return true;
  }

  private boolean ofRun(String name) throws IOException, NoRun {
    switch (name) {
      case "at" -> at = Optional.of(Instant.parse(json.text()));
      case "site" -> site = json.textOrNull();
      case "waivers" ->
          json.object(
              field -> {
                if (field.equals("sha256")) {
                  waivers = json.textOrNull();
                } else {
                  json.skip();
                }
                return true;
              });
      case "design" ->
          json.array(
              () ->
                  json.object(
                      field -> {
                        if (field.equals("sha256")) {
                          design.add(json.text());
                        } else {
                          json.skip();
                        }
                        return true;
                      }));
      case "configs" -> json.array(this::config);
      default -> json.skip();
    }
    return true;
  }

  private void config() throws IOException, NoRun {
    String[] read = {"", ""};
    json.object(
        field -> {
          switch (field) {
            case "switch" -> read[0] = json.text();
            case "sha256" -> read[1] = json.text();
            default -> json.skip();
          }
          return true;
        });
    configs.computeIfAbsent(read[0], any -> new HashSet<>()).add(read[1]);
  }

  private boolean count(String name) throws IOException, NoRun {
    int place = List.of("breaks", "weakens", "unverified", "untidy", "waived").indexOf(name);
    if (place >= 0) {
      counts[place] = json.whole();
    } else {
      json.skip();
    }
    return true;
  }

  private TrendPoint point() throws IOException, NoRun {
    Map<String, Integer> numbers = new TreeMap<>();
    List<Instant> moments = new ArrayList<>();
    List<LocalDate> oldest = new ArrayList<>();
    json.object(
        field -> {
          switch (field) {
            case "at" -> moments.add(Instant.parse(json.text()));
            case "oldest" -> json.textOrNull().map(LocalDate::parse).ifPresent(oldest::add);
            default -> numbers.put(field, json.whole());
          }
          return true;
        });
    return new TrendPoint(
        moments.stream().findFirst().orElseThrow(() -> new NoRun("lacks a part of its trend")),
        numbers.getOrDefault("breaks", 0),
        numbers.getOrDefault("weakens", 0),
        numbers.getOrDefault("unverified", 0),
        numbers.getOrDefault("untidy", 0),
        numbers.getOrDefault("waived", 0),
        numbers.getOrDefault("unchecked", 0),
        oldest.stream().findFirst());
  }
}
