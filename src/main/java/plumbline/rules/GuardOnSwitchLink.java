package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Carried;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** A link between switches on which a guard acts against what the link is for. */
final class GuardOnSwitchLink implements PortRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "guard-on-switch-link",
          Group.PORT,
          Severity.WEAKENS,
          "BPDU guard on a link to another switch, or root guard towards the planned root",
          "IEEE 802.1Q restrictedRole; common practice");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(PortCase port, Outcomes outcomes) {
    if (!port.isLinkEnd() || !port.isSwitching() || !port.mayFastStart()) {
      return;
    }
    Setting<Effect> bpdu = port.get(Keys.BPDU_GUARD);
    Setting<Effect> root = port.get(Keys.ROOT_GUARD);
    boolean asksBpdu = asksBpdu(port);
    List<DesignVlan> rootOf = rootOf(port);
    boolean bpduOn = asksBpdu && bpdu.is(Effect.ON);
    boolean rootOn = !rootOf.isEmpty() && root.is(Effect.ON);
    if (bpduOn || rootOn) {
      Candidate guarded = candidate(port, bpduOn, rootOn ? rootOf : List.of());
      boolean byMode = bpduOn && !rootOn;
      outcomes.add(
          port.modeToRepairFor(bpdu).filter(mode -> byMode).map(guarded::boundTo).orElse(guarded));
    } else if (asksBpdu && !bpdu.isDecided()) {
      outcomes.add(port.gap(bpdu, noBpdu(port), port.port().at()));
    } else if (!rootOf.isEmpty() && !root.isDecided()) {
      outcomes.add(port.gap(root, noRoot(port, rootOf), port.port().at()));
    } else if ((asksBpdu || !rootOf.isEmpty()) && port.modeToRepairFor(bpdu).isEmpty()) {
      // off only because of a wrong mode tells nothing of the right one
      outcomes.conforms(port.subject());
    }
  }

  /** What lies outside the design may be guarded against, if the role says so. */
  private static boolean asksBpdu(PortCase port) {
    boolean wanted = port.wish(RoleKeys.BPDU_GUARD).filter(Wanted::value).isPresent();
    return !port.farEnds().isEmpty() || !wanted;
  }

  /**
   * VLANs of which a far end is the planned root and that cross the link, now or by design. In
   * multiple spanning tree the allowed list does not shape the tree: all of them.
   */
  private static List<DesignVlan> rootOf(PortCase port) {
    boolean perVlan = !port.at().settings().tree().mode().is(TreeMode.Mode.MST);
    VlanSet crossing = crossing(port);
    return port.farEnds().stream()
        .map(end -> port.design().switches().get(end.switchName()))
        .flatMap(end -> end.tree().rootOf().stream())
        .map(Wanted::value)
        .filter(vlan -> !perVlan || crossing.contains(vlan.id()))
        .toList();
  }

  private static VlanSet crossing(PortCase port) {
    VlanSet now = port.get(Keys.CARRIED).value().map(Carried::certain).orElse(VlanSet.NONE);
    return port.wish(RoleKeys.TAGGED)
        .map(Wanted::value)
        .orElse(VlanSet.NONE)
        .plus(now)
        .plus(
            VlanSet.of(
                Stream.of(RoleKeys.NATIVE, RoleKeys.ACCESS)
                    .flatMap(key -> port.wish(key).stream())
                    .map(wanted -> wanted.value().id())
                    .toList()));
  }

  private static Candidate candidate(PortCase port, boolean bpdu, List<DesignVlan> rootOf) {
    boolean root = !rootOf.isEmpty();
    List<String> found = new ArrayList<>();
    List<String> designed = new ArrayList<>();
    List<String> consequence = new ArrayList<>();
    if (bpdu) {
      found.add("BPDU guard");
      designed.add(noBpdu(port));
      consequence.add(disabled(port));
    }
    if (root) {
      found.add("root guard");
      designed.add(noRoot(port, rootOf));
      consequence.add(blocked(port, rootOf));
    }
    Candidate guarded =
        Candidate.of(
            port.subject(),
            String.join("; ", designed),
            String.join(" and ", found),
            String.join(" ", consequence),
            proofs(port, bpdu, root),
            Optional.of(port.port().at()));
    return guarded.about(vlans(rootOf));
  }

  private static VlanSet vlans(List<DesignVlan> vlans) {
    return VlanSet.of(vlans.stream().map(DesignVlan::id).<VlanId>map(id -> id).toList());
  }

  private static String noBpdu(PortCase port) {
    return "no BPDU guard on " + Words.behind(port.port());
  }

  private static String noRoot(PortCase port, List<DesignVlan> rootOf) {
    List<String> roots = roots(port, rootOf);
    return "no root guard towards "
        + String.join(" and ", roots)
        + (roots.size() > 1 ? ", the planned roots of " : ", the planned root of ")
        + Words.vlans(port.design(), vlans(rootOf));
  }

  private static List<String> farSwitches(PortCase port) {
    return port.farEnds().stream().map(DesignPort::switchName).toList();
  }

  /** The switches at the far end that are a planned root of any of the VLANs. */
  private static List<String> roots(PortCase port, List<DesignVlan> rootOf) {
    return farSwitches(port).stream()
        .filter(
            name ->
                port.design().switches().get(name).tree().rootOf().stream()
                    .anyMatch(wanted -> rootOf.contains(wanted.value())))
        .toList();
  }

  private static String disabled(PortCase port) {
    return !port.farEnds().isEmpty()
        ? "The first BPDU from "
            + String.join(" or ", farSwitches(port))
            + " disables the port: the link is down, and stays down until somebody reopens it or a"
            + " recovery timer does."
        : "If a switch is at the far end, its first BPDU disables the port and the link is down.";
  }

  private static String blocked(PortCase port, List<DesignVlan> rootOf) {
    return "The port blocks "
        + Words.vlans(port.design(), vlans(rootOf))
        + " as soon as "
        + String.join(" or ", roots(port, rootOf))
        + " claims to be "
        + (rootOf.size() == 1 ? "its" : "their")
        + " root, as planned: nothing of "
        + Words.them(rootOf.size())
        + " crosses the link.";
  }

  /**
   * Beside root guard only the lines about guards are shown: what else brought BPDU guard here
   * would not take root guard away.
   */
  private static List<Proof> proofs(PortCase port, boolean bpdu, boolean root) {
    Setting<Effect> bpduGuard = port.get(Keys.BPDU_GUARD);
    if (!root) {
      return port.proofs(bpduGuard);
    }
    List<Evidence> evidence = new ArrayList<>(port.get(Keys.ROOT_GUARD).evidence());
    if (bpdu) {
      List<Evidence> followed = port.get(Keys.FAST_START).evidence();
      bpduGuard.evidence().stream().filter(one -> !followed.contains(one)).forEach(evidence::add);
    }
    return port.at().proofs(port.settings().orElseThrow().header(), evidence);
  }
}
