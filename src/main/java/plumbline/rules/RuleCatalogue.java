package plumbline.rules;

import java.util.List;
import java.util.Optional;

/** Every rule of the program: a literal list, sorted by id. */
public final class RuleCatalogue {
  /** All rules. */
  public static final List<Rule> ALL =
      List.of(
          new AccessVlanDiffers(),
          new BpduFilterSet(),
          new BpduGuardMissing(),
          new BroadcastDomainSplit(),
          new BundleDiffers(),
          new BundleMemberDiffers(),
          new ChangeNotSaved(),
          new ConfigMissing(),
          new ConfigStale(),
          new ConfigTruncated(),
          new ConfigUnreadable(),
          new DescriptionDiffers(),
          new FastStartMissing(),
          new FastStartOnSwitchLink(),
          new FastStartWithoutEffect(),
          new GatewayFilterMissing(),
          new GatewayForbidden(),
          new GatewayNotPaired(),
          new GatewayNotWorking(),
          new GatewayUndeclared(),
          new GatewayUnreachable(),
          new GuardOnSwitchLink(),
          new HostSinglePoint(),
          new LinkBundleClash(),
          new LinkModeDiffers(),
          new LinkMtuDiffers(),
          new LinkNativeDiffers(),
          new LinkSpeedDuplexDiffers(),
          new LinkVlansDiffer(),
          new ModeDiffers(),
          new MstRegionDiffers(),
          new MtuDiffers(),
          new NativeVlanDiffers(),
          new NativeVlanInUse(),
          new NegotiationOpen(),
          new PairDiffers(),
          new PairInBundle(),
          new PairOnOneSwitch(),
          new PortAbsent(),
          new PortSecurityOnUplink(),
          new PortSettingDiffers(),
          new PortShut(),
          new PortUndeclared(),
          new QosDiffers(),
          new RootUnplanned(),
          new ServiceSinglePoint(),
          new SpanningTreeModeDiffers(),
          new SpanningTreeOff(),
          new SparePortOpen(),
          new SpeedDuplexDiffers(),
          new StatementUnknown(),
          new SwitchUnknown(),
          new TaggedVlanExtra(),
          new TaggedVlanMissing(),
          new TakeoverPathLacksVlan(),
          new TrunkUndeclared(),
          new VlanDatabaseUnknown(),
          new VlanInactive(),
          new VlanNameDiffers(),
          new VlanNotCreated(),
          new VlanUndeclared(),
          new VlansJoined(),
          new VoiceVlanDiffers(),
          new WaiverExpired(),
          new WaiverUnused());

  private RuleCatalogue() {}

  /** The rule of that id, if there is one. */
  public static Optional<Rule> named(String id) {
    return ALL.stream().filter(rule -> rule.info().id().equals(id)).findFirst();
  }

  /** Every name that a design may use for a rule, sorted. */
  public static List<String> names() {
    return ALL.stream().map(rule -> rule.info().id()).toList();
  }
}
