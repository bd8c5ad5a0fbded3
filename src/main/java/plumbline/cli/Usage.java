package plumbline.cli;

import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Reports command lines that cannot be understood. */
final class Usage {
  private Usage() {}

  /** Writes what is wrong and where help is. */
  static int report(Console console, ParameterException error) {
    CommandLine command = error.getCommandLine();
    console.complainAsProgram(decapitalised(error.getMessage()));
    console.complainAsProgram("see " + command.getCommandSpec().qualifiedName() + " --help");
    return Status.USAGE;
  }

  /** GNU Coding Standards 4.4: what follows the program's name begins with a small letter. */
  private static String decapitalised(String message) {
    String line = message.lines().findFirst().orElse("");
    boolean word = line.length() > 1 && Character.isLowerCase(line.charAt(1));
    return word ? line.substring(0, 1).toLowerCase(Locale.ROOT) + line.substring(1) : line;
  }
}
