package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.design.DesignPort;
import plumbline.design.DesignPort.Place;
import plumbline.design.RoleKeys;
import plumbline.design.RoleKeys.BundleWish;
import plumbline.design.Wanted;
import plumbline.effective.PortSettings;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Bundle;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.yaml.Position;

/**
 * A port in a bundle where none is designed, in another one, or in none where it belongs in one.
 */
final class BundleDiffers implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "bundle-differs",
          Group.PORT,
          Severity.WEAKENS,
          "a port is bundled otherwise than its role or its link says",
          "IEEE 802.1AX; common practice",
          Set.of("bundle", "links.members in their bundle"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    if (port.isSpare() || port.settings().isEmpty()) {
      return;
    }
    Optional<Wanted<BundleWish>> wish = port.wish(RoleKeys.BUNDLE);
    if (port.port().place() == Place.MEMBER) {
      port.designedBundle()
          .map(DesignPort::port)
          .filter(bundle -> !isMissing(port, bundle))
          .ifPresent(bundle -> compare(port, wish, Optional.of(bundle), outcomes));
    } else if (port.port().port().kind().isBundle()) {
      wish.filter(one -> one.value() != BundleWish.NONE && !hasDesignedMembers(port))
          .ifPresent(one -> bundle(port, one, outcomes));
    } else {
      wish.ifPresent(one -> compare(port, Optional.of(one), Optional.empty(), outcomes));
    }
  }

  /** Where the design lists the members, each is asked at its own place. */
  private static boolean hasDesignedMembers(PortCase port) {
    return port.design().links().stream()
        .filter(link -> !link.members().isEmpty())
        .anyMatch(
            link ->
                link.first().equals(port.port())
                    || link.second().filter(port.port()::equals).isPresent());
  }

  /** A bundle that is not there at all is one finding, not one more at each of its members. */
  private static boolean isMissing(PortCase port, PortName bundle) {
    Setting<Bundle> joined = port.get(Keys.BUNDLE);
    return joined.isDecided()
        && joined.value().isEmpty()
        && port.at().settings().isPortAbsent(bundle) == Truth.YES
        && port.at().settings().membersOf(bundle).isEmpty();
  }

  private static void compare(
      PortCase port,
      Optional<Wanted<BundleWish>> wish,
      Optional<PortName> bundle,
      Outcomes outcomes) {
    Setting<Bundle> joined = port.get(Keys.BUNDLE);
    Optional<BundleWish> how = wish.map(Wanted::value);
    String designed = designed(port, how, bundle);
    boolean rightBundle = isIn(joined, bundle);
    Position at =
        wish.map(Wanted::at).filter(any -> rightBundle).orElseGet(() -> place(port, wish));
    if (!joined.isDecided()) {
      outcomes.add(port.undecided(joined, designed, at));
    } else if (rightBundle && fits(joined, how)) {
      outcomes.conforms(port.subject());
    } else {
      outcomes.add(
          Candidate.of(
              port.subject(),
              designed,
              BundleWords.found(joined),
              consequence(port, how, bundle, joined),
              port.proofs(joined),
              Optional.of(at)));
    }
  }

  private static Position place(PortCase port, Optional<Wanted<BundleWish>> wish) {
    boolean member = port.port().place() == Place.MEMBER;
    return wish.map(Wanted::at).filter(any -> !member).orElse(port.port().at());
  }

  private static boolean isIn(Setting<Bundle> joined, Optional<PortName> bundle) {
    return bundle.isEmpty()
        || joined.value().filter(one -> one.id() == bundle.get().lastNumber()).isPresent();
  }

  private static boolean fits(Setting<Bundle> joined, Optional<BundleWish> how) {
    return how.isEmpty()
        || switch (how.get()) {
          case NONE -> joined.value().isEmpty();
          case LACP -> joined.value().filter(one -> one.mode().isLacp()).isPresent();
          case STATIC -> joined.value().filter(one -> one.mode() == Bundle.Mode.STATIC).isPresent();
        };
  }

  private static String designed(
      PortCase port, Optional<BundleWish> how, Optional<PortName> bundle) {
    if (bundle.isEmpty()) {
      return BundleWords.designed(how.orElse(BundleWish.NONE));
    }
    return "member of "
        + port.at().settings().fullName(bundle.get())
        + how.map(one -> one == BundleWish.LACP ? ", with LACP" : ", static").orElse("");
  }

  private static String consequence(
      PortCase port, Optional<BundleWish> how, Optional<PortName> bundle, Setting<Bundle> joined) {
    if (joined.value().isEmpty()) {
      return BundleWords.alone(port, how, bundle);
    }
    Bundle found = joined.value().get();
    if (bundle.isPresent() && found.id() != bundle.get().lastNumber()) {
      return BundleWords.elsewhere(port, bundle.get(), found);
    }
    return how.filter(one -> one != BundleWish.NONE)
        .map(one -> BundleWords.clash(port, one, found.mode()))
        .orElseGet(() -> BundleWords.unwanted(port, found));
  }

  /** A bundle whose members the design does not list: those that the config puts into it. */
  private static void bundle(PortCase port, Wanted<BundleWish> wish, Outcomes outcomes) {
    if (port.fromMember()) {
      compare(port, Optional.of(wish), Optional.empty(), outcomes);
      return;
    }
    List<PortSettings> members = port.at().settings().membersOf(port.port().port());
    List<PortSettings> wrong =
        members.stream()
            .filter(one -> !fits(one.get(Keys.BUNDLE), Optional.of(wish.value())))
            .toList();
    if (!wrong.isEmpty()) {
      Setting<?>[] lines =
          wrong.stream().map(one -> one.get(Keys.BUNDLE)).toArray(Setting<?>[]::new);
      Bundle first = wrong.get(0).get(Keys.BUNDLE).value().orElseThrow();
      outcomes.add(
          Candidate.of(
              port.subject(),
              BundleWords.designed(wish.value()),
              wrong.stream()
                  .map(one -> one.fullName() + ": " + BundleWords.found(one.get(Keys.BUNDLE)))
                  .collect(Collectors.joining("; ")),
              BundleWords.clash(port, wish.value(), first.mode()),
              port.proofs(lines),
              Optional.of(wish.at())));
    } else if (members.isEmpty()) {
      outcomes.add(withoutMember(port, wish));
    } else {
      outcomes.conforms(port.subject());
    }
  }

  private static Outcome withoutMember(PortCase port, Wanted<BundleWish> wish) {
    String designed = BundleWords.designed(wish.value());
    Optional<Setting<Bundle>> open =
        port.at().settings().ports().values().stream()
            .map(one -> one.get(Keys.BUNDLE))
            .filter(joined -> !joined.isDecided())
            .findFirst();
    if (open.isPresent()) {
      return port.undecided(open.get(), designed, wish.at());
    }
    Optional<String> why = port.at().settings().whyPortsMayBeMissing();
    if (why.isPresent()) {
      return Undecided.of(
          port.subject(),
          port.at().listCause(),
          why.get(),
          designed,
          port.proofs(),
          Optional.of(wish.at()));
    }
    return Candidate.of(
            port.subject(),
            designed,
            "no port joins the bundle",
            "Nothing passes to and from " + Words.behind(port.port()) + ": the bundle has no link.",
            port.proofs(),
            Optional.of(wish.at()))
        .at(Severity.BREAKS);
  }
}
