package plumbline.port;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * The canonical name of one port: kind and numbers, such as GigabitEthernet 1/0/1, with the number
 * of a sub-interface where it is one. All spellings of one port are equal.
 *
 * @param kind the kind
 * @param numbers slot, module and port numbers in order, at least one
 * @param sub sub-interface number
 */
public record PortName(PortKind kind, List<Integer> numbers, OptionalInt sub)
    implements Comparable<PortName> {
  private static final Comparator<PortName> ORDER =
      Comparator.comparing(PortName::kind)
          .thenComparing(
              name -> name.numbers().stream().mapToInt(n -> n).toArray(), Arrays::compare)
          .thenComparingInt(name -> name.sub().orElse(-1));

  /** Copies the numbers. */
  public PortName {
    numbers = List.copyOf(numbers);
    if (numbers.isEmpty()) {
      throw new IllegalArgumentException("a port has a number");
    }
  }

  /** A port without sub-interface. */
  public static PortName of(PortKind kind, Integer... numbers) {
    return new PortName(kind, List.of(numbers), OptionalInt.empty());
  }

  /** The port that this sub-interface is part of; itself if it is none. */
  public PortName parent() {
    return sub.isEmpty() ? this : new PortName(kind, numbers, OptionalInt.empty());
  }

  /** The last number, such as the VLAN of a VLAN interface or the id of a bundle. */
  public int lastNumber() {
    return numbers.get(numbers.size() - 1);
  }

  /** The numbers as written, such as {@code 1/0/1.200}. */
  public String numberText() {
    String path = numbers.stream().map(String::valueOf).collect(Collectors.joining("/"));
    return sub.isEmpty() ? path : path + "." + sub.getAsInt();
  }

  @Override
  public int compareTo(PortName other) {
    return ORDER.compare(this, other);
  }

  /** The name as most saved configs print it, such as {@code GigabitEthernet1/0/1}. */
  @Override
  public String toString() {
    return kind.fullName() + numberText();
  }
}
