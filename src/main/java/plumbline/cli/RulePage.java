package plumbline.cli;

import java.util.ArrayList;
import java.util.List;
import plumbline.text.Page;

/** The page of a rule on a terminal: prose is wrapped anew, examples stay as they are. */
final class RulePage {
  private static final String FENCE = "```";
  private static final String ITEM = "- ";

  private final StringBuilder text = new StringBuilder();
  private final List<String> prose = new ArrayList<>();

  private RulePage() {}

  /**
   * Lays out a page.
   *
   * @param markdown headings, paragraphs, lists and fenced blocks
   * @return the same with lines of at most 80 columns, those of fenced blocks aside
   */
  static String of(String markdown) {
    RulePage page = new RulePage();
    boolean fenced = false;
    for (String line : markdown.lines().toList()) {
      boolean fence = line.startsWith(FENCE);
      if (fenced || fence || line.isBlank() || line.startsWith("#")) {
        page.flush();
        page.text.append(line).append('\n');
        fenced ^= fence;
      } else {
        if (line.startsWith(ITEM)) {
          page.flush();
        }
        page.prose.add(line.strip());
      }
    }
    page.flush();
    return page.text.toString();
  }

  private void flush() {
    if (prose.isEmpty()) {
      return;
    }
    String words = String.join(" ", prose);
    boolean item = words.startsWith(ITEM);
    text.append(
        new Page(false).hanging(item ? ITEM : "", item ? words.substring(2) : words).toString());
    prose.clear();
  }
}
