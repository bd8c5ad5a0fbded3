package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.yaml.Position;

/** Collects what a rule asks of several settings of one port and tells it as one outcome. */
final class Differences {
  private final PortCase port;
  private final List<Asked> asked = new ArrayList<>();

  Differences(PortCase port) {
    this.port = port;
  }

  /**
   * One setting held against the design.
   *
   * @param setting what is found, also where it is not decided
   * @param fits whether that is as designed; without meaning where it is not decided
   * @param designed the designed value in words
   * @param found the value found in words
   * @param so the consequence, one sentence
   * @param needs the mode in which the setting has an effect, where it is bound to one
   * @param at where the design says so
   */
  record Asked(
      Setting<?> setting,
      boolean fits,
      String designed,
      String found,
      String so,
      Optional<PortMode> needs,
      Position at) {
    private boolean differs() {
      return setting.isDecided() && !fits;
    }
  }

  /** Adds one. */
  void add(Asked one) {
    asked.add(one);
  }

  /** Tells nothing where nothing was asked. */
  void tell(Outcomes outcomes) {
    List<Asked> differing = heard(asked.stream().filter(Asked::differs).toList());
    List<Asked> open = heard(asked.stream().filter(one -> !one.setting().isDecided()).toList());
    if (!differing.isEmpty()) {
      Candidate candidate = candidate(differing, open);
      outcomes.add(needed(differing).map(candidate::boundTo).orElse(candidate));
    } else if (!open.isEmpty()) {
      Undecided gap = undecided(open);
      outcomes.add(needed(open).map(gap::boundTo).orElse(gap));
    } else if (!asked.isEmpty()) {
      outcomes.conforms(port.subject());
    }
  }

  /** Beside other settings, those that the port's mode leaves without effect are not told. */
  private List<Asked> heard(List<Asked> some) {
    List<Asked> working =
        some.stream()
            .filter(one -> one.needs().filter(mode -> !port.get(Keys.MODE).is(mode)).isEmpty())
            .toList();
    return working.isEmpty() ? some : working;
  }

  private static Optional<PortMode> needed(List<Asked> some) {
    Optional<PortMode> first = some.get(0).needs();
    return first.filter(mode -> some.stream().allMatch(one -> one.needs().equals(first)));
  }

  private Candidate candidate(List<Asked> differing, List<Asked> open) {
    Stream<String> untold = open.stream().map(one -> one.designed() + ": cannot be told");
    return Candidate.of(
        port.subject(),
        joined("; ", differing, Asked::designed),
        Stream.concat(differing.stream().map(Asked::found), untold)
            .distinct()
            .collect(Collectors.joining("; ")),
        joined(" ", differing, Asked::so),
        port.proofs(settings(Stream.concat(differing.stream(), open.stream()).toList())),
        Optional.of(differing.get(0).at()));
  }

  private Undecided undecided(List<Asked> open) {
    Asked first = open.get(0);
    Undecided gap =
        new Undecided(
            port.subject(),
            port.at().cause(first.setting()),
            open.stream()
                .map(one -> one.setting().reason().orElse("the text does not tell"))
                .distinct()
                .collect(Collectors.joining("; ")),
            joined("; ", open, Asked::designed),
            port.proofs(settings(open)),
            Optional.of(first.at()),
            Optional.empty());
    return open.stream().allMatch(one -> restsOnOpenMode(one.setting()))
        ? gap.because(Undecided.Cause.MODE)
        : gap;
  }

  private boolean restsOnOpenMode(Setting<?> setting) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    List<Evidence> evidence = mode.evidence();
    return (!mode.isDecided() || mode.is(PortMode.NEGOTIATED))
        && !evidence.isEmpty()
        && setting.evidence().containsAll(evidence);
  }

  private static Setting<?>[] settings(List<Asked> some) {
    return some.stream().map(Asked::setting).toArray(Setting<?>[]::new);
  }

  private static String joined(String by, List<Asked> some, Function<Asked, String> words) {
    return some.stream().map(words).distinct().collect(Collectors.joining(by));
  }
}
