package plumbline.window;

import java.util.List;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignReader;
import plumbline.design.DesignReading;
import plumbline.design.DesignSource;
import plumbline.effective.Dialect;
import plumbline.effective.EffectiveSettings;
import plumbline.effective.SwitchSettings;
import plumbline.result.Change;
import plumbline.rules.RuleCatalogue;
import plumbline.statement.MarkedText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Windows of one switch, made of texts, and what is found in them as short strings. */
final class Windows {
  private static final ConfigReader READER = new ConfigReader(new StatementParser());

  private Windows() {}

  /** One side of a switch. */
  static Side side(String text, String... vouched) {
    MarkedText marked = READER.readMarked("sw1.cfg", "sw1", text).get(0);
    SwitchSettings settings = EffectiveSettings.of(marked.text(), Optional.empty());
    return new Side(settings, marked.marks(), OtherLines.of(marked, settings, List.of(vouched)));
  }

  static SwitchWindow window(String before, String after) {
    return new SwitchWindow("sw1", side(before), side(after));
  }

  static Design design(String yaml) {
    DesignReading reading =
        DesignReader.read(
            List.of(new DesignSource("design.yaml", "0", "format: plumbline-design/1\n" + yaml)),
            RuleCatalogue.names(),
            Dialect.words());
    return reading
        .design()
        .orElseThrow(() -> new IllegalArgumentException(reading.problems().toString()));
  }

  /** The changes, the design being the plan. */
  static List<Change> changes(SwitchWindow window, Design design) {
    return changes(window, design, Optional.empty());
  }

  static List<Change> changes(SwitchWindow window, Design design, Optional<Design> from) {
    return Changes.of(window, design, SwitchJudge.of(window, design, from).judged());
  }

  /** {@code kind port setting VLANs: before -> after}. */
  static List<String> told(List<Change> changes) {
    return changes.stream().map(Windows::told).toList();
  }

  private static String told(Change change) {
    return change.kind()
        + " "
        + change.place().port().map(port -> port + " ").orElse("")
        + change.setting()
        + (change.vlans().isEmpty() ? "" : " " + change.vlans())
        + ": "
        + change.before().orElse("-")
        + " -> "
        + change.after().orElse("-");
  }

  /** A campus dump with these lines in it. */
  static String campus(String body) {
    return "version 15.2\nhostname sw1\nvtp mode transparent\n!\n" + body + "end\n";
  }
}
