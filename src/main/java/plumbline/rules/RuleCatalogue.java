package plumbline.rules;

import java.util.List;
import java.util.Optional;

/** Every rule of the program: a literal list, sorted by id. */
public final class RuleCatalogue {
  /** All rules. */
  public static final List<Rule> ALL =
      List.of(
          new AccessVlanDiffers(),
          new ConfigMissing(),
          new ConfigTruncated(),
          new ConfigUnreadable(),
          new FastStartMissing(),
          new FastStartWithoutEffect(),
          new ModeDiffers(),
          new NativeVlanDiffers(),
          new NativeVlanInUse(),
          new NegotiationOpen(),
          new PortAbsent(),
          new PortShut(),
          new StatementUnknown(),
          new SwitchUnknown(),
          new TaggedVlanExtra(),
          new TaggedVlanMissing(),
          new VlanDatabaseUnknown(),
          new VlanNotCreated());

  private RuleCatalogue() {}

  /** The rule of that id, if there is one. */
  public static Optional<Rule> named(String id) {
    return ALL.stream().filter(rule -> rule.info().id().equals(id)).findFirst();
  }
}
