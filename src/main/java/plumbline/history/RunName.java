package plumbline.history;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The name of a run's file: {@code 2026-11-25T021000Z-0123456789ab.json}, its moment in UTC and the
 * beginning of the SHA-256 of what it holds. So names sort by time, two runs of one second have two
 * names unless they say the same, and whoever replaces a file replaces it by itself.
 *
 * @param at the moment, whole seconds
 * @param digest twelve lower-case hexadecimal digits
 */
record RunName(Instant at, String digest) implements Comparable<RunName> {
  private static final int DIGITS = 12;

  private static final Pattern FORM =
      Pattern.compile(
          "(?<moment>[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{6}Z)-(?<digest>[0-9a-f]{"
              + DIGITS
              + "})\\.json");

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmmss'Z'", Locale.ROOT)
          .withResolverStyle(java.time.format.ResolverStyle.STRICT)
          .withZone(ZoneOffset.UTC);

  /** The name of a run that holds this text. */
  static RunName of(Instant at, String text) {
    return new RunName(at.truncatedTo(ChronoUnit.SECONDS), digest(text));
  }

  /** Reads a file's name; empty where it is none of a run. */
  static Optional<RunName> parse(String file) {
    Matcher form = FORM.matcher(file);
    if (!form.matches()) {
      return Optional.empty();
    }
    try {
      Instant at = Instant.from(MOMENT.parse(form.group("moment")));
      return Optional.of(new RunName(at, form.group("digest")));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static String digest(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  @Override
  public int compareTo(RunName other) {
    return Comparator.comparing(RunName::at).thenComparing(RunName::digest).compare(this, other);
  }

  /** The name as files have it. */
  @Override
  public String toString() {
    return MOMENT.format(at) + "-" + digest + ".json";
  }
}
