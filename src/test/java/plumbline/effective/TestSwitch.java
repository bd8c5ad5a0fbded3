package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Setting;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Effective settings of a config text, spelled as short strings for tests. */
final class TestSwitch {
  /** Lines that make a text a whole campus dump whose VLAN list is known. */
  static final String CAMPUS = "version 15.2\nhostname sw1\nvtp mode transparent\n";

  private static final ConfigReader READER = new ConfigReader(new StatementParser());

  private TestSwitch() {}

  /** The settings of a text of one switch. */
  static SwitchSettings read(String text) {
    return read(text, Optional.empty());
  }

  static SwitchSettings read(String text, Optional<Dialect> override) {
    List<SwitchText> switches = READER.read("sw1.cfg", "sw1", text);
    assertThat(switches).hasSize(1);
    return EffectiveSettings.of(switches.get(0), override);
  }

  /** The settings of a whole campus dump: the common head, the given lines, the end. */
  static SwitchSettings campus(String body) {
    SwitchSettings settings = read(CAMPUS + body + "\nend\n");
    assertThat(settings.script()).isFalse();
    assertThat(settings.truncation()).isEmpty();
    assertThat(settings.dialect()).isEqualTo(Dialect.CAMPUS);
    return settings;
  }

  /** The settings of a whole data-centre dump. */
  static SwitchSettings dataCentre(String body) {
    SwitchSettings settings = read("version 9.3(8)\nfeature lacp\nhostname sw1\n" + body + "\n");
    assertThat(settings.dialect()).isEqualTo(Dialect.DATA_CENTRE);
    assertThat(settings.script()).isFalse();
    return settings;
  }

  static PortName name(String port) {
    return ((PortNames.Reading.Ports) PortNames.parse(port)).names().get(0);
  }

  static PortSettings port(SwitchSettings settings, String port) {
    return settings.port(name(port)).orElseThrow();
  }

  /** The one port of a campus dump, Gi1/0/1, with these lines in it. */
  static PortSettings port(String lines) {
    return port(campus(stanza("Gi1/0/1", lines)), "Gi1/0/1");
  }

  /** A stanza with its lines, separated by semicolons. */
  static String stanza(String port, String lines) {
    StringBuilder text = new StringBuilder("interface " + port + "\n");
    for (String line : lines.split(";", -1)) {
      if (!line.isBlank()) {
        text.append(' ').append(line.strip()).append('\n');
      }
    }
    return text.append("!\n").toString();
  }

  /** A value, {@code -} where nothing is set, {@code ? why} where undecided. */
  static String show(Setting<?> setting) {
    if (!setting.isDecided()) {
      return "? " + setting.reason().orElseThrow();
    }
    return setting.value().map(Object::toString).orElse("-");
  }

  static String show(PortSettings port, Key<?> key) {
    return show(port.get(key));
  }

  /** The evidence, as {@code 12: text} for lines and as it is for defaults. */
  static String why(Setting<?> setting) {
    return setting.evidence().stream().map(TestSwitch::show).collect(Collectors.joining(" | "));
  }

  static String why(PortSettings port, Key<?> key) {
    return why(port.get(key));
  }

  private static String show(Evidence evidence) {
    if (evidence instanceof Evidence.Line line) {
      return line.line() + ": " + line.text();
    }
    return ((Evidence.Default) evidence).name();
  }
}
