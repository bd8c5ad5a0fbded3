package plumbline.effective;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Statement;

/** The settings of one port while they are being worked out. */
final class PortDraft {
  private final PortName name;
  private final Evidence.Line header;
  private final Lines lines;
  private final Map<Key<?>, Setting<?>> settings = new LinkedHashMap<>();
  private final Map<Setting<?>, Setting<?>> shared;
  private AllowedList allowed;

  /**
   * A port without any setting yet.
   *
   * @param shared the settings that rest on defaults, equal ones once for all ports of the switch
   */
  PortDraft(
      PortName name,
      Evidence.Line header,
      Lines lines,
      AllowedList allowed,
      Map<Setting<?>, Setting<?>> shared) {
    this.name = name;
    this.header = header;
    this.lines = lines;
    this.allowed = allowed;
    this.shared = shared;
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
    boolean byDefault = setting.evidence().stream().allMatch(Evidence.Default.class::isInstance);
    settings.put(key, byDefault ? shared.computeIfAbsent(setting, one -> one) : setting);
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
    allowed
        .fromDefault(lines)
        .ifPresent(
            list -> put(Keys.ALLOWED_FROM_DEFAULT, new Setting.Known<>(list, allowed.evidence())));
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
