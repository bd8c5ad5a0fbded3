package plumbline.promise;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import plumbline.design.Design;
import plumbline.design.DesignReader;
import plumbline.design.DesignReading;
import plumbline.design.DesignSource;
import plumbline.effective.Dialect;
import plumbline.effective.EffectiveSettings;
import plumbline.effective.SwitchSettings;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Networks out of the text of a design and of configs, each as found and as designed. */
final class Networks {
  private static final StatementParser PARSER = new StatementParser();

  private Networks() {}

  static Sides sides(String design, Map<String, String> configs) {
    DesignReading reading =
        DesignReader.read(
            List.of(new DesignSource("design.yaml", "0".repeat(64), design)),
            List.of(),
            Dialect.words());
    assertThat(reading.problems()).as(design).isEmpty();
    Design read = reading.design().orElseThrow();
    Map<String, SwitchSettings> settings = new TreeMap<>();
    configs.forEach((name, text) -> settings.put(name, settings(name, text)));
    return Sides.of(read, settings, any -> true);
  }

  private static SwitchSettings settings(String name, String body) {
    String text = "version 15.2\nhostname " + name + "\nvtp mode transparent\n" + body + "end\n";
    List<SwitchText> switches = new ConfigReader(PARSER).read(name + ".cfg", name, text);
    assertThat(switches).hasSize(1);
    return EffectiveSettings.of(switches.get(0), Optional.empty());
  }
}
