package plumbline.rules;

/**
 * A rule of the catalogue: stateless; it compares a case with the design and gives one outcome per
 * subject that it can be asked about. A class may implement several of the kinds.
 */
public sealed interface Rule
    permits InputRule, SwitchRule, PortRule, PairRule, LinkRule, FabricRule, WaiverRule {
  /** Id, group, floor, summary and source. */
  RuleInfo info();
}
