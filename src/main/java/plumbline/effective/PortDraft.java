package plumbline.effective;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Statement;

/** The settings of one port while they are being worked out. */
final class PortDraft {
  private final PortName name;
  private final Evidence.Line header;
  private final Lines lines;
  private final Map<Key<?>, Setting<?>> settings = new LinkedHashMap<>();
  private AllowedList allowed;

  PortDraft(PortName name, Evidence.Line header, Lines lines, AllowedList allowed) {
    this.name = name;
    this.header = header;
    this.lines = lines;
    this.allowed = allowed;
  }

  PortName name() {
    return name;
  }

  Evidence.Line header() {
    return header;
  }

  Lines lines() {
    return lines;
  }

  /** The trunk list with what is certain and what is possible. */
  AllowedList allowed() {
    return allowed;
  }

  /** Takes over another port's trunk list. */
  void takeList(AllowedList other) {
    allowed = other;
  }

  <T> void put(Key<T> key, Setting<T> setting) {
    settings.put(key, setting);
  }

  @SuppressWarnings("unchecked") // put() stores each value under its own key's type
  <T> Setting<T> get(Key<T> key) {
    Setting<?> setting = settings.get(key);
    if (setting == null) {
      throw new IllegalStateException("no setting " + key + " yet on " + name);
    }
    return (Setting<T>) setting;
  }

  /** The finished settings. */
  PortSettings finish(Dialect dialect) {
    List<UnknownLine> unknown =
        lines.statements().stream().flatMap(statement -> unknown(statement).stream()).toList();
    return new PortSettings(
        name, dialect.print(name), header, settings, SwitchingLines.anyFor(lines), unknown);
  }

  private static Optional<UnknownLine> unknown(Statement statement) {
    return statement.command() instanceof Command.Unknown unknown
        ? Optional.of(new UnknownLine(statement.line(), unknown.firstWord()))
        : Optional.empty();
  }
}
