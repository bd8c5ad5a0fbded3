package plumbline.inspect;

import static java.util.stream.Collectors.joining;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignPort;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.effective.VlanDatabase;
import plumbline.port.PortKind;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.text.Display;
import plumbline.text.Page;
import plumbline.text.Page.Ink;

/** Effective settings as people read them: a head for each switch, a block for each port. */
public final class SettingsText {
  private static final int LABEL = 17;
  private static final int VALUE = 20;
  private static final Set<Key<?>> ALWAYS = Set.of(Keys.MODE, Keys.SHUT);
  private static final Set<Key<?>> SWITCHED =
      Set.of(Keys.CARRIED, Keys.FAST_START, Keys.BPDU_GUARD);
  private static final Set<Key<?>> TRUNK = Set.of(Keys.NATIVE_VLAN, Keys.ALLOWED);

  /** What says nothing of a port that does not bridge. */
  private static final Set<Key<?>> BRIDGING =
      Set.of(
          Keys.CARRIED,
          Keys.NEGOTIATE,
          Keys.FAST_START,
          Keys.BPDU_GUARD,
          Keys.BPDU_FILTER,
          Keys.ROOT_GUARD,
          Keys.LOOP_GUARD,
          Keys.STP_COST,
          Keys.STP_PORT_PRIORITY,
          Keys.LINK_TYPE);

  /** What VLAN interfaces cannot have. */
  private static final Set<Key<?>> CABLED =
      Set.of(
          Keys.ACCESS_VLAN,
          Keys.VOICE_VLAN,
          Keys.NATIVE_VLAN,
          Keys.NATIVE_TAGGING,
          Keys.ALLOWED,
          Keys.UDLD,
          Keys.BUNDLE,
          Keys.MIN_LINKS,
          Keys.SUSPENDED,
          Keys.MULTI_CHASSIS,
          Keys.SPEED,
          Keys.DUPLEX,
          Keys.STORM_CONTROL,
          Keys.PORT_SECURITY,
          Keys.SNOOPING_TRUST,
          Keys.INSPECTION_TRUST);

  private final Page page;

  private SettingsText(Page page) {
    this.page = page;
  }

  /**
   * Writes the switches one after the other.
   *
   * @param look how wide it is, and whether differences are coloured; they are spelled out anyway
   * @return lines of at most that width, each ending in a line feed
   */
  public static String of(List<SwitchView> switches, Page.Look look) {
    Page page = new Page(look);
    SettingsText text = new SettingsText(page);
    for (SwitchView view : switches) {
      text.write(view);
      page.gap();
    }
    page.paragraph(
        "fast-start: what IEEE 802.1Q calls an edge port; it forwards at once, because no bridge"
            + " is behind it.");
    return page.toString();
  }

  private void write(SwitchView view) {
    SwitchSettings settings = view.settings();
    page.heading(view.name());
    head("config", settings.file() + ", " + settings.lines() + " lines");
    head("defaults", settings.dialect() + " dialect: " + settings.dialectReason());
    if (settings.script()) {
      head("script", "a pasted script: what it does not say is not known");
    }
    settings
        .truncation()
        .ifPresent(cut -> head("cut short", "from line " + cut.line() + " on: " + cut.why()));
    if (!view.full()) {
      wholeSwitch(view);
    }
    if (!view.designed().isEmpty()) {
      head("beside each", "= as designed, ! differs, ? undecided, | the design says nothing");
    }
    for (PortSettings port : view.ports()) {
      port(view, port);
    }
  }

  private void wholeSwitch(SwitchView view) {
    SwitchSettings settings = view.settings();
    VlanDatabase vlans = settings.vlans();
    head(
        "VLAN list",
        (vlans.known() ? "whole list in this text: " : "not known to be whole: ") + vlans.why());
    head("VLANs", vlans.entries().values().stream().map(SwitchWords::vlan).collect(joining(", ")));
    head("spanning tree", summary(settings.tree().mode()));
    head("routing", summary(settings.routing()));
    for (Gateway gateway : settings.gateways()) {
      head("gateway", SwitchWords.gateway(settings, gateway));
    }
    settings
        .doubtfulHeaders()
        .forEach(
            line ->
                head(
                    "doubtful",
                    line.line()
                        + ": "
                        + line.text()
                        + " (names no clear port: one that is absent here may be it)"));
    head("not understood", SwitchWords.unknown(settings));
    if (!view.unopened().isEmpty()) {
      head(
          "not in the text",
          view.unopened().stream().map(settings::fullName).collect(joining(", "))
              + " (the design covers them)");
    }
  }

  private void head(String label, String words) {
    page.hanging("  " + Display.pad(label, LABEL), words);
  }

