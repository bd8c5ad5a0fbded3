package plumbline.syntax;

import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.PortCommand;
import plumbline.syntax.SwitchConfigParser.AccessGroupContext;
import plumbline.syntax.SwitchConfigParser.InspectionTrustContext;
import plumbline.syntax.SwitchConfigParser.PortSecurityContext;
import plumbline.syntax.SwitchConfigParser.ProtectionHarmlessContext;
import plumbline.syntax.SwitchConfigParser.QosTrustContext;
import plumbline.syntax.SwitchConfigParser.QualityHarmlessContext;
import plumbline.syntax.SwitchConfigParser.ServicePolicyContext;
import plumbline.syntax.SwitchConfigParser.SnoopingTrustContext;
import plumbline.syntax.SwitchConfigParser.StormControlContext;

/** Makes commands of a port's marking, policies, limits, trust and packet filters. */
final class ProtectionBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private final Operands operands;

  ProtectionBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitQosTrust(QosTrustContext line) {
    // The bare word trusts the marking of the IP header (common practice, no source).
    Optional<String> marking =
        line.marking() == null && operands.isSet()
            ? Optional.of("dscp")
            : Optional.ofNullable(line.marking()).map(m -> m.getStart().getText());
    if (marking.filter("none"::equals).isPresent()) {
      operands.invert();
      return new PortCommand.QosTrust(Optional.empty(), line.MLS() != null);
    }
    return new PortCommand.QosTrust(marking, line.MLS() != null);
  }

  @Override
  public Command visitServicePolicy(ServicePolicyContext line) {
    return new PortCommand.ServicePolicy(line.INPUT() != null, operands.word(line.word()));
  }

  @Override
  public Command visitQualityHarmless(QualityHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitStormControl(StormControlContext line) {
    return new PortCommand.StormControl(line.traffic().getText());
  }

  @Override
  public Command visitProtectionHarmless(ProtectionHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitPortSecurity(PortSecurityContext line) {
    return new PortCommand.PortSecurity();
  }

  @Override
  public Command visitSnoopingTrust(SnoopingTrustContext line) {
    return new PortCommand.SnoopingTrust();
  }

  @Override
  public Command visitInspectionTrust(InspectionTrustContext line) {
    return new PortCommand.InspectionTrust();
  }

  @Override
  public Command visitAccessGroup(AccessGroupContext line) {
    boolean input = line.IN() != null || line.ROUTED_IN() != null;
    boolean output = line.OUT() != null || line.ROUTED_OUT() != null;
    if (!input && !output && operands.isSet()) {
      operands.refuse();
    }
    return new PortCommand.AccessGroup(operands.word(line.word()), !output);
  }
}
