package plumbline.syntax;

import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.TerminalNode;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.statement.Command;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.statement.PortCommand.Redundancy.Attribute;
import plumbline.syntax.SwitchConfigParser.AddressHarmlessContext;
import plumbline.syntax.SwitchConfigParser.AnycastAddressContext;
import plumbline.syntax.SwitchConfigParser.AnycastModeContext;
import plumbline.syntax.SwitchConfigParser.AttributeHarmlessContext;
import plumbline.syntax.SwitchConfigParser.AutostateContext;
import plumbline.syntax.SwitchConfigParser.IpAddressContext;
import plumbline.syntax.SwitchConfigParser.IpAddressDhcpContext;
import plumbline.syntax.SwitchConfigParser.IpUnnumberedContext;
import plumbline.syntax.SwitchConfigParser.Ipv6AddressContext;
import plumbline.syntax.SwitchConfigParser.Ipv6AddressDhcpContext;
import plumbline.syntax.SwitchConfigParser.OtherAttributeContext;
import plumbline.syntax.SwitchConfigParser.PreemptContext;
import plumbline.syntax.SwitchConfigParser.PriorityContext;
import plumbline.syntax.SwitchConfigParser.RedundancyContext;
import plumbline.syntax.SwitchConfigParser.RedundancyHeaderContext;
import plumbline.syntax.SwitchConfigParser.RedundancyInFamilyContext;
import plumbline.syntax.SwitchConfigParser.TrackContext;
import plumbline.syntax.SwitchConfigParser.VersionContext;
import plumbline.syntax.SwitchConfigParser.VirtualAddressContext;

/** Makes commands of the addresses and redundancy groups of routed ports and VLAN interfaces. */
final class AddressBuilder extends SwitchConfigParserBaseVisitor<Command> {
  private static final int MAX_GROUP = 4095;
  private static final int MAX_GROUP_PRIORITY = 255;
  private static final int MAX_VERSION = 9;

  private final Operands operands;

  AddressBuilder(Operands operands) {
    this.operands = operands;
  }

  @Override
  public Command visitIpAddress(IpAddressContext line) {
    Optional<String> address =
        Optional.ofNullable(line.address()).flatMap(a -> operands.address4(a.ADDRESS4()));
    Optional<String> mask =
        Optional.ofNullable(line.mask()).flatMap(m -> operands.address4(m.ADDRESS4()));
    boolean hasPrefix = address.filter(a -> a.contains("/")).isPresent();
    if (operands.isSet() && hasPrefix == mask.isPresent()) {
      operands.refuse();
    }
    return new PortCommand.Address(4, address, mask, line.SECONDARY() != null);
  }

  @Override
  public Command visitIpAddressDhcp(IpAddressDhcpContext line) {
    return new PortCommand.Address(4, Optional.of("dhcp"), Optional.empty(), false);
  }

  @Override
  public Command visitIpUnnumbered(IpUnnumberedContext line) {
    Optional<PortName> lender = Optional.empty();
    if (!line.word().isEmpty()) {
      int last = line.word().size() - 1;
      String names =
          Operands.source(line.word(0).getStart(), line.word(last).getStop())
              .replaceFirst("(?i)\\s+poll$", "");
      if (PortNames.parse(names) instanceof PortNames.Reading.Ports one
          && one.names().size() == 1) {
        lender = Optional.of(one.names().get(0));
      }
    }
    return new PortCommand.Unnumbered(operands.needed(lender));
  }

  @Override
  public Command visitAnycastAddress(AnycastAddressContext line) {
    Optional<String> address =
        Optional.ofNullable(line.address()).flatMap(a -> operands.address4(a.ADDRESS4()));
    return anycast(operands.needed(address));
  }

  @Override
  public Command visitAnycastMode(AnycastModeContext line) {
    return anycast(Optional.empty());
  }

  private static Command anycast(Optional<String> address) {
    return new Redundancy(Redundancy.Kind.ANYCAST, Optional.empty(), Attribute.ADDRESS, address);
  }

  @Override
  public Command visitAddressHarmless(AddressHarmlessContext line) {
    return StatementBuilder.harmless(line);
  }

  @Override
  public Command visitIpv6Address(Ipv6AddressContext line) {
    Optional<String> address =
        Optional.ofNullable(line.address6()).map(a -> a.getText().toLowerCase(Locale.ROOT));
    boolean secondary = line.tag() != null && line.tag().SECONDARY() != null;
    return new PortCommand.Address(6, operands.needed(address), Optional.empty(), secondary);
  }

