package plumbline.promise;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.Service;
import plumbline.fabric.Failure;
import plumbline.finding.Affected.Loss;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** What faults take from services. */
final class ServiceEffects {
  private final ServiceSide now;
  private final ServiceSide wanted;
  private final Map<VlanId, Blame> blames;

  private ServiceEffects(ServiceSide now, ServiceSide wanted, Map<VlanId, Blame> blames) {
    this.now = now;
    this.wanted = wanted;
    this.blames = blames;
  }

  /** What is taken from all services, in design order. */
  static List<Effect> of(Promises found, Promises designed, Map<VlanId, Blame> blames) {
    List<Effect> effects = new ArrayList<>();
    for (Service service : found.design().services().values()) {
      ServiceSide now = new ServiceSide(found, service);
      new ServiceEffects(now, now.in(designed), blames).ask(effects);
    }
    return effects;
  }

  private void ask(List<Effect> effects) {
    if (now.works(VlanSide.NOTHING) == Truth.NO) {
      ask(effects, VlanSide.NOTHING);
      return;
    }
    now.suspects().forEach(failure -> ask(effects, failure));
  }

  private void ask(List<Effect> effects, Failure failure) {
    if (now.works(failure) != Truth.NO || wanted.works(failure) != Truth.YES) {
      return;
    }
    Set<Fault> faults = new LinkedHashSet<>();
    for (int at = 0; at < now.members().size(); at++) {
      ServiceSide.Part part = now.members().get(at);
      Blame blame = blames.get(part.side().vlan());
      if (blame != null
          && part.holds(failure) != Truth.YES
          && wanted.members().get(at).holds(failure) == Truth.YES) {
        faults.addAll(blame.of(part.member(), part.aim(), failure));
      }
    }
    effects.add(
        new Effect(
            Loss.SERVICE,
            now.service().name(),
            Optional.empty(),
            failure.equals(VlanSide.NOTHING) ? Optional.empty() : Optional.of(failure),
            faults));
  }
}
