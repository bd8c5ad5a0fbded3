package plumbline.run;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Tells the files that this program writes or reads for itself from configs: people keep reports
 * and designs beside the configs that they are about.
 */
final class OwnFiles {
  /** The formats name themselves near the top; a config may be as long as it likes. */
  private static final int HEAD = 64 * 1024;

  private static final Pattern FORMAT =
      Pattern.compile(
          "(?m)^[ \\t]*\\{?[ \\t]*\"?format\"?[ \\t]*:[ \\t]*\"?plumbline-(?<kind>[a-z]+)/[0-9]");

  private static final Pattern TEXT_REPORT =
      Pattern.compile(
          "\\A(?:CONFORMS|DRIFT|(?:NOT-)?AS-PLANNED|INCOMPLETE): [^\\n]*\\n(?s:.*?)\\nWhat this report does");

  private static final Pattern TICKET =
      Pattern.compile(
          "\\A# (?:CONFORMS|DRIFT|INCOMPLETE): [^\\n]*\\n\\n[0-9]+ checks? on [0-9]+ switch");

  /** The beginnings of SARIF and JUnit documents, which say whose they are in their own way. */
  private static final Pattern DRIVER =
      Pattern.compile("\"driver\": \\{\\s*\"name\": \"plumbline\"");

  private static final String SUITES = "<testsuites name=\"plumbline audit\" ";

  private static final String REPORT = "a report of plumbline";
  private static final String WAIVERS = "a file of waivers";

  private static final String FINDINGS_TABLE = "format,at,revision,severity,switch,port,subject,";

  private static final String SETTINGS_TABLE = "switch,file,dialect,port,setting,value,evidence,";

  private OwnFiles() {}

  /** Whether the text is a report of this program, or one of its files of waivers. */
  static boolean isNoDesign(String text) {
    return kind(text).filter(kind -> kind.equals(REPORT) || kind.equals(WAIVERS)).isPresent();
  }

  /** What the text is, a noun with its article, where it is one of this program's own files. */
  static Optional<String> kind(String text) {
    String head = text.substring(0, Math.min(text.length(), HEAD));
    Matcher format = FORMAT.matcher(head);
    if (format.find()) {
      return Optional.of(
          switch (format.group("kind")) {
            case "design" -> "a design";
            case "waivers" -> WAIVERS;
            default -> REPORT;
          });
    }
    boolean report =
        head.startsWith(SETTINGS_TABLE)
            || head.startsWith(FINDINGS_TABLE)
            || head.contains(SUITES)
            || DRIVER.matcher(head).find()
            || TICKET.matcher(head).find()
            || TEXT_REPORT.matcher(head).find();
    return report ? Optional.of(REPORT) : Optional.empty();
  }
}
