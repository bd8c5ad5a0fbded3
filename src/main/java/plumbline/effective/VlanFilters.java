package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchCommand.VlanFilter;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * The packet filters that stand on VLANs and not on their interfaces. Such a filter sees whatever
 * is routed into its VLAN or out of it (common practice, no source), but the map or list behind it
 * is not read and may be about hardware addresses only: it leaves open whether a gateway is
 * filtered.
 */
final class VlanFilters {
  private final List<Standing> standing = new ArrayList<>();
  private Optional<Statement> garbled = Optional.empty();
  private final Lines lines;

  private record Standing(Optional<String> map, VlanSet vlans, Statement line) {
    Standing without(VlanSet removed) {
      return new Standing(map, vlans.minus(removed), line);
    }
  }

  private VlanFilters(Lines lines) {
    this.lines = lines;
  }

  /** Reads them from the lines outside ports. */
  static VlanFilters of(Lines lines) {
    VlanFilters filters = new VlanFilters(lines);
    VlanSet open = VlanSet.NONE;
    for (Statement statement : lines.statements()) {
      Command command = statement.command();
      if (command instanceof VlanFilter filter) {
        filters.take(statement, filter.map(), filter.vlans().orElse(VlanSet.ALL));
      } else if (command instanceof SwitchCommand.VlanStanzaFilter) {
        filters.take(statement, Optional.empty(), open);
      } else if (command instanceof SwitchCommand.Vlans header) {
        open = statement.form() == Form.SET ? header.vlans() : VlanSet.NONE;
      } else if (statement.context() == Context.TOP
          && command instanceof Command.Unknown unknown
          && Matter.VLAN_FILTER.doubtedBy(unknown)) {
        filters.garbled = Optional.of(statement);
      }
    }
    return filters;
  }

  private void take(Statement statement, Optional<String> map, VlanSet vlans) {
    if (statement.form() == Form.SET) {
      standing.add(new Standing(map, vlans, statement));
    } else if (lines.doubtOf(statement).isEmpty()) {
      standing.replaceAll(
          one -> map.isPresent() && !map.equals(one.map()) ? one : one.without(vlans));
    }
  }

  /**
   * What is known of a gateway's filter when those on its VLAN count as well.
   *
   * @param own whether one stands on its interface
   */
  Setting<Boolean> behind(Setting<Boolean> own, VlanId vlan) {
    if (!own.is(false)) {
      return own;
    }
    for (Standing one : standing) {
      if (one.vlans().contains(vlan)) {
        return Setting.unknown(
            "a filter stands on the VLAN itself, and what it filters is not read",
            one.line().evidence());
      }
    }
    if (garbled.isPresent()) {
      return Setting.unknown(
          "line " + garbled.get().line() + " is not understood", garbled.get().evidence());
    }
    return lines.open().map(why -> Setting.<Boolean>unknown(why)).orElse(own);
  }
}
