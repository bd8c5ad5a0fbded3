package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import plumbline.setting.Evidence;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchText;

/**
 * The statements about one port, or about the whole switch, in order, with what their silence
 * means.
 *
 * @param statements in the order of the text
 * @param silence why an absent line is no default; empty where it is one
 * @param origin a line that put the defaults back, such as {@code default interface}
 * @param doubt why all of it is in doubt; empty where it is not
 * @param inherited lines by which a port takes settings from elsewhere; silence is then no default
 * @param truncation where the text breaks off: statements from there on are in doubt
 */
record Lines(
    List<Statement> statements,
    Optional<String> silence,
    Optional<Evidence> origin,
    Optional<String> doubt,
    Optional<Inheritance> inherited,
    Optional<SwitchText.Truncation> truncation) {
  /** Copies the statements. */
  Lines {
    statements = List.copyOf(statements);
  }

  /** The last word of the given kind of command on a matter. */
  <C extends Command> LastWord<C> last(Matter matter, Class<C> type) {
    return last(matter, type, statement -> true);
  }

  /** The last word on a matter, among the statements that pass the filter. */
  <C extends Command> LastWord<C> last(Matter matter, Class<C> type, Predicate<Statement> filter) {
    LastWord<C> last = new LastWord.Silent<>(origin);
    for (Statement statement : statements) {
      if (bearsOn(statement, matter, type, filter)) {
        last = word(statement, type);
      }
    }
    return settle(last);
  }

  private <C extends Command> boolean bearsOn(
      Statement statement, Matter matter, Class<C> type, Predicate<Statement> filter) {
    Command command = statement.command();
    if (command instanceof Command.Unknown unknown) {
      return matter.doubtedBy(unknown);
    }
    if (command instanceof PortCommand.Unmodelled line
        && matter.doubtedBy(List.of(line.keywords().split(" ", -1)))) {
      return true;
    }
    return type.isInstance(command) && filter.test(statement);
  }

  private <C extends Command> LastWord<C> word(Statement statement, Class<C> type) {
    List<Evidence> line = List.of(statement.evidence());
    if (statement.command() instanceof Command.Unknown) {
      return new LastWord.Open<>("line " + statement.line() + " is not understood", line, false);
    }
    if (statement.command() instanceof PortCommand.Unmodelled) {
      return new LastWord.Open<>("line " + statement.line() + " is not modelled", line, false);
    }
    Optional<String> inDoubt = doubtOf(statement);
    if (inDoubt.isPresent()) {
      return new LastWord.Open<>(inDoubt.get(), line, false);
    }
    return new LastWord.Said<>(statement, type.cast(statement.command()));
  }

  /** Why a statement is in doubt by its place; empty where it is not. */
  Optional<String> doubtOf(Statement statement) {
    return truncation.filter(cut -> statement.line() >= cut.line()).map(SwitchTexts::breaksOff);
  }

  private <C extends Command> LastWord<C> settle(LastWord<C> last) {
    if (doubt.isPresent()) {
      List<Evidence> evidence = new ArrayList<>();
      if (last instanceof LastWord.Said<C> said) {
        evidence.add(said.statement().evidence());
      } else if (last instanceof LastWord.Open<C> open) {
        evidence.addAll(open.evidence());
      }
      return new LastWord.Open<>(doubt.get(), evidence, false);
    }
    if (last instanceof LastWord.Silent<C> && silence.isPresent()) {
      return new LastWord.Open<>(
          silence.get(), inherited.map(Inheritance::evidence).orElse(List.of()), true);
    }
    if (last instanceof LastWord.Said<C> said
        && inherited.isPresent()
        && !Inheritance.decides(said.statement())) {
      List<Evidence> evidence = new ArrayList<>(List.of(said.statement().evidence()));
      evidence.addAll(inherited.get().evidence());
      return new LastWord.Open<>(inherited.get().why(), evidence, false);
    }
    return last;
  }

  /** The same lines in a text whose silence is a default all the same, and why. */
  Lines heard(Evidence why) {
    return new Lines(statements, Optional.empty(), Optional.of(why), doubt, inherited, truncation);
  }

  /** The same text with only these of its statements, in order. */
  Lines only(List<Statement> some) {
    return new Lines(some, silence, origin, doubt, inherited, truncation);
  }

  /** Whether the text is a pasted script. */
  boolean isScript() {
    return silence.filter(SwitchTexts.SCRIPT::equals).isPresent();
  }

  /** Why silence or the whole is open; empty where an absent line is a default. */
  Optional<String> open() {
    return doubt.or(() -> silence);
  }

  /** Whether a statement of that kind stands in its setting form. */
  boolean sets(Class<? extends Command> type) {
    return statements.stream()
        .anyMatch(
            statement -> type.isInstance(statement.command()) && statement.form() == Form.SET);
  }
}