  private static String summary(Setting<?> setting) {
    return Values.words(setting) + " (" + Values.evidence(setting) + ")";
  }

  private void port(SwitchView view, PortSettings port) {
    Optional<DesignPort> designed = Optional.ofNullable(view.designed().get(port.name()));
    String subject = designed.map(at -> at.subject() + " (" + at.role().name() + ")").orElse("");
    page.gap().marked(Ink.STRONG, "  ", port.fullName() + "  ", subject);
    for (Key<?> key : Keys.ALL) {
      Optional<Wish> wish = view.wish(port, key);
      if (wish.isPresent() || (applies(port, key) && (view.full() || says(port, key)))) {
        setting(view.settings(), port, key, wish);
      }
    }
    if (view.full()) {
      view.settings().gateways().stream()
          .filter(gateway -> gateway.port().equals(port.name()))
          .forEach(this::gatewayRows);
    }
    port.unknown()
        .forEach(line -> row("|", "not understood", "", List.of(SwitchWords.unknown(line))));
  }

  /** What makes an interface a gateway of its VLAN. */
  private void gatewayRows(Gateway gateway) {
    row("|", "address", SwitchWords.addresses(gateway), Values.reasons(gateway.addresses()));
    for (Gateway.Group group : gateway.groups()) {
      row(
          "|",
          group.kind() + " " + group.id(),
          Values.words(group.address()),
          Values.reasons(group.address()));
      row(
          "|",
          group.kind() + " priority",
          Values.words(group.priority()),
          Values.reasons(group.priority()));
    }
    row("|", "packet filter", Values.words(gateway.filtered()), Values.reasons(gateway.filtered()));
    row("|", "gateway works", Values.words(gateway.works()), Values.reasons(gateway.works()));
  }

  /** Whether a setting can mean anything on such a port. */
  private static boolean applies(PortSettings port, Key<?> key) {
    if (port.name().kind() == PortKind.VLAN && CABLED.contains(key)) {
      return false;
    }
    return !BRIDGING.contains(key) || !port.get(Keys.MODE).is(PortMode.ROUTED);
  }

  /** Whether a setting tells something about this port that its reader does not know anyway. */
  private static boolean says(PortSettings port, Key<?> key) {
    Setting<?> setting = port.get(key);
    if (ALWAYS.contains(key) || Values.isFromText(setting)) {
      return true;
    }
    if (port.name().kind() == PortKind.VLAN || port.get(Keys.MODE).is(PortMode.ROUTED)) {
      return false;
    }
    boolean trunks = !port.get(Keys.MODE).is(PortMode.ACCESS);
    boolean accesses = !port.get(Keys.MODE).is(PortMode.TRUNK);
    return !setting.isDecided()
        || SWITCHED.contains(key)
        || (trunks && TRUNK.contains(key))
        || (accesses && key.equals(Keys.ACCESS_VLAN));
  }

  private void setting(
      SwitchSettings settings, PortSettings port, Key<?> key, Optional<Wish> wish) {
    String gutter = wish.map(Wish::same).map(SettingsText::gutter).orElse("|");
    row(gutter, key.name(), SwitchWords.value(settings, port, key), Values.reasons(port, key));
    wish.filter(designed -> designed.same() != Truth.YES).ifPresent(this::differs);
  }

  /** The plumb line beside a setting shows how it hangs. */
  private static String gutter(Truth same) {
    return switch (same) {
      case YES -> "=";
      case NO -> "!";
      case UNKNOWN -> "?";
    };
  }

  private void differs(Wish wish) {
    boolean no = wish.same() == Truth.NO;
    page.marked(
        no ? Ink.ALARM : Ink.DOUBT,
        "  " + gutter(wish.same()) + " " + " ".repeat(LABEL),
        no ? "DIFFERS  " : "UNDECIDED  ",
        "designed: " + wish.words() + " (" + wish.at().file() + ":" + wish.at().line() + ")");
  }

  /** Label, value and evidence side by side; a value too wide for its column stands alone. */
  private void row(String gutter, String label, String value, List<String> evidence) {
    String first = "  " + gutter + " " + Display.pad(label, LABEL);
    String further = "  " + gutter + " " + " ".repeat(LABEL);
    String beside = further + " ".repeat(VALUE);
    String clean = Display.clean(value);
    String margin = first + Display.pad(clean, VALUE);
    if (evidence.isEmpty() || Display.width(clean) >= VALUE) {
      page.hanging(first, further, clean);
      margin = beside;
    }
    for (String reason : evidence) {
      page.hanging(margin, beside, reason);
      margin = beside;
    }
  }
}
