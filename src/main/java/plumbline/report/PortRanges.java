package plumbline.report;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Writes ports as ranges: a name stands once, before the numbers that follow each other. */
final class PortRanges {
  private static final Pattern NUMBERED = Pattern.compile("(.*?)([0-9]{1,9})");

  private PortRanges() {}

  /**
   * The ports in one phrase.
   *
   * @param ports full names, in order; an empty one stands for a whole switch
   */
  static String of(List<String> ports) {
    Map<String, List<Integer>> numbers = new LinkedHashMap<>();
    List<String> others = new ArrayList<>();
    for (String port : ports) {
      Matcher name = NUMBERED.matcher(port);
      if (ports.size() > 1 && name.matches()) {
        numbers
            .computeIfAbsent(name.group(1), any -> new ArrayList<>())
            .add(Integer.parseInt(name.group(2)));
      } else {
        others.add(port);
      }
    }
    return Stream.concat(
            numbers.entrySet().stream().map(kind -> kind.getKey() + ranges(kind.getValue())),
            others.stream())
        .collect(joining(", "));
  }

  private static String ranges(List<Integer> ascending) {
    List<String> ranges = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= ascending.size(); i++) {
      if (i == ascending.size() || ascending.get(i) != ascending.get(i - 1) + 1) {
        int first = ascending.get(start);
        ranges.add(i - start == 1 ? "" + first : first + "-" + ascending.get(i - 1));
        start = i;
      }
    }
    return String.join(", ", ranges);
  }
}
