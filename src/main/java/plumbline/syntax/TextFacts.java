package plumbline.syntax;

import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.syntax.SwitchSplitter.Part;

/** What the text of one switch is as a whole: pasted or dumped, flat or indented. */
final class TextFacts {
  /** So many times more lines beside port headers than below them: indentation was lost. */
  private static final int CLEARLY = 3;

  private final ScannedLines scan;
  private final Part part;
  private final MarkedPart marked;
  private final boolean flat;

  TextFacts(ScannedLines scan, MarkedPart marked) {
    this.scan = scan;
    this.marked = marked;
    this.part = marked.part();
    this.flat = findFlat();
  }

  /** Says whether indentation tells nothing, so that blocks are told by knowledge. */
  boolean flat() {
    return flat;
  }

  private boolean findFlat() {
    int base = -1;
    int deeper = 0;
    int below = 0;
    int beside = 0;
    int header = -1;
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) != LineKind.STATEMENT || scan.prompt(line).isPresent()) {
        continue;
      }
      int indent = scan.lines().indent(line);
      base = base < 0 ? indent : base;
      deeper += indent > base ? 1 : 0;
      boolean opens = looksLikePort(scan.lines().content(line));
      if (header >= 0 && indent > header) {
        below++;
      } else if (header >= 0 && !opens) {
        beside++;
      }
      header = opens ? indent : -1;
    }
    return deeper == 0 || beside > CLEARLY * (below == 0 ? deeper : below);
  }

  private static boolean looksLikePort(String content) {
    char last = content.charAt(content.length() - 1);
    return Character.isDigit(last) && Shapes.startsWith(content, "int");
  }

  /**
   * Says whether the text is a pasted script or session, in which an absent line is no default.
   *
   * <p>A text is a dump, not a script, if something is in it that only a dump has: a size line or
   * {@code Building configuration}, a version line, a comment that switches put on top, the echo of
   * a command that shows a whole config, a bare-name header. Without such a mark it is a script if
   * it was typed in a config mode (a prompt of such a mode, {@code configure terminal}), if it is
   * the output of a command that shows only part of a config (but not if its filter may leave all
   * of it, and version, name and end are there), or if it has no indentation; the last does not
   * hold for a text that names its switch, closes with {@code end} and never says {@code exit}:
   * that is a dump whose indentation was lost. An indented text without any mark is a dump, but not
   * if all that it says is a switch's name and what some ports do: every dump says more beside its
   * ports, so that this is a fragment, a script like any other.
   */
  boolean script(Cutter.Cut cut) {
    boolean part = false;
    for (Mark mark : marked.marks()) {
      switch (mark.kind()) {
        case PART_ECHO -> part = !mark.text().equals(LineScan.MAY_BE_ALL) || !isComplete();
        case WHOLE_ECHO -> {
          return false;
        }
        case START, START_OF_ENDING -> {
          if (!part) {
            return false;
          }
        }
        default -> {}
      }
    }
    if (part || marked.has(Mark.Kind.CONFIGURE) || marked.has(Mark.Kind.CONFIG_PROMPT)) {
      return true;
    }
    return isFragment(cut)
        || (flat && !(marked.has(Mark.Kind.HOSTNAME) && marked.ends() && !marked.says("exit")));
  }

  /** Says whether nothing stands beside ports but the switch's name. */
  private boolean isFragment(Cutter.Cut cut) {
    if (marked.has(Mark.Kind.END)
        || marked.has(Mark.Kind.OPEN_BANNER)
        || marked.has(Mark.Kind.OPEN_BLOB)) {
      return false;
    }
    boolean ports = false;
    for (Statement statement : cut.statements()) {
      if (statement.command() instanceof SwitchCommand.Interface) {
        ports = true;
      } else if (statement.context() != Context.PORT && !isSilent(statement)) {
        return false;
      }
    }
    return ports;
  }

  private static boolean isSilent(Statement statement) {
    return statement.command() instanceof SwitchCommand.Hostname
        || statement.command() instanceof Command.Exit
        || (statement.command() instanceof Command.Layout layout
            && layout.kind() != Command.Layout.Kind.BANNER)
        || (statement.context() == Context.OTHER && Reader.isHarmless(statement.meaning()))
        || Reader.isLostHeader(statement.meaning());
  }

  /** Says whether all is there that frames a dump: a version line, a name and an end. */
  private boolean isComplete() {
    if (!marked.has(Mark.Kind.HOSTNAME) || !marked.has(Mark.Kind.END)) {
      return false;
    }
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) == LineKind.STATEMENT && Shapes.isVersion(scan.statement(line))) {
        return true;
      }
    }
    return false;
  }
}
