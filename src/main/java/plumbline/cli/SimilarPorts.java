package plumbline.cli;

import java.util.List;
import java.util.stream.Stream;
import plumbline.inspect.SwitchView;
import plumbline.port.PortName;
import plumbline.text.Wording;

/**
 * Helps after a port that no config opens: its kind or its first numbers may have been left out.
 */
final class SimilarPorts {
  private SimilarPorts() {}

  /** A clause to follow the complaint; empty where no port is like the one asked for. */
  static String hint(PortName wanted, List<SwitchView> switches) {
    if (switches.stream().anyMatch(view -> view.designed().containsKey(wanted))) {
      return "; the design covers it";
    }
    List<String> similar =
        switches.stream()
            .flatMap(
                view ->
                    Stream.concat(
                            view.settings().ports().keySet().stream(),
                            view.designed().keySet().stream())
                        .filter(port -> endsSo(port, wanted))
                        .map(view.settings()::fullName))
            .distinct()
            .toList();
    return similar.isEmpty() ? "" : "; did you mean " + Wording.alternatives(similar) + "?";
  }

  private static boolean endsSo(PortName port, PortName wanted) {
    List<Integer> whole = port.numbers();
    List<Integer> end = wanted.numbers();
    return port.sub().equals(wanted.sub())
        && whole.size() >= end.size()
        && whole.subList(whole.size() - end.size(), whole.size()).equals(end);
  }
}
