package plumbline.yaml;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/** Says where a text breaks the rules of YAML or JSON, and how, without the parser's own terms. */
final class SyntaxFault {
  private SyntaxFault() {}

  /** The place of the fault: where an open quote or bracket begins, if that is what is wrong. */
  static Position place(String file, JsonProcessingException fault) {
    if (fault.getCause() instanceof MarkedYAMLException yaml) {
      Mark mark = yaml.getProblemMark();
      if (yaml.getContextMark() != null && (mark == null || opensHere(yaml))) {
        mark = yaml.getContextMark();
      }
      if (mark != null) {
        return new Position(file, mark.getLine() + 1, mark.getColumn() + 1);
      }
    }
    JsonLocation location = fault.getLocation();
    return location == null
        ? new Position(file, 1, 1)
        : new Position(
            file, Math.max(1, location.getLineNr()), Math.max(1, location.getColumnNr()));
  }

  /**
   * The trouble is seen far from its cause when something is never closed, or a key has no colon.
   */
  private static boolean opensHere(MarkedYAMLException fault) {
    String problem = String.valueOf(fault.getProblem());
    return problem.contains("end of stream")
        || problem.contains("<stream end>")
        || problem.contains("could not find expected ':'")
        || isOpenFlow(fault);
  }

  private static boolean isOpenFlow(MarkedYAMLException fault) {
    String context = String.valueOf(fault.getContext());
    return context.contains("flow sequence") || context.contains("flow mapping");
  }

  /** What is wrong, one sentence without full stop. */
  static String message(JsonProcessingException fault, boolean json) {
    if (fault instanceof StreamConstraintsException) {
      return "the file goes beyond what a design needs here; expected a design";
    }
    if (fault.getCause() instanceof MarkedYAMLException yaml) {
      return yamlMessage(yaml);
    }
    if (fault instanceof JsonEOFException) {
      return "the file ends too early; expected the closing bracket, brace or quote";
    }
    if (!json) {
      return "a key must be one word; expected a name and a colon";
    }
    String detail = String.valueOf(fault.getOriginalMessage());
    if (detail.contains("Illegal unquoted character")) {
      return "this quoted text runs over the end of the line; expected a closing quote";
    }
    return "this is no JSON here; check commas, quotes, brackets and braces";
  }

  private static String yamlMessage(MarkedYAMLException fault) {
    String problem = String.valueOf(fault.getProblem());
    String context = String.valueOf(fault.getContext());
    if (problem.contains("TAB")) {
      return "a tab cannot indent a line; use blanks";
    }
    if (problem.contains("cannot start any token")) {
      return "no text can start with "
          + problem.replaceFirst("(?s).*?'(.)'.*", "\"$1\"")
          + "; put the text in quotes";
    }
    if (context.contains("quoted scalar")) {
      return problem.contains("escape") || problem.contains("expected escape")
          ? "a backslash in double quotes stands before a letter that has no meaning there; use single"
              + " quotes"
          : "this quote is never closed";
    }
    if (context.contains("flow sequence")) {
      return "this list is never closed, or a comma is missing in it; expected \",\" or \"]\"";
    }
    if (context.contains("flow mapping")) {
      return "this map is never closed, or a comma is missing in it; expected \",\" or \"}\"";
    }
    if (problem.contains("mapping values are not allowed")) {
      return "a key cannot stand here; check the indentation of this line and the line above, or put"
          + " the text in quotes";
    }
    if (problem.contains("could not find expected ':'")) {
      return "a key without a colon; expected \"key: value\"";
    }
    if (context.contains("block collection")
        || context.contains("block mapping")
        || problem.contains("<document start>")) {
      return "this line does not fit to the lines above; check its indentation and brackets";
    }
    if (problem.contains("expected the node content")) {
      return "a value is missing here; expected text, a list or a map";
    }
    return "this is no YAML here; check indentation, quotes, brackets and colons";
  }
}
