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
    Draft draft = new Draft(lines, dialect);
    lines.statements().forEach(draft::take);
    AllowedList list = new AllowedList(draft.certain, draft.possible, draft.doubt, draft.evidence);
    return lines.doubt().isPresent() ? list.inDoubt(lines.doubt().get()) : list;
  }

  /** The list as a setting. */
  Setting<VlanSet> setting() {
    return doubt.isPresent()
        ? new Setting.Unknown<>(doubt.get(), evidence)
        : new Setting.Known<>(certain, evidence);
  }

  /**
   * The list as it is if its base is the default: where it is changed and no line or silence of the
   * text says what it was before.
   */
  Optional<VlanSet> fromDefault(Lines lines) {
    return doubt.filter(NO_BASE::equals).isPresent() && lines.silence().isEmpty()
        ? Optional.of(possible)
        : Optional.empty();
  }

  private AllowedList inDoubt(String why) {
    return new AllowedList(VlanSet.NONE, VlanSet.ALL, Optional.of(why), evidence);
  }

  /** The list as the lines make it, one after the other. */
  private static final class Draft {
    private final Lines lines;
    private final Dialect dialect;
    private final List<Evidence> evidence = new ArrayList<>();
    private VlanSet certain = VlanSet.ALL;
    private VlanSet possible = VlanSet.ALL;
    private Optional<String> doubt = Optional.empty();

    /** Whether a line, rather than the default or silence, made the list so far. */
    private boolean hasList;

    Draft(Lines lines, Dialect dialect) {
      this.lines = lines;
      this.dialect = dialect;
      lines.origin().ifPresent(evidence::add);
      if (lines.silence().isPresent()) {
        lines.inherited().ifPresent(inherited -> evidence.addAll(inherited.evidence()));
        certain = VlanSet.NONE;
        doubt = lines.silence();
      } else {
        evidence.add(all());
      }
      hasList = evidence.stream().anyMatch(Evidence.Line.class::isInstance);
    }

    private Evidence all() {
      return dialect.because("all VLANs allowed");
    }

    void take(Statement statement) {
      Command command = statement.command();
      if (command instanceof Command.Unknown unknown && Matter.ALLOWED.doubtedBy(unknown)) {
        open("line " + statement.line() + " is not understood", statement);
      } else if (command instanceof PortCommand.Unmodelled line
          && SwitchingLines.mayReachTrunks(line)) {
        open("line " + statement.line() + " is not modelled", statement);
      } else if (command instanceof Allowed allowed) {
        allowed(allowed, statement);
      }
    }

    private void allowed(Allowed allowed, Statement statement) {
      Optional<String> place = lines.doubtOf(statement);
      if (lines.inherited().isPresent() && !Inheritance.decides(statement)) {
        open(lines.inherited().get().why(), statement);
      } else if (place.isPresent()) {
        open(place.get(), statement);
      } else if (statement.form() == Form.SET) {
        set(allowed, statement.evidence());
      } else {
        undo(allowed, statement);
      }
    }

    private void undo(Allowed allowed, Statement statement) {
      if (allowed.setsMode() && statement.form() == Form.NO && !allowed.vlans().isEmpty()) {
        remove(allowed.vlans(), statement.evidence());
      } else {
        exactly(VlanSet.ALL, statement.evidence());
        evidence.add(all());
      }
    }

    private void set(Allowed allowed, Evidence line) {
      switch (allowed.change()) {
        case SET -> list(allowed, line);
        case EXCEPT -> exactly(allowed.vlans().complement(), line);
        case ALL -> exactly(VlanSet.ALL, line);
        case NONE -> exactly(VlanSet.NONE, line);
        case ADD -> add(allowed.vlans(), line);
        case REMOVE -> remove(allowed.vlans(), line);
      }
    }

    private void exactly(VlanSet vlans, Evidence line) {
      certain = vlans;
      possible = vlans;
      doubt = Optional.empty();
      evidence.clear();
      note(line);
    }

    /**
     * Spellings that imply the trunk mode add to the list in one family and replace it elsewhere.
     */
    private void list(Allowed allowed, Evidence line) {
      if (!allowed.setsMode() || !hasList || certain.equals(allowed.vlans())) {
        exactly(allowed.vlans(), line);
        return;
      }
      certain = allowed.vlans();
      possible = possible.plus(allowed.vlans());
      doubt = Optional.of(SECOND_LIST);
      note(line);
    }

    private void add(VlanSet operand, Evidence line) {
      certain = hasList ? certain.plus(operand) : operand;
      possible = possible.plus(operand);
      doubt = hasList ? doubt : Optional.of(NO_BASE);
      note(line);
    }

    private void remove(VlanSet operand, Evidence line) {
      certain = hasList ? certain.minus(operand) : VlanSet.NONE;
      possible = possible.minus(operand);
      doubt = hasList ? doubt : Optional.of(NO_BASE);
      note(line);
    }

    /** Lines before it no longer matter: this one alone leaves the list open. */
    private void open(String why, Statement statement) {
      certain = VlanSet.NONE;
      possible = VlanSet.ALL;
      doubt = Optional.of(why);
      evidence.clear();
      note(statement.evidence());
    }

    private void note(Evidence line) {
      if (!hasList) {
        evidence.clear();
      }
      evidence.add(line);
      hasList = true;
    }
  }
}
