package plumbline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import plumbline.golden.GoldenFile;
import plumbline.golden.Rendered;

/** Read back by an independent CommonMark parser, which also links bare addresses. */
class MarkdownReportTest {
  @Test
  void the_verdict_comes_first_then_what_breaks_what_weakens_and_the_evidence() {
    String text = MarkdownReport.of(Samples.drift());
    GoldenFile.check("report/drift.md", text);
    assertThat(text).startsWith("# DRIFT: breaks 1, weakens 2, unverified 2, untidy 1, 1 not");
    assertThat(Rendered.headings(text))
        .containsExactly(
            "1 DRIFT: breaks 1, weakens 2, unverified 2, untidy 1, 1 not audited.",
            "2 Not audited",
            "2 What breaks (1)",
            "3 north-sw2",
            "2 What weakens (2)",
            "3 north-sw1",
            "2 What the text does not tell (2)",
            "3 north-sw1",
            "3 north-sw2",
            "2 What is untidy (1)",
            "3 north-sw1",
            "2 What this report does not tell",
            "2 Inputs");
    assertThat(Rendered.foreign(text)).isEmpty();
  }

  @Test
  void a_conforming_run_has_a_ticket_too() {
    String text = MarkdownReport.of(Samples.conforms());
    assertThat(text).startsWith("# CONFORMS: nothing that was checked differs from the design.");
    assertThat(text).doesNotContain("## What breaks", "## Not audited");
    assertThat(MarkdownReport.of(Samples.incomplete())).contains("## Rules that failed");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "<!-- x",
        "![x](http://evil.example/x.png)",
        "[x](javascript:alert(1))",
        "[x]: http://evil.example",
        "http://evil.example/ www.evil.example",
        "WWW.evil.example",
        "root@evil.example @all #1",
        "**bold** _it_ ~~gone~~ `code`",
        "`` ` ``",
        "```",
        "a\\",
        "&lt;b&gt; &#64;",
        "| a | b |",
        "$x^2$",
        "<http://evil.example>",
        "a\n\n# heading\n- item",
        "`x",
        "x`",
        "[^1]",
        "{{ x }} ${x}",
        "- item",
        "1. item",
        "> quote",
        "a  b\t\u001b[31mc\u202e"
      })
  void hostile_text_shows_as_the_characters_it_has(String hostile) {
    for (String made :
        List.of(
            "- found: " + Markdown.words(hostile) + "\n",
            "- found: " + Markdown.code(hostile) + "\n",
            "- **" + Markdown.words(hostile) + "**: x\n")) {
      assertThat(Rendered.foreign(made)).as(made).isEmpty();
      assertThat(Rendered.headings(made)).isEmpty();
      assertThat(made.lines()).hasSize(1);
    }
    String shown = plumbline.text.Display.clean(hostile).replaceAll(" +", " ");
    assertThat(Rendered.text("found: " + Markdown.words(hostile)))
        .isEqualTo("found: " + shown.strip());
    assertThat(Rendered.text(Markdown.code(hostile))).isEqualTo(shown.strip());
  }

  @Test
  void a_line_that_nobody_reads_is_cut_and_counted() {
    assertThat(Markdown.code("x".repeat(10_000)))
        .isEqualTo(
            "`" + "x".repeat(300) + "... (10000 characters, all of them in a --report FILE.json)`");
  }
}
