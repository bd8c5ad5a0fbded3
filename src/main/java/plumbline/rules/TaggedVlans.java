package plumbline.rules;

import java.util.Optional;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

/** What the rules about the tagged VLANs of a trunk share: when they are asked, and their gaps. */
abstract class TaggedVlans implements PortRule {
  @Override
  public final void check(PortCase port, Outcomes outcomes) {
    Optional<Wanted<VlanSet>> wish = port.wish(RoleKeys.TAGGED);
    if (wish.isEmpty() || !port.isSwitching() || port.settings().isEmpty()) {
      return;
    }
    Setting<VlanSet> allowed = port.get(Keys.ALLOWED);
    outcomes.add(
        allowed
            .value()
            .map(list -> judge(port, wish.get(), allowed, Trunk.of(port, list)))
            .orElseGet(() -> open(port, allowed, wish.get())));
  }

  /** What the rule says of a trunk whose allowed list is known. */
  abstract Outcome judge(
      PortCase port, Wanted<VlanSet> wish, Setting<VlanSet> allowed, Trunk trunk);

  /** What the design says, as the object of a sentence. */
  abstract String designed(PortCase port, VlanSet wanted);

  /** The outcome of a setting that the text leaves open. */
  final Outcome open(PortCase port, Setting<?> setting, Wanted<VlanSet> wish) {
    return port.undecided(setting, designed(port, wish.value()), wish.at()).boundTo(PortMode.TRUNK);
  }
}
