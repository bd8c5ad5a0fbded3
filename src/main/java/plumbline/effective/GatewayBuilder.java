package plumbline.effective;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.vlan.VlanId;

/** Builds the gateways: VLAN interfaces, and sub-interfaces that carry a tag. */
final class GatewayBuilder {
  private final Dialect dialect;
  private final VlanFilters vlanFilters;

  GatewayBuilder(Dialect dialect, VlanFilters vlanFilters) {
    this.dialect = dialect;
    this.vlanFilters = vlanFilters;
  }

  /** The gateways of all ports by VLAN, not yet judged. */
  List<Gateway> build(SortedMap<PortName, PortDraft> ports) {
    List<Gateway> gateways = new ArrayList<>();
    for (PortDraft port : ports.values()) {
      vlanOf(port).ifPresent(vlan -> gateways.add(gateway(vlan, port, ports)));
    }
    gateways.sort(Comparator.comparing(Gateway::vlan).thenComparing(Gateway::port));
    return gateways;
  }

  private static Optional<VlanId> vlanOf(PortDraft port) {
    PortName name = port.name();
    if (name.sub().isPresent()) {
      return port.lines()
          .last(Matter.TAG, PortCommand.SubinterfaceTag.class)
          .operand(PortCommand.SubinterfaceTag::vlan, Setting.absent())
          .value();
    }
    return name.kind() == PortKind.VLAN && VlanId.isValid(name.lastNumber())
        ? Optional.of(new VlanId(name.lastNumber()))
        : Optional.empty();
  }

  private Gateway gateway(VlanId vlan, PortDraft port, SortedMap<PortName, PortDraft> ports) {
    Lines lines = port.lines();
    Setting<List<String>> addresses = addresses(lines, ports);
    List<Gateway.Group> groups = new GroupBuilder(dialect, lines, addresses).build();
    return new Gateway(
        vlan,
        port.name(),
        port.header(),
        addresses,
        port.get(Keys.SHUT),
        lines
            .last(Matter.AUTOSTATE, PortCommand.Autostate.class)
            .flag(dialect.fact(true, "a VLAN interface follows its ports")),
        vlanFilters.behind(filtered(lines), vlan),
        redundant(lines, groups),
        groups,
        Setting.unknown("not judged yet"),
        List.of());
  }

  /** Where no group stands, silence may be no default, and a garbled line may set one up. */
  private Setting<Boolean> redundant(Lines lines, List<Gateway.Group> groups) {
    if (!groups.isEmpty()) {
      return Setting.known(true);
    }
    Setting<Boolean> none = dialect.fact(false, "no first-hop redundancy group");
    return lines
        .last(Matter.REDUNDANCY, PortCommand.Redundancy.class)
        .decide(said -> said.backTo(none), () -> none);
  }

  /** Each direction has a filter of its own; one of them is enough. */
  private Setting<Boolean> filtered(Lines lines) {
    Setting<Boolean> received = filtered(lines, true);
    Setting<Boolean> sent = filtered(lines, false);
    if (received.is(true) || sent.is(true)) {
      return received.is(true) ? received : sent;
    }
    return received.isDecided() ? sent.because(received.evidence()) : received;
  }

  private Setting<Boolean> filtered(Lines lines, boolean input) {
    return lines
        .last(
            Matter.PACKET_FILTER,
            PortCommand.AccessGroup.class,
            statement ->
                statement.command() instanceof PortCommand.AccessGroup group
                    && group.input() == input)
        .flag(dialect.fact(false, "no packet filter"));
  }

  /**
   * The interface's own addresses; of one that answers under another's address, that one's, for an
   * address of its own takes the place of a borrowed one, and the other way round (common practice,
   * no source).
   */
  private Setting<List<String>> addresses(Lines lines, SortedMap<PortName, PortDraft> ports) {
    List<Statement> own = new ArrayList<>(lines.statements());
    own.removeIf(one -> one.command() instanceof PortCommand.Unnumbered);
    Optional<Statement> loan = loan(lines);
    if (loan.isEmpty()) {
      return addresses(lines.only(own));
    }
    Evidence line = loan.get().evidence();
    PortName lender = ((PortCommand.Unnumbered) loan.get().command()).lender().orElseThrow();
    PortDraft from = ports.get(lender);
    LastWord<PortCommand.Unnumbered> last =
        lines.last(Matter.ADDRESS, PortCommand.Unnumbered.class);
    if (last instanceof LastWord.Open<PortCommand.Unnumbered> open) {
      return new Setting.Unknown<>(open.why(), open.evidence());
    }
    if (from == null || loan(from.lines()).isPresent()) {
      return new Setting.Unknown<>(
          "the text shows no address of " + dialect.print(lender), List.of(line));
    }
    return LastWord.behind(line, addresses(from.lines()));
  }

  /** The line that borrows an address, where it stands. */
  private static Optional<Statement> loan(Lines lines) {
    Optional<Statement> loan = Optional.empty();
    for (Statement statement : lines.statements()) {
      boolean sets = statement.form() == Form.SET;
      if (statement.command() instanceof PortCommand.Unnumbered) {
        loan = Optional.of(statement).filter(any -> sets);
      } else if (statement.command() instanceof PortCommand.Address address
          && address.version() == 4
          && sets) {
        loan = Optional.empty();
      }
    }
    return loan;
  }

  /** The first address stands until another first one or a bare {@code no} replaces it. */
  private Setting<List<String>> addresses(Lines lines) {
    Standing all = new Standing();
    for (Statement statement : lines.statements()) {
      if (statement.command() instanceof PortCommand.Address address) {
        all.take(statement, address);
      }
    }
    List<Statement> standing = List.copyOf(all.lines.values());
    LastWord<PortCommand.Address> last = lines.last(Matter.ADDRESS, PortCommand.Address.class);
    if (last instanceof LastWord.Open<PortCommand.Address> open) {
      return new Setting.Unknown<>(open.why(), open.evidence());
    }
    if (standing.isEmpty()) {
      Setting<List<String>> none = dialect.nothing("no address");
      return last.decide(said -> said.backTo(none), () -> none);
    }
    List<Evidence> evidence = new ArrayList<>();
    standing.forEach(statement -> evidence.add(statement.evidence()));
    return new Setting.Known<>(standing.stream().map(GatewayBuilder::text).toList(), evidence);
  }

  /** The addresses that stand, by version and address. */
  private static final class Standing {
    private final Map<String, Statement> lines = new LinkedHashMap<>();

    /** The key of the one IPv4 address that is not a further one. */
    private Optional<String> first = Optional.empty();

    void take(Statement statement, PortCommand.Address address) {
      String version = address.version() + " ";
      String key = version + address.address().orElse("");
      lines.remove(key);
      if (statement.form() != Form.SET) {
        if (address.address().isEmpty()) {
          lines.keySet().removeIf(other -> other.startsWith(version));
        }
        return;
      }
      if (address.version() == 4 && !address.secondary()) {
        first.ifPresent(lines::remove);
        first = Optional.of(key);
      } else if (first.filter(key::equals).isPresent()) {
        first = Optional.empty();
      }
      if (address.address().isPresent()) {
        lines.put(key, statement);
      }
    }
  }

  private static String text(Statement statement) {
    PortCommand.Address address = (PortCommand.Address) statement.command();
    return address.address().orElseThrow()
        + address.mask().map(mask -> " " + mask).orElse("")
        + (address.secondary() ? " secondary" : "");
  }
}
