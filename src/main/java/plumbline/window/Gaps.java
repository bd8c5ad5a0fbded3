package plumbline.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says what of a window cannot be compared. */
final class Gaps {
  private Gaps() {}

  /**
   * What cannot be compared on a switch.
   *
   * @param leftOpen how many settings a side leaves open because it is silent or breaks off
   * @param faults what is known already not to be comparable
   */
  static List<String> of(SwitchWindow window, int leftOpen, List<String> faults) {
    List<String> gaps = new ArrayList<>();
    part(window, "before", window.before(), faults).ifPresent(gaps::add);
    part(window, "after", window.after(), faults).ifPresent(gaps::add);
    if (leftOpen > 0) {
      gaps.add(
          window.name()
              + ": "
              + leftOpen
              + (leftOpen == 1 ? " setting" : " settings")
              + " of one text cannot be compared, for the other does not tell them");
    }
    String was = window.before().settings().dialect().word();
    String is = window.after().settings().dialect().word();
    if (!was.equals(is)) {
      gaps.add(
          window.name()
              + ": the text before reads as of the "
              + was
              + " dialect, the text after as of "
              + is
              + ": their defaults differ");
    }
    return gaps;
  }

  private static Optional<String> part(
      SwitchWindow window, String when, Side side, List<String> faults) {
    String text = window.name() + ": the text " + when;
    if (side.settings().script()) {
      return Optional.of(text + " is a pasted script: what it does not say is not known");
    }
    return side.settings()
        .truncation()
        .filter(
            cut ->
                faults.stream()
                    .noneMatch(
                        fault -> fault.startsWith(side.settings().file() + ":" + cut.line() + ":")))
        .map(cut -> text + " is cut short at line " + cut.line() + " (" + cut.why() + ")");
  }

  /** The switches that are planned to change and of which no text was given. */
  static List<String> ofPlan(Window.Input input) {
    Set<String> given =
        Stream.concat(input.switches().stream(), input.rest().stream())
            .map(SwitchWindow::name)
            .collect(Collectors.toSet());
    return Plan.switches(input.from().orElseThrow(), input.design()).stream()
        .filter(name -> !given.contains(name) && !input.oneSided().contains(name))
        .map(name -> name + ": the plan changes this switch, and no config of it was given")
        .toList();
  }
}
