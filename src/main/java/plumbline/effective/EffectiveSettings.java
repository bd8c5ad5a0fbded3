package plumbline.effective;

import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.port.PortName;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;

/**
 * Works out what a switch really does from the statements of its config text, in a fixed order: the
 * dialect, the stanzas, what holds for all ports, the VLAN database, each port by itself, bundles,
 * what ports carry, gateways.
 */
public final class EffectiveSettings {
  private EffectiveSettings() {}

  /**
   * The effective settings of one switch: a pure function of the statements.
   *
   * @param text the config text of one switch
   * @param override the dialect that the design names, if it does
   */
  public static SwitchSettings of(SwitchText text, Optional<Dialect> override) {
    DialectDetector.Detected detected = DialectDetector.detect(text, override);
    Dialect dialect = detected.dialect();
    Stanzas stanzas = Stanzas.of(text);
    Lines others = stanzas.others();
    VlanDatabase vlans = VlanDatabaseBuilder.build(others, stanzas.ports(), dialect);
    SpanningTree tree = SpanningTreeBuilder.build(stanzas.globals(dialect), dialect);
    SortedMap<PortName, PortDraft> drafts = drafts(stanzas, dialect, tree);
    new BundleRule(drafts).apply();
    new UpRule(drafts, new CarriedRule(vlans, others), incomplete(text, stanzas)).apply();
    NavigableMap<PortName, PortSettings> ports = new TreeMap<>();
    drafts.forEach((name, draft) -> ports.put(name, draft.finish(dialect)));
    Setting<String> hostname = hostname(others);
    SwitchSettings settings =
        new SwitchSettings(
            hostname.value().orElse(text.stem()),
            hostname,
            text.file(),
            dialect,
            detected.reason(),
            text.script(),
            text.truncation(),
            text.times(),
            vlans,
            ports,
            stanzas.removed(),
            new GatewayBuilder(dialect, VlanFilters.of(stanzas.globals(dialect))).build(drafts),
            tree,
            routing(others, dialect),
            stanzas.doubtfulHeaders(),
            stanzas.unknownElsewhere(),
            (int) text.statements().stream().filter(EffectiveSettings::isKnown).count(),
            text.lines());
    GatewayRule rule = new GatewayRule(settings);
    return settings.withGateways(settings.gateways().stream().map(rule::judge).toList());
  }

  private static SortedMap<PortName, PortDraft> drafts(
      Stanzas stanzas, Dialect dialect, SpanningTree tree) {
    SortedMap<PortName, Lines> lines = stanzas.ports();
    Globals globals = Globals.of(stanzas.globals(dialect), dialect);
    ModeRule mode = new ModeRule(globals, stanzas.globals(dialect), lines);
    ShutRule shut = new ShutRule(globals, lines);
    VlanRule vlan = new VlanRule(globals);
    FastStartRule fastStart = new FastStartRule(globals);
    GuardRule guard = new GuardRule(globals);
    PlainRule plain = new PlainRule(globals, lines.keySet());
    TreePortRule trees = new TreePortRule(tree.mode());
    NavigableMap<PortName, PortDraft> drafts = new TreeMap<>();
    Map<Setting<?>, Setting<?>> shared = new HashMap<>();
    lines.forEach(
        (name, own) -> {
          PortDraft draft =
              new PortDraft(name, stanzas.header(name), own, AllowedList.of(own, dialect), shared);
          draft.put(Keys.MODE, mode.mode(name, own));
          draft.put(Keys.NEGOTIATE, mode.negotiate(draft.get(Keys.MODE), own));
          draft.put(Keys.ASKS_FOR_TRUNK, mode.asks(draft.get(Keys.MODE), own));
          shut.apply(draft);
          vlan.apply(draft);
          fastStart.apply(draft);
          guard.apply(draft);
          plain.apply(draft);
          trees.apply(draft);
          drafts.put(name, draft);
        });
    return drafts;
  }

  /** Why ports may exist of which the text says nothing. */
  private static Optional<String> incomplete(SwitchText text, Stanzas stanzas) {
    if (text.script()) {
      return Optional.of(SwitchTexts.SCRIPT);
    }
    if (text.truncation().isPresent()) {
      return text.truncation().map(SwitchTexts::breaksOff);
    }
    return stanzas.doubtfulHeaders().isEmpty()
        ? Optional.empty()
        : Optional.of("an interface header names no clear port");
  }

  /** Says whether a statement tells something of a switch; a header of another block does not. */
  private static boolean isKnown(Statement statement) {
    return statement.command() instanceof PortCommand
        || (statement.command() instanceof SwitchCommand
            && !(statement.command() instanceof SwitchCommand.OtherBlock));
  }

  private static Setting<String> hostname(Lines others) {
    return others
        .last(Matter.HOSTNAME, SwitchCommand.Hostname.class)
        .operand(SwitchCommand.Hostname::name, Setting.absent());
  }

  private static Setting<Boolean> routing(Lines others, Dialect dialect) {
    Truth table = dialect.defaults().routing();
    Setting<Boolean> fallback =
        table == Truth.UNKNOWN
            ? dialect.differs("routing between VLANs")
            : dialect.fact(
                table == Truth.YES,
                table == Truth.YES ? "the switch routes" : "the switch does not route");
    return others.last(Matter.ROUTING, SwitchCommand.IpRouting.class).flag(fallback);
  }
}
