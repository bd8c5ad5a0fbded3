package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Place;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A trunk's untagged frames that share a VLAN with hosts. */
final class NativeVlanInUse implements PortRule, SwitchRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "native-vlan-in-use",
          Group.PORT,
          Severity.WEAKENS,
          "the native VLAN of a trunk is one in which hosts live",
          "V-206672; V-206669 where VLAN 1 is declared unused; common practice",
          Set.of("native", "vlans.unused"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<DesignVlan>> wish = port.wish(RoleKeys.NATIVE);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    Setting<VlanId> setting = port.get(Keys.NATIVE_VLAN);
    if (setting.value().isEmpty()) {
      // native-vlan-differs says that the text leaves this open: one gap, one finding
      return;
    }
    Optional<DesignVlan> lived = setting.value().flatMap(port.design()::vlan);
    if (lived.isEmpty()
        || lived.get().unused()
        || lived.get().id().equals(wish.get().value().id())) {
      outcomes.conforms(port.subject());
      return;
    }
    DesignVlan found = lived.get();
    outcomes.add(
        Candidate.of(
                port.subject(),
                "native VLAN " + wish.get().value(),
                "native VLAN " + found + ", in which hosts live",
                consequence(port, found),
                port.proofs(setting),
                Optional.of(wish.get().at()))
            .about(VlanSet.of(wish.get().value().id().number(), found.id().number()))
            .boundTo(PortMode.TRUNK));
  }

  private static String consequence(PortCase port, DesignVlan found) {
    String untagged = "Untagged frames of " + Words.behind(port.port());
    String promised =
        port.port()
                .role()
                .value(RoleKeys.TAGGED)
                .filter(set -> set.contains(found.id()))
                .isPresent()
            ? " The design promises " + found + " tagged here, and it leaves untagged."
            : "";
    if (port.tagsNative()) {
      return untagged
          + " are dropped, as native tagging is on; without it they land in "
          + found
          + ".";
    }
    if (port.bars(found.id())) {
      return untagged
          + " are dropped, as "
          + found
          + " is not in the allowed list; once it is allowed, they land among its hosts.";
    }
    Optional<String> idle = port.at().whyIdle(found.id());
    if (idle.isPresent()) {
      return untagged
          + " are dropped, as "
          + found
          + " "
          + idle.get()
          + "; once it is in use here, they land among its hosts.";
    }
    return untagged
        + " land among the hosts of "
        + found
        + "; a host there can send double-tagged frames into other VLANs."
        + promised;
  }

  /** Looks for ports and addresses in VLANs that the design keeps empty. */
  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    List<PortCase> trunks = device.ports().stream().filter(NativeVlanInUse::isOpenTrunk).toList();
    for (DesignVlan vlan : device.design().vlans().values()) {
      List<Place> ends =
          trunks.stream()
              .filter(trunk -> trunk.get(Keys.NATIVE_VLAN).is(vlan.id()))
              .filter(trunk -> !trunk.bars(vlan.id()) && !trunk.tagsNative())
              .map(trunk -> trunk.subject().place().orElseThrow())
              .toList();
      if (vlan.unused()) {
        List<Occupants.Occupant> occupants = Occupants.of(device, vlan);
        for (Occupants.Occupant occupant : occupants) {
          outcomes.add(
              occupant.open().isPresent()
                  ? open(device, vlan, occupant)
                  : occupied(device, vlan, occupant, ends));
        }
        if (occupants.isEmpty()) {
          outcomes.conforms(device.subject());
        }
      }
    }
  }

  private static Candidate occupied(
      SwitchCase device, DesignVlan vlan, Occupants.Occupant occupant, List<Place> trunks) {
    return Candidate.of(
            occupant.subject(),
            "no host in " + vlan,
            occupant.found(),
            device
                .whyIdle(vlan.id())
                .map(idle -> later(vlan, idle))
                .orElseGet(() -> consequence(vlan, occupant, trunks)),
            occupant.proofs(),
            Optional.of(vlan.at()))
        .about(VlanSet.of(vlan.id().number()))
        .beside(trunks);
  }

  private static String later(DesignVlan vlan, String idle) {
    return "No frame of "
        + vlan
        + " passes now, as it "
        + idle
        + "; once it is in use here, untagged frames of a trunk meet what lives in it.";
  }

  private static String consequence(
      DesignVlan vlan, Occupants.Occupant occupant, List<Place> trunks) {
    if (trunks.isEmpty()) {
      return "The design keeps "
          + vlan
          + " empty, so that untagged frames of a trunk meet nobody; here somebody is.";
    }
    String untagged =
        "the untagged frames of "
            + Words.list(trunks.stream().map(end -> end.port().orElseThrow()).toList());
    boolean isPort =
        occupant
            .subject()
            .port()
            .filter(port -> port.kind() != PortKind.VLAN && port.sub().isEmpty())
            .isPresent();
    return isPort
        ? "What is connected there shares "
            + vlan
            + " with "
            + untagged
            + " and can send double-tagged frames into other VLANs."
        : "The switch itself can be reached by " + untagged + ".";
  }

  private static Outcome open(SwitchCase device, DesignVlan vlan, Occupants.Occupant occupant) {
    Setting<?> open = occupant.open().orElseThrow();
    return Outcome.Undecided.of(
        occupant.subject(),
        device.cause(open),
        open.reason().orElse("the text does not tell"),
        "no host in " + vlan,
        occupant.proofs(),
        Optional.of(vlan.at()));
  }

  private static boolean isOpenTrunk(PortCase port) {
    return port.isSwitching()
        && port.settings().isPresent()
        && port.get(Keys.MODE).is(PortMode.TRUNK)
        && !port.get(Keys.SHUT).is(true);
  }
}
