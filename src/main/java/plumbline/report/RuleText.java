package plumbline.report;

import java.util.ArrayList;
import java.util.List;
import plumbline.finding.Severity;

/**
 * What reports tell of a rule.
 *
 * @param id its name
 * @param group the word for what it looks at
 * @param floor severity that its findings have at least
 * @param summary one line, no full stop
 * @param source clause, published requirement, or common practice
 * @param page its page, Markdown with one heading of the second level for each section
 */
public record RuleText(
    String id, String group, Severity floor, String summary, String source, String page) {
  private static final String HEADING = "## ";

  /** The body of a section of the page, without blank lines around it; empty if there is none. */
  public String section(String title) {
    List<String> body = new ArrayList<>();
    boolean within = false;
    for (String line : page.lines().toList()) {
      if (line.startsWith(HEADING)) {
        within = line.equals(HEADING + title);
      } else if (within) {
        body.add(line);
      }
    }
    return String.join("\n", body).strip();
  }
}
