package plumbline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import plumbline.text.Nearest;
import plumbline.text.Wording;

/** Reports command lines that cannot be understood. */
final class Usage {
  private Usage() {}

  /** Writes what is wrong and where help is. */
  static int report(Console console, ParameterException error) {
    CommandLine command = error.getCommandLine();
    String message =
        error instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()
            ? unknown(command, unmatched.getUnmatched().get(0), error.getMessage())
            : error.getMessage();
    console.complainAsProgram(decapitalised(message));
    console.complainAsProgram("see " + command.getCommandSpec().qualifiedName() + " --help");
    return Status.USAGE;
  }

  /**
   * Whether an argument, or the value of an option, is empty. An empty name of a file would stand
   * for the current folder; it is what a variable without a value leaves behind.
   */
  static boolean holdsEmpty(String... args) {
    for (String arg : args) {
      if (arg.equals("--")) {
        break;
      }
      if (arg.matches("--[a-z][a-z-]*=")) {
        return true;
      }
    }
    return List.of(args).contains("");
  }

  /** Says that an argument is empty. */
  static int reportEmpty(Console console) {
    console.complainAsProgram("an argument is empty; expected a value, or no argument at all");
    console.complainAsProgram("see plumbline --help");
    return Status.USAGE;
  }

  /** A word that is no option and no command, with the one that was most likely meant. */
  private static String unknown(CommandLine command, String word, String otherwise) {
    if (word.startsWith("-")) {
      List<String> options = new ArrayList<>();
      command.getCommandSpec().options().forEach(option -> options.addAll(List.of(option.names())));
      String name = word.contains("=") ? word.substring(0, word.indexOf('=')) : word;
      Optional<String> begins =
          options.stream()
              .filter(option -> name.length() > 2 && option.startsWith(name))
              .findFirst();
      return "unknown option "
          + Wording.quote(name)
          + begins
              .or(() -> Nearest.to(name, options))
              .map(option -> "; did you mean " + Wording.quote(option) + "?")
              .orElse("");
    }
    Set<String> commands = command.getSubcommands().keySet();
    return commands.isEmpty()
        ? otherwise
        : "unknown command " + Wording.quote(word) + "; " + Wording.remedy(word, commands, "");
  }

  /** GNU Coding Standards 4.4: what follows the program's name begins with a small letter. */
  private static String decapitalised(String message) {
    String line = message.lines().findFirst().orElse("");
    boolean word = line.length() > 1 && Character.isLowerCase(line.charAt(1));
    return word ? line.substring(0, 1).toLowerCase(Locale.ROOT) + line.substring(1) : line;
  }
}
