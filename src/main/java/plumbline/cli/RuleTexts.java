package plumbline.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import plumbline.report.RuleText;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;

/** What there is to read about rules. */
final class RuleTexts {
  private RuleTexts() {}

  /** Every rule, sorted by id. */
  static List<RuleText> all() {
    return RuleCatalogue.ALL.stream().map(Rule::info).map(RuleTexts::text).toList();
  }

  private static RuleText text(RuleInfo info) {
    return new RuleText(
        info.id(),
        info.group().toString(),
        info.floor(),
        info.summary(),
        info.source(),
        page(info.id()));
  }

  /** The page of a rule, Markdown. */
  static String page(String id) {
    String resource = "/plumbline/rules/pages/" + id + ".md";
    try (InputStream page = RuleTexts.class.getResourceAsStream(resource)) {
      if (page == null) {
        throw new IllegalStateException("no page for " + id);
      }
      return new String(page.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("a resource of the program cannot be read", e);
    }
  }
}
