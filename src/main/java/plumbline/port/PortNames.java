package plumbline.port;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads port names and ranges in any abbreviation and spacing: {@code Gi1/0/1}, {@code gig 1/0/1},
 * {@code range f0/2-4, g0/1 - 2}, {@code Ethernet1/1, Ethernet1/2}, {@code 1/1/1-1/1/4}.
 */
public final class PortNames {
  /** Paths are bounded: matching repeats a group by recursion, which a long text would exhaust. */
  private static final Pattern PART =
      Pattern.compile(
          "\\s*(?<kind>[A-Za-z][A-Za-z-]*)?\\s*(?<numbers>[0-9]+(?:\\s?/\\s?[0-9]+){0,7})(?:\\.(?<sub>[0-9]+))?"
              + "(?:\\s*-\\s*(?<lastkind>[A-Za-z][A-Za-z-]*)?\\s*(?<last>[0-9]+(?:/[0-9]+){0,7})(?:\\.(?<lastsub>[0-9]+))?)?\\s*");

  private static final int MAX_RANGE = 4096;

  /** More names than this in one text are no list of ports. */
  private static final int MAX_NAMES = 20_000;

  private PortNames() {}

  /** What a text names. */
  public sealed interface Reading {
    /**
     * Ports in the order named.
     *
     * @param names at least one
     */
    record Ports(List<PortName> names) implements Reading {
      /** Copies the names. */
      public Ports {
        names = List.copyOf(names);
      }
    }

    /**
     * An abbreviation that could be several kinds.
     *
     * @param word the abbreviation
     * @param kinds full names of the kinds, sorted
     */
    record Ambiguous(String word, List<String> kinds) implements Reading {
      /** Copies the kinds. */
      public Ambiguous {
        kinds = List.copyOf(kinds);
      }
    }

    /** No port name. */
    record NotAPort() implements Reading {}
  }

  /** Reads one name, a range or a comma-separated list of both, with or without {@code range}. */
  public static Reading parse(String text) {
    String list = text.strip().replaceFirst("(?i)^range\\s+", "");
    List<PortName> names = new ArrayList<>();
    PortKind kind = null;
    for (String part : list.split(",", -1)) {
      Matcher match = PART.matcher(part);
      if (!match.matches()) {
        return new Reading.NotAPort();
      }
      if (match.group("kind") != null) {
        List<PortKind> kinds = kindsOf(match.group("kind"));
        if (kinds.size() > 1) {
          return new Reading.Ambiguous(
              match.group("kind"), kinds.stream().map(PortKind::fullName).sorted().toList());
        }
        if (kinds.isEmpty()) {
          return new Reading.NotAPort();
        }
        kind = kinds.get(0);
      } else if (kind == null) {
        kind = PortKind.NUMBERED;
      }
      if (!addRange(kind, match, names) || names.size() > MAX_NAMES) {
        return new Reading.NotAPort();
      }
    }
    return new Reading.Ports(names);
  }

  /** The kinds that a word can abbreviate: one where it is clear, a full name always is. */
  private static List<PortKind> kindsOf(String word) {
    List<PortKind> accepted =
        Arrays.stream(PortKind.values())
            .filter(kind -> kind != PortKind.NUMBERED && kind.accepts(word))
            .toList();
    List<PortKind> full = accepted.stream().filter(kind -> kind.isFullName(word)).toList();
    if (!accepted.isEmpty()) {
      return full.size() == 1 ? full : accepted;
    }
    // Too short for any kind of the table: still no port of just one kind for sure.
    List<PortKind> begun =
        Arrays.stream(PortKind.values())
            .filter(kind -> kind != PortKind.NUMBERED && kind.beginsWith(word))
            .toList();
    return begun.size() > 1 ? begun : List.of();
  }

  private static boolean addRange(PortKind kind, Matcher match, List<PortName> names) {
    List<Integer> first = numbers(match.group("numbers"));
    OptionalInt sub = sub(match.group("sub"));
    if (first.isEmpty()) {
      return false;
    }
    if (match.group("last") == null) {
      names.add(new PortName(kind, first, sub));
      return true;
    }
    List<Integer> last = numbers(match.group("last"));
    if (last.isEmpty()
        || (match.group("lastkind") != null && !kind.accepts(match.group("lastkind")))) {
      return false;
    }
    if (sub.isPresent()) {
      int end =
          match.group("lastsub") != null
              ? sub(match.group("lastsub")).orElse(-1)
              : last.get(last.size() - 1);
      for (int n = sub.getAsInt(); n <= end && names.size() < MAX_RANGE; n++) {
        names.add(new PortName(kind, first, OptionalInt.of(n)));
      }
      return end >= sub.getAsInt();
    }
    int from = first.get(first.size() - 1);
    int to = last.get(last.size() - 1);
    List<Integer> path = first.subList(0, first.size() - 1);
    boolean samePath = last.size() == 1 || last.subList(0, last.size() - 1).equals(path);
    if (!samePath || to < from || to - from >= MAX_RANGE) {
      return false;
    }
    for (int n = from; n <= to; n++) {
      List<Integer> numbers = new ArrayList<>(path);
      numbers.add(n);
      names.add(new PortName(kind, numbers, OptionalInt.empty()));
    }
    return true;
  }

  private static List<Integer> numbers(String path) {
    List<Integer> numbers = new ArrayList<>();
    for (String number : path.split("/", -1)) {
      if (number.strip().length() > 6) {
        return List.of();
      }
      numbers.add(Integer.valueOf(number.strip()));
    }
    return numbers;
  }

  private static OptionalInt sub(String number) {
    return number == null || number.length() > 9
        ? OptionalInt.empty()
        : OptionalInt.of(Integer.parseInt(number));
  }

  /** The full names of every kind, sorted, for messages. */
  public static List<String> kindNames() {
    TreeSet<String> names = new TreeSet<>();
    for (PortKind kind : PortKind.values()) {
      if (kind != PortKind.NUMBERED) {
        names.add(kind.fullName());
      }
    }
    return List.copyOf(names);
  }
}
