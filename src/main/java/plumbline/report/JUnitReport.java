package plumbline.report;

import java.io.StringWriter;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import plumbline.finding.Severity;
import plumbline.result.Result;
import plumbline.text.Display;

/**
 * The report for build servers in the form that JUnit made common: a suite for each switch, in it a
 * case for each rule that was checked there. It has no standard; element names are common practice.
 */
public final class JUnitReport {
  private final XMLStreamWriter xml;

  private JUnitReport(XMLStreamWriter xml) {
    this.xml = xml;
  }

  /**
   * Writes the report.
   *
   * @param failOn the severity from which on a finding fails its case
   * @return XML that ends in a line feed
   */
  public static String of(Result result, Severity failOn) {
    StringWriter text = new StringWriter();
    try {
      XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
      new JUnitReport(xml).write(result, JUnitSuites.of(result, failOn));
      xml.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("a document in memory cannot fail", e);
    }
    return text.append('\n').toString();
  }

  private void write(Result result, List<JUnitSuite> suites) throws XMLStreamException {
    // no encoding is handed over: the text is made bytes elsewhere, as the declaration says
    xml.writeProcessingInstruction("xml", "version=\"1.0\" encoding=\"UTF-8\"");
    line(0);
    xml.writeStartElement("testsuites");
    attribute("name", "plumbline audit");
    counts(suites.stream().flatMap(suite -> suite.cases().stream()).toList());
    for (JUnitSuite suite : suites) {
      suite(result, suite);
    }
    line(0);
    xml.writeEndElement();
  }

  private void suite(Result result, JUnitSuite suite) throws XMLStreamException {
    line(1);
    xml.writeStartElement("testsuite");
    attribute("name", suite.name());
    counts(suite.cases());
    attribute(
        "timestamp",
        DateTimeFormatter.ISO_LOCAL_DATE_TIME
            .withZone(ZoneOffset.UTC)
            .format(result.at().truncatedTo(ChronoUnit.SECONDS)));
    if (!suite.properties().isEmpty()) {
      line(2);
      xml.writeStartElement("properties");
      for (JUnitSuite.Property property : suite.properties()) {
        line(3);
        xml.writeEmptyElement("property");
        attribute("name", property.name());
        attribute("value", property.value());
      }
      line(2);
      xml.writeEndElement();
    }
    for (JUnitSuite.Case one : suite.cases()) {
      line(2);
      testCase(suite.name(), one);
    }
    line(1);
    xml.writeEndElement();
  }

  private void testCase(String suite, JUnitSuite.Case one) throws XMLStreamException {
    if (one.answer() == JUnitSuite.Answer.PASS && one.words().isEmpty()) {
      xml.writeEmptyElement("testcase");
      identity(suite, one);
      return;
    }
    xml.writeStartElement("testcase");
    identity(suite, one);
    boolean told =
        one.answer() == JUnitSuite.Answer.FAILURE || one.answer() == JUnitSuite.Answer.ERROR;
    if (told) {
      line(3);
      xml.writeStartElement(one.answer().element().orElseThrow());
      attribute("message", one.message());
      attribute("type", one.type());
      text(one.words());
      xml.writeEndElement();
    } else if (one.answer() == JUnitSuite.Answer.SKIPPED) {
      line(3);
      xml.writeEmptyElement(one.answer().element().orElseThrow());
      attribute("message", one.message());
    }
    if (!told && !one.words().isEmpty()) {
      line(3);
      xml.writeStartElement("system-out");
      text(one.words());
      xml.writeEndElement();
    }
    line(2);
    xml.writeEndElement();
  }

  private void identity(String suite, JUnitSuite.Case one) throws XMLStreamException {
    attribute("classname", suite);
    attribute("name", one.name());
    attribute("time", "0");
  }

  private void counts(List<JUnitSuite.Case> cases) throws XMLStreamException {
    attribute("tests", Integer.toString(cases.size()));
    attribute("failures", count(cases, JUnitSuite.Answer.FAILURE));
    attribute("errors", count(cases, JUnitSuite.Answer.ERROR));
    attribute("skipped", count(cases, JUnitSuite.Answer.SKIPPED));
    attribute("time", "0");
  }

  private static String count(List<JUnitSuite.Case> cases, JUnitSuite.Answer answer) {
    return Long.toString(cases.stream().filter(one -> one.answer() == answer).count());
  }

  /** XML 1.0 section 2.2 has no way to write most control characters: they are left out. */
  private void attribute(String name, String value) throws XMLStreamException {
    xml.writeAttribute(name, Display.clean(value));
  }

  private void text(List<String> lines) throws XMLStreamException {
    for (String line : lines) {
      xml.writeCharacters("\n" + Display.clean(line));
    }
    xml.writeCharacters("\n");
  }

  private void line(int depth) throws XMLStreamException {
    xml.writeCharacters("\n" + "  ".repeat(depth));
  }
}
