package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.Statement;

/**
 * What the lines finally say on one matter: a statement, nothing (the default applies), or nothing
 * that can be told.
 *
 * @param <C> the command that decides the matter
 */
sealed interface LastWord<C extends Command> {
  /**
   * The last statement on the matter.
   *
   * @param statement at its place
   * @param command what it names
   */
  record Said<C extends Command>(Statement statement, C command) implements LastWord<C> {
    /** Whether the statement sets something; else it undoes what earlier lines set. */
    boolean sets() {
      return statement.form() == Form.SET;
    }

    /** Whether it is the {@code no} form. */
    boolean negates() {
      return statement.form() == Form.NO;
    }

    /** A value that this statement decides. */
    <T> Setting<T> known(T value) {
      return Setting.known(value, statement.evidence());
    }

    /** The default that holds since this statement undoes the lines before it. */
    <T> Setting<T> backTo(Setting<T> fallback) {
      return LastWord.behind(statement.evidence(), fallback);
    }
  }

  /**
   * No statement, in a text whose silence means the default.
   *
   * @param origin a line that put the defaults back, such as {@code default interface}
   */
  record Silent<C extends Command>(Optional<Evidence> origin) implements LastWord<C> {}

  /**
   * The text does not tell.
   *
   * @param why a clause
   * @param evidence the lines that leave it open
   * @param silence whether it is open for want of any line on the matter
   */
  record Open<C extends Command>(String why, List<Evidence> evidence, boolean silence)
      implements LastWord<C> {
    /** Copies the evidence. */
    public Open {
      evidence = List.copyOf(evidence);
    }
  }

  /** The setting that follows from it. */
  default <T> Setting<T> decide(Function<Said<C>, Setting<T>> said, Supplier<Setting<T>> silent) {
    if (this instanceof Said<C> last) {
      return said.apply(last);
    }
    if (this instanceof Open<C> open) {
      return new Setting.Unknown<>(open.why(), open.evidence());
    }
    Setting<T> fallback = silent.get();
    return ((Silent<C>) this).origin().map(line -> behind(line, fallback)).orElse(fallback);
  }

  /** The operand where a line sets one; else the fallback. */
  default <T> Setting<T> operand(Function<C, Optional<T>> value, Setting<T> fallback) {
    return decide(
        last -> {
          Optional<T> operand = last.sets() ? value.apply(last.command()) : Optional.empty();
          return operand.isPresent() ? last.known(operand.get()) : last.backTo(fallback);
        },
        () -> fallback);
  }

  /** True where a line sets it, false where a line negates it; else the fallback. */
  default Setting<Boolean> flag(Setting<Boolean> fallback) {
    return decide(
        last ->
            switch (last.statement().form()) {
              case SET -> last.known(true);
              case NO -> last.known(false);
              case DEFAULT -> last.backTo(fallback);
            },
        () -> fallback);
  }

  /** The setting with a line of evidence before its own. */
  static <T> Setting<T> behind(Evidence first, Setting<T> setting) {
    List<Evidence> all = new ArrayList<>();
    all.add(first);
    setting.evidence().stream().filter(one -> !one.equals(first)).forEach(all::add);
    if (setting instanceof Setting.Known<T> known) {
      return new Setting.Known<>(known.known(), all);
    }
    if (setting instanceof Setting.Unknown<T> unknown) {
      return new Setting.Unknown<>(unknown.why(), all);
    }
    return new Setting.Absent<>(all);
  }
}
