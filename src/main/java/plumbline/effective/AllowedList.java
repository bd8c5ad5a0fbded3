package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Allowed;
import plumbline.statement.Statement;
import plumbline.vlan.VlanSet;

/**
 * The allowed list of a trunk, exact over 1 to 4094: what is allowed for certain and what perhaps.
 *
 * @param certain allowed for certain
 * @param possible allowed for certain or perhaps
 * @param doubt why the two differ; empty where they are equal and known to be the list
 * @param evidence the lines that made it, or the default
 */
record AllowedList(
    VlanSet certain, VlanSet possible, Optional<String> doubt, List<Evidence> evidence) {
  private static final String NO_BASE =
      "the list is changed by `add` or `remove` and its base is not in this text";
  private static final String SECOND_LIST =
      "a second list without `add` replaces the first or adds to it";

  /** Copies the evidence. */
  AllowedList {
    evidence = List.copyOf(evidence);
  }

  /** Reads a port's list from its lines. */
  static AllowedList of(Lines lines, Dialect dialect) {
    AllowedList list = start(lines, dialect);
    for (Statement statement : lines.statements()) {
      list = list.then(statement, lines, dialect);
    }
    return lines.doubt().isPresent() ? list.inDoubt(lines.doubt().get()) : list;
  }

  /** The list as a setting. */
  Setting<VlanSet> setting() {
    return doubt.isPresent()
        ? new Setting.Unknown<>(doubt.get(), evidence)
        : new Setting.Known<>(certain, evidence);
  }

  private static AllowedList start(Lines lines, Dialect dialect) {
    List<Evidence> evidence = new ArrayList<>();
    lines.origin().ifPresent(evidence::add);
    if (lines.silence().isPresent()) {
      return new AllowedList(VlanSet.NONE, VlanSet.ALL, lines.silence(), evidence);
    }
    evidence.add(all(dialect));
    return new AllowedList(VlanSet.ALL, VlanSet.ALL, Optional.empty(), evidence);
  }

  private static Evidence all(Dialect dialect) {
    return dialect.because("all VLANs allowed");
  }

  private AllowedList then(Statement statement, Lines lines, Dialect dialect) {
    Command command = statement.command();
    if (command instanceof Command.Unknown unknown && Matter.ALLOWED.doubtedBy(unknown)) {
      return open("line " + statement.line() + " is not understood", statement);
    }
    if (command instanceof PortCommand.Unmodelled line && SwitchingLines.mayReachTrunks(line)) {
      return open("line " + statement.line() + " is not modelled", statement);
    }
    if (!(command instanceof Allowed allowed)) {
      return this;
    }
    Optional<String> place = lines.doubtOf(statement);
    return place.isPresent() ? open(place.get(), statement) : change(allowed, statement, dialect);
  }

  private AllowedList change(Allowed allowed, Statement statement, Dialect dialect) {
    VlanSet operand = allowed.vlans();
    Evidence line = statement.evidence();
    if (statement.form() != Form.SET) {
      return allowed.setsMode() && statement.form() == Form.NO && !operand.isEmpty()
          ? remove(operand, line)
          : new AllowedList(
              VlanSet.ALL, VlanSet.ALL, Optional.empty(), List.of(line, all(dialect)));
    }
    return switch (allowed.change()) {
      case SET -> set(allowed, line);
      case EXCEPT -> exactly(operand.complement(), line);
      case ALL -> exactly(VlanSet.ALL, line);
      case NONE -> exactly(VlanSet.NONE, line);
      case ADD -> add(operand, line);
      case REMOVE -> remove(operand, line);
    };
  }

  private static AllowedList exactly(VlanSet vlans, Evidence line) {
    return new AllowedList(vlans, vlans, Optional.empty(), List.of(line));
  }

  /** Spellings that imply the trunk mode add to the list in one family and replace it elsewhere. */
  private AllowedList set(Allowed allowed, Evidence line) {
    if (!allowed.setsMode() || !hasList() || certain.equals(allowed.vlans())) {
      return exactly(allowed.vlans(), line);
    }
    return new AllowedList(
        allowed.vlans(), possible.plus(allowed.vlans()), Optional.of(SECOND_LIST), with(line));
  }

  private AllowedList add(VlanSet operand, Evidence line) {
    return new AllowedList(
        hasList() ? certain.plus(operand) : operand,
        possible.plus(operand),
        hasList() ? doubt : Optional.of(NO_BASE),
        with(line));
  }

  private AllowedList remove(VlanSet operand, Evidence line) {
    return new AllowedList(
        hasList() ? certain.minus(operand) : VlanSet.NONE,
        possible.minus(operand),
        hasList() ? doubt : Optional.of(NO_BASE),
        with(line));
  }

  /** Whether a line, rather than the default or silence, made the list so far. */
  private boolean hasList() {
    return evidence.stream().anyMatch(Evidence.Line.class::isInstance);
  }

  /** Lines before it no longer matter: this one alone leaves the list open. */
  private AllowedList open(String why, Statement statement) {
    return new AllowedList(
        VlanSet.NONE, VlanSet.ALL, Optional.of(why), List.of(statement.evidence()));
  }

  private AllowedList inDoubt(String why) {
    return new AllowedList(VlanSet.NONE, VlanSet.ALL, Optional.of(why), evidence);
  }

  private List<Evidence> with(Evidence line) {
    List<Evidence> all = new ArrayList<>(evidence);
    if (!hasList()) {
      all.clear();
    }
    all.add(line);
    return all;
  }
}
