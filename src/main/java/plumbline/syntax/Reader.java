package plumbline.syntax;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import plumbline.port.PortNames;
import plumbline.statement.Command;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.PortCommand;
import plumbline.statement.SwitchCommand;
import plumbline.text.HiddenText;
import plumbline.text.Secrets;

/** Asks the grammar about one line, as the cutter needs it: what it says, and what it opens. */
final class Reader {
  private static final String GROUPS = " hsrp vrrp vrrpv3 glbp ";

  /** Keywords of headers whose lines are worded as a port's are. */
  private static final Set<String> BLOCKS_OF_PORT_LINES =
      Set.of("template", "port-profile", "profile", "macro");

  private static final List<String> PORT_WORDS =
      List.of("switchport", "spanning-tree", "channel-group", "storm-control");

  private final StatementSource source;

  Reader(StatementSource source) {
    this.source = source;
  }

  /** The meaning of a line in a context; a comment behind the statement is left out. */
  Meaning read(Context context, String text) {
    Meaning meaning = source.read(context, text);
    int stop = isUnknown(meaning) ? trailingComment(text) : -1;
    if (stop > 0) {
      return source.read(context, text.substring(0, stop).stripTrailing());
    }
    return meaning;
  }

  /** The meaning of a line that is garbled: never anything but unknown. */
  Meaning garbled(Context context, String text) {
    Meaning meaning = read(context, text);
    return isUnknown(meaning) ? meaning : doubtful(meaning);
  }

  /** The same statement as one that cannot be relied on. */
  static Meaning doubtful(Meaning meaning) {
    String quoted = firstWord(meaning.quote());
    String word = quoted.isEmpty() ? "?" : quoted;
    return new Meaning(Form.SET, new Command.Unknown(word, List.of(word)), word);
  }

  private static int trailingComment(String text) {
    for (int at = 2; at + 1 < text.length(); at++) {
      char c = text.charAt(at);
      boolean mark = c == '#' || c == '!';
      if (mark
          && CleanLines.isBlank(text.charAt(at - 1))
          && CleanLines.isBlank(text.charAt(at + 1))) {
        return at;
      }
    }
    return -1;
  }

  static String firstWord(String text) {
    for (int at = 0; at < text.length(); at++) {
      if (CleanLines.isBlank(text.charAt(at))) {
        return text.substring(0, at);
      }
    }
    return text;
  }

  static boolean isUnknown(Meaning meaning) {
    return meaning.command() instanceof Command.Unknown;
  }

  static boolean isHarmless(Meaning meaning) {
    return meaning.command() instanceof Command.Harmless;
  }

  /** Says whether a reading inside a port tells something of the port. */
  static boolean isPortFact(Meaning inner) {
    return inner.command() instanceof PortCommand;
  }

  /** Says whether a top-level reading tells more of the switch than a block that is not read. */
  static boolean isFact(Meaning top) {
    return top.command() instanceof SwitchCommand
        && !(top.command() instanceof SwitchCommand.OtherBlock);
  }

  /** Says whether a top-level reading is an interface header, whole or with a piece lost. */
  static boolean isLostHeader(Meaning top) {
    if (top.command() instanceof Command.Unknown unknown) {
      return !unknown.understood().isEmpty() && unknown.understood().get(0).equals("interface");
    }
    return top.form() == Form.SET && top.command() instanceof SwitchCommand.Interface;
  }

  /** A line that may be what is left of an interface header. */
  static Meaning lostHeader(String text, Meaning top) {
    String word = Secrets.mask(firstWord(text));
    HiddenText hidden = HiddenText.of(text);
    return new Meaning(
        Form.SET, new Command.Unknown(word, List.of("interface"), List.of(), hidden), word);
  }

  /** Says whether a known top-level reading is a line of its own, never the header of a block. */
  static boolean opensNothing(Meaning top) {
    if (top.command() instanceof Command.Harmless harmless) {
      return !BLOCKS_OF_PORT_LINES.contains(harmless.keyword().toLowerCase(Locale.ROOT));
    }
    return isFact(top)
        && opened(top, 0, 0).isTop()
        && !(top.command() instanceof SwitchCommand.Hostname);
  }

  /**
   * Says whether a line can stand in no block but a port's; descriptions, addresses and shutdown
   * stand in others too.
   */
  boolean isOfPortsAlone(String text) {
    String first = firstWord(text).toLowerCase(Locale.ROOT);
    String word =
        first.equals("no") ? EndUserCommand.word(text, 1).toLowerCase(Locale.ROOT) : first;
    return word.length() >= 2
        && PORT_WORDS.stream().anyMatch(known -> known.startsWith(word))
        && isPortFact(read(Context.PORT, text));
  }

  /** Says whether a top-level reading opens ports that are named clearly. */
  static boolean opensPorts(Meaning top) {
    return top.form() == Form.SET
        && top.command() instanceof SwitchCommand.Interface header
        && header.ports() instanceof PortNames.Reading.Ports;
  }

  /** The block that a top-level statement opens; outside every block if none. */
  static Block opened(Meaning meaning, int indent, int line) {
    Command command = meaning.command();
    if (command instanceof Command.Unknown unknown) {
      return isLostHeader(meaning)
          ? Block.unread("interface", indent, line)
          : Block.perhaps(unknown.firstWord(), indent, line);
    }
    if (command instanceof Command.Harmless harmless) {
      return Block.perhaps(harmless.keyword(), indent, line);
    }
    if (meaning.form() != Form.SET) {
      return Block.top();
    }
    if (command instanceof SwitchCommand.Interface header) {
      // Lines below a header that names no port must not reach any port.
      return header.ports() instanceof PortNames.Reading.NotAPort
          ? Block.unread("interface", indent, line)
          : Block.read(Context.PORT, indent, line);
    }
    if (command instanceof SwitchCommand.Vlans) {
      return Block.read(Context.VLAN, indent, line);
    }
    if (command instanceof SwitchCommand.VlanDatabaseBlock) {
      return Block.read(Context.VLAN_DATABASE, indent, line);
    }
    if (command instanceof SwitchCommand.RegionBlock) {
      return Block.read(Context.MST, indent, line);
    }
    return command instanceof SwitchCommand.OtherBlock other
        ? Block.unread(other.keyword(), indent, line)
        : Block.top();
  }

  /** The first two words of a line that opens a redundancy group inside a port. */
  static Optional<String> groupHeader(String text) {
    if ("hvgHVG".indexOf(text.charAt(0)) < 0) {
      return Optional.empty();
    }
    String kind = EndUserCommand.word(text, 0);
    if (kind.isEmpty() || !GROUPS.contains(" " + kind + " ")) {
      return Optional.empty();
    }
    String number = EndUserCommand.word(text, 1);
    String next = EndUserCommand.word(text, 2);
    boolean header =
        !number.isEmpty()
            && number.chars().allMatch(Character::isDigit)
            && (next.isEmpty() || next.startsWith("ipv") || next.startsWith("address-f"));
    return header ? Optional.of(kind + " " + number) : Optional.empty();
  }

  /** A line of a redundancy group as one statement: {@code hsrp 10} and {@code ip ...}. */
  static String joined(String group, String text) {
    String word = firstWord(text);
    boolean negated = word.equalsIgnoreCase("no") || word.equalsIgnoreCase("default");
    return negated ? word + " " + group + text.substring(word.length()) : group + " " + text;
  }
}
