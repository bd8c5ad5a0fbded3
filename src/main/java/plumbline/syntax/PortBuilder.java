package plumbline.syntax;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.tree.TerminalNode;
import plumbline.setting.Bundle;
import plumbline.setting.VoiceVlan;
import plumbline.statement.Command;
import plumbline.statement.ListChange;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Mode;
import plumbline.syntax.SwitchConfigParser.AccessVlanContext;
import plumbline.syntax.SwitchConfigParser.AllowedContext;
import plumbline.syntax.SwitchConfigParser.BasicHarmlessContext;
import plumbline.syntax.SwitchConfigParser.BundleHarmlessContext;
import plumbline.syntax.SwitchConfigParser.BundleModeContext;
import plumbline.syntax.SwitchConfigParser.ChannelGroupContext;
import plumbline.syntax.SwitchConfigParser.DescriptionContext;
import plumbline.syntax.SwitchConfigParser.DuplexContext;
import plumbline.syntax.SwitchConfigParser.DuplexWordContext;
import plumbline.syntax.SwitchConfigParser.InterfaceVlanNameContext;
import plumbline.syntax.SwitchConfigParser.LacpModeContext;
import plumbline.syntax.SwitchConfigParser.LagContext;
import plumbline.syntax.SwitchConfigParser.MinLinksContext;
import plumbline.syntax.SwitchConfigParser.MtuContext;
import plumbline.syntax.SwitchConfigParser.MultiChassisContext;
import plumbline.syntax.SwitchConfigParser.NativeTaggingContext;
import plumbline.syntax.SwitchConfigParser.NativeVlanContext;
import plumbline.syntax.SwitchConfigParser.NonegotiateContext;
import plumbline.syntax.SwitchConfigParser.PortModeContext;
import plumbline.syntax.SwitchConfigParser.PruningContext;
import plumbline.syntax.SwitchConfigParser.RoutingContext;
import plumbline.syntax.SwitchConfigParser.ShutdownContext;
import plumbline.syntax.SwitchConfigParser.SpeedContext;
import plumbline.syntax.SwitchConfigParser.SpeedValueContext;
import plumbline.syntax.SwitchConfigParser.SubinterfaceTagContext;
import plumbline.syntax.SwitchConfigParser.SwitchModeContext;
import plumbline.syntax.SwitchConfigParser.SwitchedContext;
import plumbline.syntax.SwitchConfigParser.SwitchingHarmlessContext;
import plumbline.syntax.SwitchConfigParser.TrunkEncapsulationContext;
import plumbline.syntax.SwitchConfigParser.UnmodelledContext;
import plumbline.syntax.SwitchConfigParser.UnmodelledTagContext;
import plumbline.syntax.SwitchConfigParser.VlanChangeContext;
import plumbline.syntax.SwitchConfigParser.VoiceContext;
import plumbline.syntax.SwitchConfigParser.VoiceVlanContext;
import plumbline.syntax.SwitchConfigParser.WordAccessVlanContext;
import plumbline.syntax.SwitchConfigParser.WordAllowedContext;
import plumbline.syntax.SwitchConfigParser.WordNativeVlanContext;
import plumbline.vlan.VlanSet;

