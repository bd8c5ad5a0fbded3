package plumbline.fabric;

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
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Fabrics out of the text of a design and of configs. */
final class Sites {
  private static final StatementParser PARSER = new StatementParser();

  private Sites() {}

  static Fabric fabric(String design, Map<String, String> configs) {
    DesignReading reading =
        DesignReader.read(
            List.of(new DesignSource("design.yaml", "0".repeat(64), design)),
            List.of(),
            Dialect.words());
    assertThat(reading.problems()).isEmpty();
    Design read = reading.design().orElseThrow();
    Map<String, SwitchSettings> settings = new TreeMap<>();
    configs.forEach((name, text) -> settings.put(name, settings(name, text)));
    return Fabric.of(read, settings);
  }

  private static SwitchSettings settings(String name, String body) {
    String text = "version 15.2\nhostname " + name + "\nvtp mode transparent\n" + body + "end\n";
    List<SwitchText> switches = new ConfigReader(PARSER).read(name + ".cfg", name, text);
    assertThat(switches).hasSize(1);
    return EffectiveSettings.of(switches.get(0), Optional.empty());
  }

  static PortName port(String name) {
    return ((PortNames.Reading.Ports) PortNames.parse(name)).names().get(0);
  }

  static VlanGraph.Point at(String switchName, String port) {
    return new VlanGraph.Point(switchName, port(port));
  }
}
