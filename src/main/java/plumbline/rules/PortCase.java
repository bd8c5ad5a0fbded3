package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.Link;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.PortSettings;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.yaml.Position;

/**
 * A port that the design covers, on a switch whose config was read.
 *
 * @param at the switch
 * @param port the port in the design
 * @param settings what the config says of it; for a bundle without a stanza what one of its members
 *     says; empty where the text does not open it
 * @param fromMember whether the settings are those of a member, which is then the place of findings
 */
public record PortCase(
    SwitchCase at, DesignPort port, Optional<PortSettings> settings, boolean fromMember) {
  /** The design. */
  public Design design() {
    return at.design();
  }

  /** The port with what is behind it. */
  public Subject subject() {
    String behind = (fromMember ? at.designOf(name()).orElse(port) : port).subject();
    return Subject.ofPort(port.switchName(), fullName(), name(), behind);
  }

  private PortName name() {
    return fromMember ? settings.orElseThrow().name() : port.port();
  }

  /** The port's name in the switch's dialect. */
  public String fullName() {
    return settings
        .map(PortSettings::fullName)
        .orElseGet(() -> at.settings().fullName(port.port()));
  }

  /** The designed members of the bundle that this port is or joins; none for another port. */
  List<PortCase> members() {
    DesignPort bundle = designedBundle().orElse(port);
    return design().links().stream()
        .flatMap(link -> link.membersBeside(bundle).stream())
        .map(member -> new PortCase(at, member, at.settings().port(member.port()), false))
        .toList();
  }

  /** The end of a designed link that this port is a member of. */
  Optional<DesignPort> designedBundle() {
    for (Link link : design().links()) {
      for (Link.Member cable : link.members()) {
        if (cable.first().equals(port)) {
          return Optional.of(link.first());
        }
        if (cable.second().filter(port::equals).isPresent()) {
          return link.second();
        }
      }
    }
    return Optional.empty();
  }

  /** Whether rules about switching ask this port: a member is judged through its bundle. */
  public boolean isSwitching() {
    return port.place() != DesignPort.Place.MEMBER && !isSpare();
  }

  /** Whether the port is set aside for nobody. */
  public boolean isSpare() {
    return port.role().isSpare();
  }

  /** What the role asks under a key. */
  public <T> Optional<Wanted<T>> wish(RoleKey<T> key) {
    return port.role().get(key);
  }

  /**
   * The mode that the role asks for: by name, or because it names a VLAN that only this mode gives
   * an effect: an access or voice VLAN an access port, a native VLAN or tagged VLANs a trunk. A
   * role with keys of both kinds implies none.
   */
  public Optional<Wanted<PortMode>> wishedMode() {
    Optional<Wanted<PortMode>> access =
        implied(PortMode.ACCESS, List.of(RoleKeys.ACCESS, RoleKeys.VOICE));
    Optional<Wanted<PortMode>> trunk =
        implied(PortMode.TRUNK, List.of(RoleKeys.NATIVE, RoleKeys.TAGGED));
    return wish(RoleKeys.MODE)
        .or(
            () ->
                access.isPresent() && trunk.isPresent()
                    ? Optional.empty()
                    : access.or(() -> trunk));
  }

  /** The mode that the role asks for, where the port is in another one for certain. */
  public Optional<PortMode> modeToRepair() {
    Setting<PortMode> found = get(Keys.MODE);
    boolean fixed = found.value().isPresent() && !found.is(PortMode.NEGOTIATED);
    return wishedMode().map(Wanted::value).filter(wanted -> fixed && !found.is(wanted));
  }

  /**
   * The same, for a setting that follows from the wrong mode, or has no say in it: one that would
   * be as it is in the right mode too is a difference of its own.
   */
  Optional<PortMode> modeToRepairFor(Setting<?> setting) {
    return modeToRepair()
        .filter(wanted -> restsOnMode(setting) || get(Keys.MODE).is(PortMode.ROUTED));
  }

  /** Whether the mode is among what a setting rests on. */
  boolean restsOnMode(Setting<?> setting) {
    List<Evidence> mode = get(Keys.MODE).evidence();
    return !mode.isEmpty() && setting.evidence().containsAll(mode);
  }

  /**
   * The gap that a setting leaves, which is the mode's where the mode is open and the setting rests
   * on it.
   */
  Undecided gap(Setting<?> setting, String designed, Position design) {
    Setting<PortMode> mode = get(Keys.MODE);
    boolean openMode = mode.value().isEmpty() || mode.is(PortMode.NEGOTIATED);
    Undecided open = undecided(setting, designed, design);
    Undecided gap = openMode && restsOnMode(setting) ? open.because(Undecided.Cause.MODE) : open;
    return modeToRepairFor(setting).map(gap::boundTo).orElse(gap);
  }

  /**
   * A candidate that the port as a whole does not work. What that takes is worked out VLAN by VLAN;
   * where the role names none, and for a routed port, what is behind has lost its way.
   */
  Candidate withoutWay(Candidate candidate) {
    boolean routed = wishedMode().map(Wanted::value).filter(PortMode.ROUTED::equals).isPresent();
    boolean lost = port.role().neededVlans().isEmpty() && (routed || isOnlyWay());
    return lost ? candidate.at(Severity.BREAKS) : candidate;
  }

  private boolean isOnlyWay() {
    return switch (port.place()) {
      case SHEET -> true;
      case HOST ->
          design().hosts().get(Words.host(port)).pairs().stream()
              .noneMatch(
                  pair -> List.of(pair.first(), pair.second()).contains(Words.hostPort(port)));
      case LINK -> farEnds().isEmpty();
      case MEMBER, GATEWAY -> false;
    };
  }

  /** The end of a link of the design; what is behind a host's port or a sheet's is none. */
  boolean isLinkEnd() {
    return port.place() == DesignPort.Place.LINK;
  }

  /**
   * The other ends of the links that end here: two for a bundle that ends on a multi-chassis pair,
   * none for a link that leaves the design.
   */
  List<DesignPort> farEnds() {
    return design().links().stream()
        .flatMap(
            link ->
                link.first().equals(port)
                    ? link.second().stream()
                    : link.second().filter(port::equals).map(end -> link.first()).stream())
        .toList();
  }

  /**
   * Whether spanning tree, and so fast-start, has a say here: the text opens the port, and it is
   * not routed by design, nor where the design is silent on its mode.
   */
  public boolean mayFastStart() {
    Optional<PortMode> wished = wishedMode().map(Wanted::value);
    return settings.isPresent()
        && wished.or(() -> get(Keys.MODE).value()).filter(PortMode.ROUTED::equals).isEmpty();
  }

  private Optional<Wanted<PortMode>> implied(PortMode mode, List<RoleKey<?>> keys) {
    return keys.stream()
        .<Wanted<?>>flatMap(key -> wish(key).stream())
        .findFirst()
        .map(wanted -> new Wanted<>(mode, wanted.at()));
  }

  /** Evidence of a setting; a default stands behind the line that opens the port. */
  public List<Proof> proofs(Setting<?>... of) {
    List<Evidence> evidence = new ArrayList<>();
    for (Setting<?> setting : of) {
      evidence.addAll(setting.evidence());
    }
    return settings
        .map(open -> at.proofs(open.header(), evidence))
        .orElseGet(() -> at.proofs(evidence));
  }

  /** The outcome of a setting that the text leaves open. */
  public Undecided undecided(Setting<?> setting, String designed, Position design) {
    return Undecided.of(
        subject(),
        at.cause(setting),
        setting.reason().orElse("the text does not tell"),
        designed,
        proofs(setting),
        Optional.of(design));
  }

  /** The setting under a key; only where the text opens the port. */
  public <T> Setting<T> get(Key<T> key) {
    return settings.orElseThrow().get(key);
  }

  /** Whether untagged frames are dropped for certain, because the native VLAN is tagged. */
  boolean tagsNative() {
    return get(Keys.NATIVE_TAGGING).is(true);
  }

  /** Whether the allowed list is known and does not let the VLAN through. */
  boolean bars(VlanId vlan) {
    return get(Keys.ALLOWED).value().filter(allowed -> !allowed.contains(vlan)).isPresent();
  }
}
