package plumbline.syntax;

import java.util.List;
import java.util.Optional;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.PortCommand;
import plumbline.statement.SwitchCommand;

/**
 * Tells for every line of a capture whether it is a statement, and collects the marks by which
 * switches are told apart. Knows no blocks.
 */
final class LineScan {
  private enum State {
    /** Lines are config. */
    CONFIG,
    /** Lines without prompt are answers of the switch, unless the grammar knows them. */
    SESSION,
    /** Lines are the output of another command. */
    OUTPUT,
    /** Lines are a table, up to the next blank one. */
    TABLE,
    /** The config has ended. */
    ENDED
  }

  /** Text of the mark of a filtered config that may yet be whole. */
  static final String MAY_BE_ALL = "may be all";

  private static final List<String> REFUSALS =
      List.of("% Invalid", "% Incomplete", "% Ambiguous", "% Unrecognized", "% Unknown");

  private final CleanLines lines;
  private final StatementSource source;
  private final ScannedLines out;
  private final Enclosed enclosed;
  private final NextLines next;
  private State state = State.CONFIG;
  private int base = -1;

  /** A config is being saved: what the switch then says looks like the top of a dump. */
  private boolean saving;

  private boolean typedAtPrompts;

  private LineScan(CleanLines lines, StatementSource source) {
    this.lines = lines;
    this.source = source;
    this.out = new ScannedLines(lines);
    this.enclosed = new Enclosed(lines, out);
    this.next = new NextLines(lines, out);
  }

  /** Scans all lines of a text. */
  static ScannedLines scan(CleanLines lines, StatementSource source) {
    LineScan scan = new LineScan(lines, source);
    int line = 0;
    while (line < lines.count()) {
      line = scan.scan(line);
    }
    return scan.out;
  }

  private int scan(int line) {
    if (lines.isEmpty(line)) {
      out.kind(line, lines.paged(line) ? LineKind.NOISE : LineKind.BLANK);
      state = state == State.TABLE ? State.CONFIG : state;
      return line + 1;
    }
    String content = lines.content(line);
    Optional<Prompt> prompt = Prompt.of(content);
    if (prompt.isPresent()) {
      saving = EndUserCommand.isSave(prompt.get().command());
      return prompted(line, prompt.get());
    }
    if (saving && Shapes.startsWith(content, "Building configuration")) {
      return put(line, LineKind.NOISE);
    }
    if (state == State.OUTPUT || state == State.ENDED || state == State.TABLE) {
      if (!Lead.beginsConfig(content, state == State.ENDED)) {
        saving |= EndUserCommand.isSave(content);
        return put(line, Lead.isComment(content) ? LineKind.COMMENT : LineKind.NOISE);
      }
      state = State.CONFIG;
    }
    if (LogLine.isTimed(content)) {
      return put(line, LineKind.LOG);
    }
    int log = LogLine.mark(content);
    return log >= 0 ? logged(line, content, log) : config(line, content);
  }

  private int put(int line, LineKind kind) {
    out.kind(line, kind);
    return line + 1;
  }

  private int mark(int line, Mark.Kind kind, String text) {
    out.mark(line, kind, text);
    return put(line, LineKind.NOISE);
  }

  private int prompted(int line, Prompt prompt) {
    boolean config = prompt.takesStatements();
    out.mark(line, config ? Mark.Kind.CONFIG_PROMPT : Mark.Kind.PROMPT, prompt.host());
    out.prompt(line, prompt);
    String command = prompt.command();
    out.kind(line, LineKind.NOISE);
    if (line > 0
        && out.kind(line - 1) == LineKind.STATEMENT
        && out.prompt(line - 1).filter(above -> above.isCompletedBy(prompt)).isPresent()) {
      out.kind(line - 1, LineKind.NOISE);
    }
    if (command.isEmpty()) {
      boolean inside = state == State.CONFIG && isPortLineBelow(line);
      state = config ? State.SESSION : inside ? State.CONFIG : State.OUTPUT;
      return line + 1;
    }
    out.skip(line, prompt.length());
    if (Lead.isComment(command)) {
      state = config ? State.SESSION : State.CONFIG;
      return comment(line, command);
    }
    return config ? typed(line, command) : atExecLevel(line, command);
  }

  /** Says whether a port's lines go on below a prompt at which nothing was typed. */
  private boolean isPortLineBelow(int line) {
    int below = line + 1;
    while (below < lines.count() && lines.isEmpty(below)) {
      below++;
    }
    return below < lines.count()
        && base >= 0
        && lines.indent(below) > base
        && source.read(Context.PORT, lines.content(below)).command() instanceof PortCommand;
  }

  private int atExecLevel(int line, String command) {
    EndUserCommand what = EndUserCommand.of(command);
    state =
        switch (what) {
          case SHOW_CONFIG, SHOW_PART -> State.CONFIG;
          case CONFIGURE, VLAN_DATABASE -> State.SESSION;
          case OTHER -> State.OUTPUT;
        };
    switch (what) {
      case SHOW_CONFIG -> mark(line, Mark.Kind.WHOLE_ECHO, "");
      case SHOW_PART ->
          mark(line, Mark.Kind.PART_ECHO, EndUserCommand.mayShowAll(command) ? MAY_BE_ALL : "");
      case CONFIGURE -> mark(line, Mark.Kind.CONFIGURE, "");
      case VLAN_DATABASE -> out.kind(line, LineKind.STATEMENT);
      case OTHER -> out.kind(line, LineKind.NOISE);
    }
    return line + 1;
  }

