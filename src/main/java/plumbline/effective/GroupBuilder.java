package plumbline.effective;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import plumbline.effective.Gateway.Group;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.statement.PortCommand.Redundancy.Attribute;
import plumbline.statement.PortCommand.Redundancy.Kind;
import plumbline.statement.Statement;

/**
 * Builds the first-hop redundancy groups of one interface. Defaults: priority 100, VRRP takes over
 * by priority unless told not to (RFC 6527, {@code vrrpv3OperationsPriority} and {@code
 * vrrpv3OperationsPreemptMode}); the proprietary ones the other way round (common practice, no
 * source).
 */
final class GroupBuilder {
  private final Dialect dialect;
  private final Lines lines;
  private final Setting<List<String>> addresses;

  GroupBuilder(Dialect dialect, Lines lines, Setting<List<String>> addresses) {
    this.dialect = dialect;
    this.lines = lines;
    this.addresses = addresses;
  }

  /** The groups, by kind and number. */
  List<Group> build() {
    List<Group> groups = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      SortedSet<Integer> ids = ids(kind);
      Map<Integer, List<Statement>> own = new HashMap<>();
      ids.forEach(id -> own.put(id, new ArrayList<>()));
      for (Statement statement : lines.statements()) {
        sort(statement, kind, own);
      }
      for (int id : ids) {
        GroupBuilder one = new GroupBuilder(dialect, lines.only(own.get(id)), addresses);
        groups.add(kind == Kind.ANYCAST ? one.anycast(id) : one.group(kind, id));
      }
    }
    return groups;
  }

  /** Adds a line to the group that it is about; to all of them where it may be about any. */
  private static void sort(Statement statement, Kind kind, Map<Integer, List<Statement>> own) {
    Command command = statement.command();
    if (!(command instanceof Redundancy line)) {
      if (command instanceof Command.Unknown || command instanceof PortCommand.Unmodelled) {
        own.values().forEach(group -> group.add(statement));
      }
    } else if (line.kind() == kind) {
      if (line.group().isEmpty()) {
        own.values().forEach(group -> group.add(statement));
      } else if (own.containsKey(line.group().get())) {
        List<Statement> group = own.get(line.group().get());
        if (statement.form() != Form.SET && isWhole(line)) {
          // What a group that is set up anew had before is gone with it.
          group.removeIf(GroupBuilder::isOfOneGroup);
        }
        group.add(statement);
      }
    }
  }

  private SortedSet<Integer> ids(Kind kind) {
    SortedSet<Integer> ids = new TreeSet<>();
    for (Statement statement : lines.statements()) {
      if (statement.command() instanceof Redundancy line && line.kind() == kind) {
        if (statement.form() == Form.SET && (line.group().isPresent() || kind == Kind.ANYCAST)) {
          ids.add(line.group().orElse(0));
        } else if (statement.form() != Form.SET && endsGroup(line)) {
          ids.remove(line.group().orElse(0));
        }
      }
    }
    return ids;
  }

  /** Whether the negated line takes the whole group away. */
  private static boolean endsGroup(Redundancy line) {
    return isWhole(line) || (line.kind() == Kind.ANYCAST && line.attribute() == Attribute.ADDRESS);
  }

  /** Whether the line is about the group as a whole. */
  private static boolean isWhole(Redundancy line) {
    return line.attribute() == Attribute.OTHER && line.value().isEmpty();
  }

  private static boolean isOfOneGroup(Statement statement) {
    return statement.command() instanceof Redundancy line && line.group().isPresent();
  }

  private Group group(Kind kind, int id) {
    boolean vrrp = kind == Kind.VRRP;
    return new Group(
        kind,
        id,
        version(kind, id),
        last(kind, id, Attribute.ADDRESS)
            .operand(Redundancy::value, dialect.nothing("no virtual address")),
        learns(kind, id),
        last(kind, id, Attribute.PRIORITY)
            .operand(GroupBuilder::number, dialect.fact(100, kind + " priority 100")),
        last(kind, id, Attribute.PREEMPT)
            .flag(dialect.fact(vrrp, kind + (vrrp ? " takes over" : " does not take over"))),
        tracks(kind, id));
  }

  /** One address, alive on all switches at once: without priority; its own where none is named. */
  private Group anycast(int id) {
    Setting<String> own =
        addresses instanceof Setting.Known<List<String>> known
            ? known.map(all -> all.get(0))
            : addresses.map(all -> "");
    return new Group(
        Kind.ANYCAST,
        id,
        dialect.nothing("an anycast gateway has no version"),
        last(Kind.ANYCAST, id, Attribute.ADDRESS).operand(Redundancy::value, own),
        false,
        dialect.nothing("an anycast gateway has no priority"),
        dialect.nothing("an anycast gateway has no priority"),
        false);
  }

  private Setting<Integer> version(Kind kind, int id) {
    Setting<Integer> fallback =
        switch (kind) {
          case VRRP -> dialect.fact(2, "vrrp version 2");
          case STANDBY -> dialect.fact(1, "standby version 1");
          case GLBP, ANYCAST -> dialect.nothing(kind + " has one version");
        };
    return last(kind, id, Attribute.VERSION).operand(GroupBuilder::number, fallback);
  }

  private LastWord<Redundancy> last(Kind kind, int id, Attribute attribute) {
    return lines.last(
        Matter.REDUNDANCY,
        Redundancy.class,
        statement ->
            statement.command() instanceof Redundancy line
                && line.kind() == kind
                && line.attribute() == attribute
                && line.value().filter(value -> value.endsWith(" secondary")).isEmpty()
                && line.group().orElse(id) == id);
  }

  private static Optional<Integer> number(Redundancy line) {
    return line.value().filter(digits -> digits.matches("[0-9]{1,9}")).map(Integer::valueOf);
  }

  /** The proprietary ones may leave the address to the other end. */
  private boolean learns(Kind kind, int id) {
    return kind != Kind.VRRP
        && last(kind, id, Attribute.ADDRESS) instanceof LastWord.Said<Redundancy> said
        && said.sets()
        && said.command().value().isEmpty();
  }

  private boolean tracks(Kind kind, int id) {
    return last(kind, id, Attribute.TRACK) instanceof LastWord.Said<Redundancy> said && said.sets();
  }
}
