package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.RoleKeys;
import plumbline.design.RoleKeys.BundleWish;
import plumbline.design.Wanted;
import plumbline.fabric.Bundling;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Bundle;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** A link whose ends bundle in ways that do not fit, or of which only one end bundles. */
final class LinkBundleClash implements LinkRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "link-bundle-clash",
          Group.LINK,
          Severity.WEAKENS,
          "the two ends of a link cannot form the bundle that they are in",
          "IEEE 802.1AX (LACP activity); common practice",
          Set.of("links.ends against each other"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(LinkCase link, Outcomes outcomes) {
    Comparison comparison = new Comparison(link.ends(), outcomes);
    List<TwoEnds> cables = cables(link);
    List<TwoEnds> clashing = cables.stream().filter(LinkBundleClash::clashes).toList();
    Optional<PortCase> open =
        cables.stream()
            .flatMap(cable -> Stream.of(cable.first(), cable.second()))
            .filter(end -> !end.get(Keys.BUNDLE).isDecided())
            .findFirst();
    if (!clashing.isEmpty()) {
      clashing.forEach(cable -> comparison.tell(candidate(link, cable, clashing.size())));
    } else if (open.isPresent()) {
      comparison.leaveOpen(
          open.get(),
          open.get().get(Keys.BUNDLE),
          designed(link),
          open.get().wish(RoleKeys.BUNDLE).map(Wanted::at).orElse(link.design().at()));
    } else if (!cables.isEmpty()) {
      comparison.alike();
    }
    comparison.close();
  }

  /** Of a bundle whose members the design does not name, the first of each end stands for all. */
  private static List<TwoEnds> cables(LinkCase link) {
    if (!link.link().design().members().isEmpty()) {
      return link.cables();
    }
    Optional<PortCase> first = member(link.first());
    Optional<PortCase> second = member(link.second());
    return first.isPresent() && second.isPresent()
        ? List.of(
            new TwoEnds(first.get(), second.get(), Optional.empty(), link.link().design().at()))
        : List.of();
  }

  private static Optional<PortCase> member(PortCase end) {
    DesignPort port = end.port();
    return port.port().kind().isBundle()
        ? end.at().settings().membersOf(port.port()).stream()
            .findFirst()
            .map(member -> new PortCase(end.at(), port, Optional.of(member), true))
        : Optional.of(end);
  }

  private static boolean clashes(TwoEnds cable) {
    Setting<Bundle> one = cable.first().get(Keys.BUNDLE);
    Setting<Bundle> other = cable.second().get(Keys.BUNDLE);
    if (one.value().isPresent() && other.value().isPresent()) {
      return !Bundling.forms(one.value().get().mode(), other.value().get().mode());
    }
    return one.isDecided()
        && other.isDecided()
        && (one.value().isPresent() || other.value().isPresent());
  }

  private static Candidate candidate(LinkCase link, TwoEnds cable, int clashing) {
    Optional<Reserve> reserve = link.reserve();
    TwoEnds ends = link.ends();
    boolean turned = !departs(cable.first()) && departs(cable.second());
    PortCase end = turned ? ends.second() : ends.first();
    PortCase near = turned ? cable.second() : cable.first();
    PortCase far = turned ? cable.first() : cable.second();
    Candidate candidate =
        Candidate.of(
                ends.subject(end),
                designed(link),
                found(cable),
                consequence(cable, clashing, reserve),
                Comparison.proofs(near, near.get(Keys.BUNDLE), far, far.get(Keys.BUNDLE)),
                Optional.of(end.wish(RoleKeys.BUNDLE).map(Wanted::at).orElse(link.design().at())))
            .beside(ends.beside(end));
    boolean goes = departs(cable.first()) || departs(cable.second());
    return goes
        ? candidate.across(new Across(Set.of(Keys.BUNDLE), places(link, cable), true))
        : candidate;
  }

  /** The ports of the cable; where the design names no members, all that the ends have. */
  private static List<Place> places(LinkCase link, TwoEnds cable) {
    return link.design().members().isEmpty()
        ? link.ends().places()
        : Stream.of(cable.first(), cable.second())
            .flatMap(end -> end.subject().place().stream())
            .toList();
  }

  /** Whether a cable's end is bundled otherwise than its role or its place in a link says. */
  private static boolean departs(PortCase end) {
    Optional<Bundle> joined = end.get(Keys.BUNDLE).value();
    boolean member = end.port().place() == DesignPort.Place.MEMBER;
    Optional<BundleWish> wish = end.wish(RoleKeys.BUNDLE).map(Wanted::value);
    if (wish.isEmpty()) {
      return member && joined.isEmpty();
    }
    return switch (wish.get()) {
      case NONE -> joined.isPresent();
      case LACP -> joined.filter(one -> one.mode().isLacp()).isEmpty();
      case STATIC -> joined.filter(one -> one.mode() == Bundle.Mode.STATIC).isEmpty();
    };
  }

  private static String designed(LinkCase link) {
    return link.first()
            .wish(RoleKeys.BUNDLE)
            .map(Wanted::value)
            .map(BundleWords::designed)
            .orElse("bundle modes that fit")
        + " at both ends";
  }

  private static String found(TwoEnds cable) {
    return BundleWords.found(cable.first().get(Keys.BUNDLE))
        + " at "
        + TwoEnds.name(cable.first())
        + "; "
        + BundleWords.found(cable.second().get(Keys.BUNDLE))
        + " at "
        + TwoEnds.name(cable.second());
  }

  private static String consequence(TwoEnds cable, int clashing, Optional<Reserve> reserve) {
    return why(
            cable, cable.first().get(Keys.BUNDLE).value(), cable.second().get(Keys.BUNDLE).value())
        + reserve.map(left -> remaining(left, clashing)).orElse("");
  }

  private static String remaining(Reserve reserve, int clashing) {
    if (reserve.isUp()) {
      return " The bundle runs on its other cables: "
          + Words.count(clashing, "cable")
          + " of "
          + reserve.all()
          + " "
          + Words.are(clashing)
          + " lost as a reserve.";
    }
    return reserve.isDown() && reserve.left() > 0 ? " Of the bundle, " + reserve.words() : "";
  }

  private static String why(TwoEnds cable, Optional<Bundle> one, Optional<Bundle> other) {
    if (one.isEmpty() || other.isEmpty()) {
      PortCase bundled = one.isPresent() ? cable.first() : cable.second();
      Bundle.Mode mode = one.or(() -> other).orElseThrow().mode();
      return mode == Bundle.Mode.STATIC
          ? "Only "
              + TwoEnds.name(bundled)
              + " takes the cable for part of a bundle: frames that it sends or expects on another"
              + " of its cables are lost, or loop."
          : TwoEnds.name(bundled)
              + " negotiates a bundle and hears no answer: it suspends the port, so that nothing"
              + " crosses, or runs it alone, as the release has it.";
    }
    Bundle.Mode first = one.get().mode();
    Bundle.Mode second = other.get().mode();
    if (first == Bundle.Mode.STATIC || second == Bundle.Mode.STATIC) {
      PortCase fixed = first == Bundle.Mode.STATIC ? cable.first() : cable.second();
      PortCase waits = first == Bundle.Mode.STATIC ? cable.second() : cable.first();
      return TwoEnds.name(waits)
          + " negotiates and hears no answer: it leaves the cable out of its bundle, while "
          + TwoEnds.name(fixed)
          + " sends over it, and those frames are lost.";
    }
    return first.isLacp() == second.isLacp()
        ? "Both ends wait for the other to speak first: the bundle does not form, and the cable is"
            + " suspended, or runs alone, as the release has it."
        : "The ends speak different protocols: the bundle does not form, and the cable is"
            + " suspended, or runs alone, as the release has it.";
  }
}