  @Override
  public Command visitIpv6AddressDhcp(Ipv6AddressDhcpContext line) {
    String way = line.DHCP() != null ? "dhcp" : "autoconfig";
    return new PortCommand.Address(6, Optional.of(way), Optional.empty(), false);
  }

  @Override
  public Command visitAutostate(AutostateContext line) {
    return new PortCommand.Autostate();
  }

  @Override
  public Command visitRedundancy(RedundancyContext line) {
    return redundancy(line, line.NUMBER(), line.redundancyAttribute());
  }

  @Override
  public Command visitRedundancyHeader(RedundancyHeaderContext line) {
    boolean opensBlock =
        switch (line.getStart().getType()) {
          case SwitchConfigParser.STANDBY, SwitchConfigParser.GLBP -> false;
          default -> true;
        };
    if (operands.isSet() && !opensBlock) {
      operands.refuse();
    }
    Optional<Integer> group = group(line.NUMBER());
    // only the third version has address families (RFC 5798 is the first with both)
    boolean third =
        kind(line) == Redundancy.Kind.VRRP
            && (line.ADDRESS_FAMILY() != null
                || line.getStart().getType() == SwitchConfigParser.VRRPV3);
    return third && operands.isSet()
        ? new Redundancy(Redundancy.Kind.VRRP, group, Attribute.VERSION, Optional.of("3"))
        : new Redundancy(kind(line), group, Attribute.OTHER, Optional.empty());
  }

  @Override
  public Command visitRedundancyInFamily(RedundancyInFamilyContext line) {
    return redundancy(
        line,
        line.NUMBER(),
        line.redundancyAttribute() != null ? line.redundancyAttribute() : line.hsrpAttribute());
  }

  private Command redundancy(
      ParserRuleContext line, TerminalNode number, ParserRuleContext attribute) {
    AttributeBuilder.Found found = new AttributeBuilder(operands).visit(attribute);
    boolean ofAllGroups =
        found.attribute() == Attribute.VERSION || found.attribute() == Attribute.OTHER;
    // Without a number these lines are about group 0 (common practice, no source).
    Optional<Integer> group = number == null && !ofAllGroups ? Optional.of(0) : group(number);
    return new Redundancy(kind(line), group, found.attribute(), found.value());
  }

  private Optional<Integer> group(TerminalNode number) {
    return number == null ? Optional.empty() : operands.number(number, 0, MAX_GROUP);
  }

  private static Redundancy.Kind kind(ParserRuleContext line) {
    return switch (line.getStart().getType()) {
      case SwitchConfigParser.VRRP, SwitchConfigParser.VRRPV3 -> Redundancy.Kind.VRRP;
      case SwitchConfigParser.GLBP -> Redundancy.Kind.GLBP;
      default -> Redundancy.Kind.STANDBY;
    };
  }

  /** Reads what one line of a redundancy group sets. */
  private static final class AttributeBuilder
      extends SwitchConfigParserBaseVisitor<AttributeBuilder.Found> {
    private final Operands operands;

    AttributeBuilder(Operands operands) {
      this.operands = operands;
    }

    /** An attribute and its operand. */
    record Found(Attribute attribute, Optional<String> value) {}

    @Override
    public Found visitVirtualAddress(VirtualAddressContext line) {
      Optional<String> address = operands.address4(line.ADDRESS4());
      if (line.IPV4() != null && address.isEmpty()) {
        // The family alone is the header of the group, or with `no` its end.
        return new Found(Attribute.OTHER, Optional.empty());
      }
      return new Found(
          Attribute.ADDRESS,
          line.SECONDARY() == null ? address : address.map(a -> a + " secondary"));
    }

    @Override
    public Found visitAttributeHarmless(AttributeHarmlessContext line) {
      return new Found(Attribute.OTHER, Optional.of(line.getStart().getText()));
    }

    @Override
    public Found visitPriority(PriorityContext line) {
      return new Found(
          Attribute.PRIORITY,
          operands.number(line.NUMBER(), 0, MAX_GROUP_PRIORITY).map(String::valueOf));
    }

    @Override
    public Found visitPreempt(PreemptContext line) {
      return new Found(Attribute.PREEMPT, Optional.empty());
    }

    @Override
    public Found visitVersion(VersionContext line) {
      return new Found(
          Attribute.VERSION, operands.number(line.NUMBER(), 1, MAX_VERSION).map(String::valueOf));
    }

    @Override
    public Found visitTrack(TrackContext line) {
      return new Found(Attribute.TRACK, operands.needed(Operands.words(line.tail())));
    }

    @Override
    public Found visitOtherAttribute(OtherAttributeContext line) {
      return new Found(Attribute.OTHER, Optional.of(line.getStart().getText()));
    }
  }
}
