package plumbline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.maven.plugin.surefire.log.api.NullConsoleLogger;
import org.apache.maven.plugins.surefire.report.ReportTestCase;
import org.apache.maven.plugins.surefire.report.ReportTestSuite;
import org.apache.maven.plugins.surefire.report.TestSuiteXmlParser;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import plumbline.finding.Severity;
import plumbline.golden.GoldenFile;
import plumbline.result.Result;

/**
 * The form has no standard; it is read back by the reader of a build tool, and by a validating XML
 * parser.
 */
class JUnitReportTest {
  private static Document parse(String xml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
  }

  /** By suite, what each case came to. */
  private static Map<String, Map<String, String>> answers(String xml) throws Exception {
    Map<String, Map<String, String>> answers = new TreeMap<>();
    for (Element suite : elements(parse(xml).getElementsByTagName("testsuite"))) {
      Map<String, String> cases = new TreeMap<>();
      for (Element one : elements(suite.getElementsByTagName("testcase"))) {
        String answer = "pass";
        for (String word : List.of("failure", "error", "skipped")) {
          answer = one.getElementsByTagName(word).getLength() > 0 ? word : answer;
        }
        cases.put(one.getAttribute("name"), answer);
      }
      answers.put(suite.getAttribute("name"), cases);
    }
    return answers;
  }

  private static List<Element> elements(NodeList nodes) {
    return java.util.stream.IntStream.range(0, nodes.getLength())
        .mapToObj(i -> (Element) nodes.item(i))
        .toList();
  }

  @Test
  void each_switch_is_a_suite_and_each_rule_that_was_checked_there_a_case() throws Exception {
    String xml = JUnitReport.of(Samples.drift(), Severity.WEAKENS);
    GoldenFile.check("report/drift.xml", xml);
    assertThat(answers(xml))
        .isEqualTo(
            Map.of(
                "(run)",
                Map.of("(every input was audited)", "error", "(every rule ran)", "pass"),
                "north-sw1",
                Map.of(
                    "description-differs", "pass",
                    "fast-start-missing", "failure",
                    "mode-differs", "pass",
                    "pair-differs", "skipped",
                    "statement-unknown", "skipped",
                    "tagged-vlan-missing", "failure"),
                "north-sw2",
                Map.of(
                    "mode-differs", "failure",
                    "vlan-database-unknown", "skipped",
                    "vlan-not-created", "skipped")));
  }

  @Test
  void what_counts_as_drift_is_what_fails() throws Exception {
    assertThat(answers(JUnitReport.of(Samples.drift(), Severity.BREAKS)).get("north-sw1"))
        .containsEntry("fast-start-missing", "pass")
        .containsEntry("statement-unknown", "skipped");
    assertThat(answers(JUnitReport.of(Samples.drift(), Severity.UNTIDY)).get("north-sw1"))
        .containsEntry("description-differs", "failure")
        .containsEntry("statement-unknown", "failure")
        .containsEntry("pair-differs", "skipped");
  }

  @Test
  void what_passes_below_the_line_is_told_all_the_same() {
    assertThat(JUnitReport.of(Samples.drift(), Severity.BREAKS))
        .contains("<system-out>\nweakens: GigabitEthernet1/0/1, vmhost-n1 nic0\n");
  }

  @Test
  void a_run_that_could_not_ask_or_audit_is_an_error() throws Exception {
    assertThat(answers(JUnitReport.of(Samples.incomplete(), Severity.WEAKENS)).get("(run)"))
        .containsEntry("(every rule ran)", "error")
        .containsEntry("(every input was audited)", "pass");
    assertThat(answers(JUnitReport.of(Samples.unchecked(), Severity.WEAKENS)).get("(run)"))
        .containsEntry("(every input was audited)", "error");
    assertThat(answers(JUnitReport.of(Samples.conforms(), Severity.WEAKENS)).get("(run)"))
        .containsEntry("(every rule ran)", "pass")
        .containsEntry("(every input was audited)", "pass");
  }

  @Test
  void a_finding_of_no_switch_is_a_case_of_the_run() throws Exception {
    Result result = Samples.with(Samples.drift(), Samples.nobodys("-"));
    assertThat(answers(JUnitReport.of(result, Severity.WEAKENS)).get("(run)"))
        .containsEntry("statement-unknown", "skipped");
  }

  @Test
  void the_reader_of_a_build_tool_counts_what_we_count() throws Exception {
    String xml = JUnitReport.of(Samples.drift(), Severity.WEAKENS);
    // that reader wants one suite a file, as its own writer makes them
    for (String suite : xml.split("(?=<testsuite )", -1)) {
      if (!suite.startsWith("<testsuite ")) {
        continue;
      }
      String alone = suite.substring(0, suite.indexOf("</testsuite>") + "</testsuite>".length());
      TestSuiteXmlParser parser = new TestSuiteXmlParser(new NullConsoleLogger());
      List<ReportTestSuite> read =
          parser.parse(
              new java.io.InputStreamReader(
                  new java.io.ByteArrayInputStream(
                      alone.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
                  java.nio.charset.StandardCharsets.UTF_8));
      assertThat(parser.isValid()).isTrue();
      assertThat(read).hasSize(1);
      ReportTestSuite one = read.get(0);
      List<ReportTestCase> cases = one.getTestCases();
      assertThat(one.getNumberOfTests()).isEqualTo(cases.size());
      assertThat(cases.stream().filter(ReportTestCase::hasFailure))
          .hasSize(one.getNumberOfFailures());
      assertThat(cases.stream().filter(ReportTestCase::hasError)).hasSize(one.getNumberOfErrors());
      assertThat(cases.stream().filter(ReportTestCase::hasSkipped))
          .hasSize(one.getNumberOfSkipped());
    }
    Element all = parse(xml).getDocumentElement();
    assertThat(all.getAttribute("tests")).isEqualTo("11");
    assertThat(all.getAttribute("failures")).isEqualTo("3");
    assertThat(all.getAttribute("errors")).isEqualTo("1");
    assertThat(all.getAttribute("skipped")).isEqualTo("4");
  }

  @Test
  void nothing_that_xml_cannot_hold_gets_in() throws Exception {
    String xml = JUnitReport.of(Samples.drift(), Severity.UNTIDY);
    assertThat(xml).contains("description \"Fähre 渡し船\"").startsWith("<?xml version=\"1.0\"");
    assertThat(xml.chars().filter(c -> c < ' ' && c != '\n')).isEmpty();
    assertThat(parse(xml).getDocumentElement().getTagName()).isEqualTo("testsuites");
  }
}
