package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Place;
import plumbline.finding.Severity;
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
          "V-206672; common practice",
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
                "Untagged frames of "
                    + Words.behind(port.port())
                    + " land among the hosts of "
                    + found
                    + "; a host there can send double-tagged frames into other VLANs.",
                port.proofs(setting),
                Optional.of(wish.get().at()))
            .about(VlanSet.of(wish.get().value().id().number(), found.id().number()))
            .boundTo(PortMode.TRUNK));
  }

  /** Looks for ports and addresses in unused VLANs that are the native one of a designed trunk. */
  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    List<PortCase> trunks = device.ports().stream().filter(NativeVlanInUse::isOpenTrunk).toList();
    for (DesignVlan vlan : device.design().vlans().values()) {
      List<Place> ends =
          trunks.stream()
              .filter(trunk -> trunk.get(Keys.NATIVE_VLAN).is(vlan.id()))
              .map(trunk -> trunk.subject().place().orElseThrow())
              .toList();
      if (vlan.unused() && !ends.isEmpty()) {
        Occupants.of(device, vlan)
            .forEach(
                occupant ->
                    outcomes.add(
                        occupant.open().isPresent()
                            ? open(device, vlan, occupant)
                            : occupied(vlan, occupant, ends)));
      }
    }
  }

  private static Candidate occupied(
      DesignVlan vlan, Occupants.Occupant occupant, List<Place> trunks) {
    return Candidate.of(
            occupant.subject(),
            "no host in " + vlan,
            occupant.found(),
            "What is connected there shares "
                + vlan
                + " with the untagged frames of "
                + Words.list(trunks.stream().map(end -> end.port().orElseThrow()).toList())
                + " and can send double-tagged frames into other VLANs.",
            occupant.proofs(),
            Optional.of(vlan.at()))
        .about(VlanSet.of(vlan.id().number()))
        .beside(trunks);
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
        && port.wish(RoleKeys.NATIVE).isPresent()
        && port.settings().isPresent()
        && port.get(Keys.MODE).is(PortMode.TRUNK)
        && !port.get(Keys.SHUT).is(true);
  }
}