/** Makes commands of a port's basic lines, its switching lines and its place in a bundle. */
final class PortBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private static final int MAX_MTU = 65535;
  private static final int MAX_BUNDLE = 65535;
  private static final Pattern SPEED =
      Pattern.compile("(?i)(?<number>[0-9]{1,6})(?<unit>g|m)?(?:full|half|bps)?");

  private final Operands operands;

  PortBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitDescription(DescriptionContext line) {
    return new PortCommand.Description(operands.text(line.text()));
  }

  @Override
  public Command visitInterfaceVlanName(InterfaceVlanNameContext line) {
    return new PortCommand.InterfaceVlanName(operands.text(line.text()));
  }

  @Override
  public Command visitShutdown(ShutdownContext line) {
    return new PortCommand.Shutdown();
  }

  @Override
  public Command visitMtu(MtuContext line) {
    return new PortCommand.Mtu(operands.number(line.NUMBER(), 1, MAX_MTU));
  }

  @Override
  public Command visitSpeed(SpeedContext line) {
    return new PortCommand.Speed(
        operands.needed(Optional.ofNullable(line.speedValue()).map(this::speed)));
  }

  private String speed(SpeedValueContext value) {
    if (value.AUTO() != null) {
      return "auto";
    }
    if (value.NONEGOTIATE() != null) {
      return PortCommand.Speed.OWN;
    }
    Matcher speed = SPEED.matcher(value.getStop().getText());
    if (!speed.matches()) {
      operands.refuse();
      return "auto";
    }
    int number = Integer.parseInt(speed.group("number"));
    return Integer.toString("g".equalsIgnoreCase(speed.group("unit")) ? 1000 * number : number);
  }

  @Override
  public Command visitDuplex(DuplexContext line) {
    Optional<String> duplex =
        line.getChildCount() < 2 ? Optional.empty() : Optional.of(line.getChild(1).getText());
    return new PortCommand.Duplex(operands.needed(duplex));
  }

  @Override
  public Command visitDuplexWord(DuplexWordContext line) {
    String word = line.getText();
    return new PortCommand.Duplex(Optional.of(word.substring(0, word.indexOf('-'))));
  }

  @Override
  public Command visitSubinterfaceTag(SubinterfaceTagContext line) {
    return new PortCommand.SubinterfaceTag(operands.vlan(line.NUMBER()), line.NATIVE() != null);
  }

  @Override
  public Command visitUnmodelledTag(UnmodelledTagContext line) {
    return new PortCommand.Unmodelled("encapsulation dot1q second-dot1q");
  }

  @Override
  public Command visitBasicHarmless(BasicHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitSwitched(SwitchedContext line) {
    return new PortCommand.Switched();
  }

  @Override
  public Command visitRouting(RoutingContext line) {
    operands.invert();
    return new PortCommand.Switched();
  }

  @Override
  public Command visitPortMode(PortModeContext line) {
    return new Mode(operands.needed(Optional.ofNullable(line.switchMode()).map(PortBuilder::mode)));
  }

  private static Mode.Kind mode(SwitchModeContext mode) {
    if (mode.ACCESS() != null) {
      return Mode.Kind.ACCESS;
    }
    if (mode.TRUNK() != null) {
      return Mode.Kind.TRUNK;
    }
    if (mode.DYNAMIC() != null) {
      return mode.AUTO() != null ? Mode.Kind.DYNAMIC_AUTO : Mode.Kind.DYNAMIC_DESIRABLE;
    }
    return Mode.Kind.OTHER;
  }

  @Override
  public Command visitNonegotiate(NonegotiateContext line) {
    return new PortCommand.Nonegotiate();
  }

  @Override
  public Command visitAccessVlan(AccessVlanContext line) {
    return new PortCommand.AccessVlan(operands.vlan(line.NUMBER()), false);
  }

  @Override
  public Command visitVoice(VoiceContext line) {
    if (line.voiceVlan() == null) {
      return new PortCommand.Voice(operands.needed(Optional.empty()));
    }
    VoiceVlanContext voice = line.voiceVlan();
    if (voice.NUMBER() != null) {
      return new PortCommand.Voice(operands.vlan(voice.NUMBER()).map(VoiceVlan::tagged));
    }
    return new PortCommand.Voice(
        voice.NONE() != null
            ? Optional.empty()
            : Optional.of(
                new VoiceVlan(
                    VoiceVlan.Kind.valueOf(Operands.constant(voice.getText())), Optional.empty())));
  }

  @Override
  public Command visitNativeVlan(NativeVlanContext line) {
    return new PortCommand.NativeVlan(operands.vlan(line.NUMBER()), false, false);
  }

  @Override
  public Command visitNativeTagging(NativeTaggingContext line) {
    return new PortCommand.NativeTagging();
  }

  @Override
  public Command visitAllowed(AllowedContext line) {
    return new PortCommand.Allowed(change(line.vlanChange()), vlans(line.vlanChange()), false);
  }

  @Override
  public Command visitPruning(PruningContext line) {
    return new PortCommand.Pruning(change(line.vlanChange()), vlans(line.vlanChange()));
  }

  private ListChange change(VlanChangeContext change) {
    return operands
        .needed(Optional.ofNullable(change))
        .filter(c -> c.getChild(0) instanceof TerminalNode)
        .map(c -> ListChange.valueOf(Operands.constant(c.getStart().getText())))
        .orElse(ListChange.SET);
  }

  private VlanSet vlans(VlanChangeContext change) {
    return change == null || change.vlans() == null ? VlanSet.NONE : operands.vlans(change.vlans());
  }

  @Override
  public Command visitTrunkEncapsulation(TrunkEncapsulationContext line) {
    return new PortCommand.TrunkEncapsulation(operands.keyword(line.trunkProtocol()));
  }

  @Override
  public Command visitWordAccessVlan(WordAccessVlanContext line) {
    return new PortCommand.AccessVlan(operands.vlan(line.NUMBER()), true);
  }

  @Override
  public Command visitWordNativeVlan(WordNativeVlanContext line) {
    return new PortCommand.NativeVlan(operands.vlan(line.NUMBER()), true, line.TAG() != null);
  }

  @Override
  public Command visitWordAllowed(WordAllowedContext line) {
    if (line.vlans() != null) {
      return new PortCommand.Allowed(ListChange.SET, operands.vlans(line.vlans()), true);
    }
    if (line.ALL() == null && operands.isSet()) {
      operands.refuse();
    }
    return new PortCommand.Allowed(
        line.ALL() != null ? ListChange.ALL : ListChange.SET, VlanSet.NONE, true);
  }

  @Override
  public Command visitUnmodelled(UnmodelledContext line) {
    return new PortCommand.Unmodelled(Operands.source(line.switchUnmodelled()));
  }

  @Override
  public Command visitSwitchingHarmless(SwitchingHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitChannelGroup(ChannelGroupContext line) {
    return new PortCommand.ChannelGroup(
        operands.number(line.NUMBER(), 1, MAX_BUNDLE),
        Optional.ofNullable(line.bundleMode()).map(PortBuilder::bundleMode));
  }

  private static Bundle.Mode bundleMode(BundleModeContext mode) {
    return mode.ON() != null
        ? Bundle.Mode.STATIC
        : Bundle.Mode.valueOf(Operands.constant(mode.getText()));
  }

  @Override
  public Command visitLag(LagContext line) {
    return new PortCommand.ChannelGroup(
        operands.number(line.NUMBER(), 1, MAX_BUNDLE), Optional.empty());
  }

  @Override
  public Command visitLacpMode(LacpModeContext line) {
    return new PortCommand.BundleMode(
        operands.needed(Optional.ofNullable(line.bundleMode()).map(PortBuilder::bundleMode)));
  }

  @Override
  public Command visitMinLinks(MinLinksContext line) {
    return new PortCommand.MinLinks(operands.number(line.NUMBER(), 1, MAX_BUNDLE));
  }

  @Override
  public Command visitMultiChassis(MultiChassisContext line) {
    if (line.PEER_LINK() != null) {
      return new PortCommand.MultiChassis(Optional.of(line.PEER_LINK().getText()));
    }
    return new PortCommand.MultiChassis(
        operands.number(line.NUMBER(), 1, MAX_BUNDLE).map(String::valueOf));
  }

  @Override
  public Command visitBundleHarmless(BundleHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }
}
