package plumbline.run;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import plumbline.intake.Intake;
import plumbline.intake.Read;
import plumbline.rules.RuleCatalogue;
import plumbline.waiver.WaiverFile;
import plumbline.waiver.WaiverReader;
import plumbline.waiver.WaiverReading;
import plumbline.yaml.Problem;

/** Reads a file of waivers. */
public final class WaiverFiles {
  private WaiverFiles() {}

  /** What came of it. */
  public sealed interface Answer {
    /**
     * Waivers that can be used.
     *
     * @param waivers the waivers
     */
    record Usable(WaiverFile waivers) implements Answer {}

    /**
     * A file that cannot be used.
     *
     * @param lines what is wrong, each as {@code file:line:column: message} or {@code file:
     *     message}
     */
    record Unusable(List<String> lines) implements Answer {
      /** Copies the lines. */
      public Unusable {
        lines = List.copyOf(lines);
      }
    }
  }

  /** Reads a file. */
  public static Answer read(String typed) {
    Path path;
    try {
      path = Path.of(typed);
    } catch (InvalidPathException e) {
      return new Answer.Unusable(List.of(typed + ": the file of waivers cannot be read"));
    }
    Read read = Intake.read(path, typed);
    if (read instanceof Read.Failed failed) {
      return new Answer.Unusable(List.of(typed + ": the file of waivers " + failed.reason()));
    }
    Read.Text text = (Read.Text) read;
    WaiverReading reading =
        WaiverReader.read(typed, text.sha256(), text.text(), RuleCatalogue.names());
    Optional<Answer> usable = reading.waivers().map(Answer.Usable::new);
    return usable.orElseGet(
        () -> new Answer.Unusable(reading.problems().stream().map(Problem::toString).toList()));
  }
}