  private int typed(int line, String command) {
    state = State.SESSION;
    typedAtPrompts = true;
    if (Shapes.startsWith(command, "do ")) {
      return atExecLevel(line, command.substring(3).stripLeading());
    }
    if (command.endsWith("?") || Lead.isNoStatement(command)) {
      state = command.endsWith("?") ? State.OUTPUT : State.SESSION;
      return line + 1;
    }
    if (command.equals("^Z")) {
      state = State.ENDED;
      return line + 1;
    }
    int block = enclosed.end(line, command);
    return block > line ? block : statement(line, command);
  }

  /** A statement that the switch refused in the capture itself never took effect. */
  private void refuse(int line, String content) {
    if (content.charAt(0) != '%') {
      return;
    }
    int above = line - 1;
    while (above >= 0 && (lines.isEmpty(above) || lines.content(above).equals("^"))) {
      above--;
    }
    boolean refused = REFUSALS.stream().anyMatch(text -> Shapes.startsWith(content, text));
    if (refused && above >= 0 && out.prompt(above).isPresent()) {
      out.kind(above, LineKind.NOISE);
    }
  }

  private int logged(int line, String content, int log) {
    if (!LogLine.isWhole(content, log)) {
      return put(line, LineKind.GARBLED);
    }
    int header = LogLine.joinedHeader(content, log);
    int joined = header >= 0 ? header : LogLine.joinedText(content);
    if (joined >= 0) {
      out.skip(line, joined);
      return put(line, LineKind.GARBLED);
    }
    return put(line, LineKind.LOG);
  }

  private int config(int line, String content) {
    if (Lead.isComment(content)) {
      return comment(line, content);
    }
    if (Shapes.isPreamble(content)) {
      Preamble preamble = Preamble.of(content);
      preamble.bytes().ifPresent(n -> out.mark(line, Mark.Kind.SIZE, "" + n));
      boolean ends = preamble.bytes().isPresent();
      return mark(line, ends ? Mark.Kind.START_OF_ENDING : Mark.Kind.START, "");
    }
    if (Lead.isNoStatement(content) && !next.isLogAbove(line) && !next.isListAbove(line, content)) {
      saving = EndUserCommand.isSave(content);
      refuse(line, content);
      return put(line, LineKind.NOISE);
    }
    if (content.startsWith("config-file-header")) {
      return enclosed.endOfBareNameHeader(line);
    }
    if (Shapes.isSeparator(content)) {
      state = content.contains(" show running-config") ? State.CONFIG : State.OUTPUT;
      return put(line, LineKind.NOISE);
    }
    int block = enclosed.end(line, content);
    if (block > line) {
      return block;
    }
    if (lines.indent(line) == 0 && next.isTable(line, content)) {
      state = State.TABLE;
      return put(line, LineKind.NOISE);
    }
    if (Lead.isEcho(content)) {
      return atExecLevel(line, content);
    }
    // Where every statement is typed at a prompt, other lines are what the switch answers.
    if (state == State.SESSION && typedAtPrompts && isUnknown(content)) {
      return put(line, LineKind.NOISE);
    }
    return statement(line, content);
  }

  private int comment(int line, String content) {
    if (content.length() > 1 && Shapes.isHeaderComment(content)) {
      boolean ends = Shapes.isEndPrintingComment(content);
      out.mark(line, ends ? Mark.Kind.START_OF_ENDING : Mark.Kind.START, "");
    }
    return put(line, LineKind.COMMENT);
  }

  private int statement(int line, String content) {
    out.kind(line, LineKind.STATEMENT);
    saving = false;
    base = base < 0 ? lines.indent(line) : base;
    switch (content.charAt(0)) {
      case 'e', 'E' -> {
        if (content.equalsIgnoreCase("end") && lines.indent(line) <= base) {
          out.mark(line, Mark.Kind.END, "");
          state = State.ENDED;
        }
      }
      case 'v', 'V' -> {
        if (Shapes.isVersion(content)) {
          boolean ends = Shapes.isEndPrintingVersion(content);
          out.mark(line, ends ? Mark.Kind.START_OF_ENDING : Mark.Kind.START, "");
        }
      }
      case 'h', 'H', 's', 'S' -> {
        if (lines.indent(line) <= base
            && content.indexOf(' ') > 0
            && source.mayStart(Context.TOP, EndUserCommand.word(content, 0))
            && source.read(Context.TOP, content).command() instanceof SwitchCommand.Hostname name) {
          name.name().ifPresent(text -> out.mark(line, Mark.Kind.HOSTNAME, text));
        }
      }
      default -> {}
    }
    return line + 1;
  }

  private boolean isUnknown(String content) {
    for (Context context : Context.values()) {
      if (context != Context.OTHER
          && !(source.read(context, content).command() instanceof Command.Unknown)) {
        return false;
      }
    }
    return true;
  }
}
