package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.Link;
import plumbline.fabric.Cable;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.fabric.LinkEnd;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;

/**
 * A link between two switches of the design whose ends were both read.
 *
 * @param link the link with what passes it
 * @param first its first end
 * @param second its second end
 * @param besides the links that share a bundle with it
 */
public record LinkCase(FabricLink link, PortCase first, PortCase second, List<FabricLink> besides) {
  /** Copies the list. */
  public LinkCase {
    besides = List.copyOf(besides);
  }

  /**
   * Every link of which both ends have settings, in the order of the design.
   *
   * @param switches the switches whose configs were read, by name
   */
  public static List<LinkCase> of(Fabric fabric, Map<String, SwitchCase> switches) {
    List<LinkCase> all = new ArrayList<>();
    for (FabricLink link : fabric.links()) {
      Optional<PortCase> first = end(link.first(), switches);
      Optional<PortCase> second = end(link.second(), switches);
      if (first.isPresent() && second.isPresent()) {
        all.add(new LinkCase(link, first.get(), second.get(), besides(fabric, link)));
      }
    }
    return all;
  }

  private static List<FabricLink> besides(Fabric fabric, FabricLink link) {
    List<DesignPort> shared =
        link.ends().stream().filter(LinkEnd::shared).map(LinkEnd::port).toList();
    return shared.isEmpty()
        ? List.of()
        : fabric.links().stream()
            .filter(other -> !other.equals(link))
            .filter(other -> other.ends().stream().map(LinkEnd::port).anyMatch(shared::contains))
            .toList();
  }

  private static Optional<PortCase> end(LinkEnd end, Map<String, SwitchCase> switches) {
    return Optional.ofNullable(switches.get(end.port().switchName()))
        .flatMap(at -> at.caseOf(end.port()))
        .filter(port -> port.settings().isPresent());
  }

  /** The link in the design. */
  Link design() {
    return link.design();
  }

  /** Both ends, named after the link. */
  TwoEnds ends() {
    return new TwoEnds(first, second, Optional.empty(), link.design().at());
  }

  /**
   * The ports at both ends of each cable: the ends themselves, or the members that the design
   * names, where both have settings.
   */
  List<TwoEnds> cables() {
    if (link.design().members().isEmpty()) {
      return List.of(ends());
    }
    List<TwoEnds> all = new ArrayList<>();
    for (var member : link.design().members()) {
      Optional<PortCase> one = first.at().caseOf(member.first());
      Optional<PortCase> other = member.second().flatMap(second.at()::caseOf);
      if (one.filter(port -> port.settings().isPresent()).isPresent()
          && other.filter(port -> port.settings().isPresent()).isPresent()) {
        all.add(new TwoEnds(one.get(), other.get(), Optional.empty(), link.design().at()));
      }
    }
    return all;
  }

  /**
   * What is left of the bundle that the link is, or is a part of; empty where the design names no
   * members.
   */
  Optional<Reserve> reserve() {
    if (link.design().members().isEmpty()) {
      return Optional.empty();
    }
    List<LinkEnd> ends =
        link.ends().stream().filter(end -> besides.isEmpty() || end.shared()).toList();
    int needed =
        ends.stream()
            .flatMap(end -> end.settings().stream())
            .mapToInt(Reserve::needed)
            .max()
            .orElse(1);
    List<Truth> cables =
        Stream.concat(Stream.of(link), besides.stream())
            .flatMap(one -> one.cables().stream())
            .map(Cable::up)
            .toList();
    PortCase named = ends.get(0).equals(link.first()) ? first : second;
    return Optional.of(
        new Reserve(
            TwoEnds.name(named),
            cables.stream().filter(up -> up == Truth.YES).count(),
            cables.stream().filter(up -> up != Truth.NO).count(),
            cables.size(),
            needed));
  }

  /**
   * The mode that an end settles on with the other one; undecided where the text, or a mode of
   * another kind, leaves it open.
   */
  Setting<PortMode> mode(PortCase end) {
    Setting<PortMode> own = end.get(Keys.MODE);
    LinkEnd here = end.equals(first) ? link.first() : link.second();
    LinkEnd there = end.equals(first) ? link.second() : link.first();
    Optional<PortMode> settled =
        here.modeWith(there).filter(mode -> mode != PortMode.OTHER && mode != PortMode.NEGOTIATED);
    if (!own.isDecided()) {
      return own;
    }
    boolean aboveRouter = (end.equals(first) ? second : first).get(Keys.MODE).is(PortMode.ROUTED);
    if (own.is(PortMode.NEGOTIATED) && aboveRouter) {
      // a routed port does not negotiate, and towards what does not a port falls back to access
      return own.map(any -> PortMode.ACCESS);
    }
    return settled
        .<Setting<PortMode>>map(mode -> own.map(any -> mode))
        .orElseGet(
            () ->
                new Setting.Unknown<>(
                    "what the two ends settle on cannot be told", own.evidence()));
  }

  /** Whether both ends are for certain in this mode, or settle on it. */
  boolean bothIn(PortMode mode) {
    return mode(first).is(mode) && mode(second).is(mode);
  }
}
