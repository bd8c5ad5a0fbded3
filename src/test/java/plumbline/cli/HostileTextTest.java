package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import plumbline.golden.Rendered;
import plumbline.golden.Schemas;
import plumbline.text.Display;

/**
 * A site whose owner was not its author: every text that a config or a design can hold and a report
 * can show wants to be something else there.
 */
class HostileTextTest {
  private static final String LONG = "rope ".repeat(2_000);

  private static final List<String> DESCRIPTIONS =
      List.of(
          "<script>alert(1)</script>",
          "\"><img src=x onerror=alert(1)>",
          "' onmouseover='alert(1)",
          "]]></failure><evil/>",
          "<!-- <![CDATA[ &amp; &lt; &#64;",
          "=cmd|' /C calc'!A0",
          "+1;=cmd|' /C calc'!A0",
          "-2+3",
          "@SUM(1+1)*cmd",
          "a,\"=1+1\",b",
          "\u001b[31mred\u001b[0m \u001b]0;title\u0007 \u009b2J",
          "\u202eevil\u202c \u2066x\u2069 \u200fy \ufeffz",
          "![x](http://evil.example/x.png) [y](javascript:alert(1)) http://evil.example",
          "**bold** `code` ``` # heading | cell | ~~no~~ @all #1",
          "{0} {{1}} ${jndi:x} #{y} <%= z %>",
          "\\u0022,\\\"severity\\\":\\\"untidy",
          LONG);

  private static final String DESIGN =
      """
      format: plumbline-design/1
      site: "<b>=site</b> [s](http://evil.example) @all \\u202e"
      revision: "=cmd|' /C calc'!A0"
      vlans:
        "=office<script>": {id: 250, name: "<img src=x>"}
        parked: {id: 999, unused: true}
      roles:
        "@role`": {mode: access, access: "=office<script>", description: "=glob <b>*"}
      switches:
        "=SW<script>alert(1)</script>":
          hostname: EVIL-SW
          ports: {Gi1/0/1-17: "@role`"}
      hosts:
        "<b>host</b>":
          ports: {"-nic[0](http://evil.example)": {to: "=SW<script>alert(1)</script> Gi1/0/40", role: "@role`"}}
      """;

  @TempDir private Path folder;

  private Run run;

  @BeforeEach
  void audit() throws IOException {
    StringBuilder config = new StringBuilder("hostname EVIL-SW\nvtp mode transparent\n");
    config.append("vlan 250\n name =cmd<script>[x](y)\nvlan 999\n");
    config.append("banner motd ^C\n<script>alert(2)</script> =cmd \u001b[2J\n^C\n");
    for (int port = 1; port <= DESCRIPTIONS.size(); port++) {
      config
          .append("interface GigabitEthernet1/0/" + port + "\n description ")
          .append(DESCRIPTIONS.get(port - 1))
          .append("\n switchport mode access\n switchport access vlan 250\n");
    }
    config.append("<script>alert(3)</script> =cmd\nend\n");
    Path design = Files.writeString(folder.resolve("design.yaml"), DESIGN);
    Path configs = Files.createDirectory(folder.resolve("configs"));
    Files.writeString(configs.resolve("=<img src=x onerror=alert(1)>[x](y) @all.cfg"), config);
    Files.writeString(configs.resolve("\u202e<b>\u001b[31m.cfg"), "no config at all\n");
    List<String> line =
        new ArrayList<>(
            List.of("audit", design.toString(), configs.toString(), "--colour", "never"));
    for (String ending : List.of("json", "csv", "md", "sarif", "xml")) {
      line.addAll(List.of("--report", folder.resolve("r." + ending).toString()));
    }
    run = Run.of(line.toArray(String[]::new));
    assertThat(run.status()).isIn(1, 2);
  }

  private String report(String ending) throws IOException {
    return Files.readString(folder.resolve("r." + ending));
  }

  /** Line feeds and, in CSV, carriage returns are all that steers. */
  private static void isSteady(String text, String ends) {
    assertThat(
            text.codePoints()
                .filter(c -> ends.indexOf(c) < 0)
                .filter(
                    c ->
                        Set.of(
                                (int) Character.CONTROL,
                                (int) Character.FORMAT,
                                (int) Character.LINE_SEPARATOR,
                                (int) Character.PARAGRAPH_SEPARATOR)
                            .contains(Character.getType(c)))
                .toArray())
        .isEmpty();
  }

  @Test
  void the_site_gets_its_texts_into_the_reports() throws IOException {
    JsonNode findings = new ObjectMapper().readTree(report("json")).get("findings");
    for (String description : DESCRIPTIONS) {
      String letters = letters(Display.clean(description));
      assertThat(findings)
          .as(letters)
          .anyMatch(one -> letters(one.get("found").asText()).contains(letters));
    }
    for (String ending : List.of("json", "csv", "md", "xml")) {
      assertThat(report(ending)).contains("alert(1)", "rope ".repeat(50));
    }
  }

  /** The first few letters and digits: reading a config already drops what steers a terminal. */
  private static String letters(String text) {
    String all = text.replaceAll("[^a-zA-Z0-9]", "");
    return text.startsWith("description ") ? all : all.substring(0, Math.min(10, all.length()));
  }

  @Test
  void a_terminal_stays_as_it_is() {
    isSteady(run.out(), "\n");
    isSteady(run.err(), "\n");
    assertThat(run.out().lines()).allMatch(line -> Display.width(line) <= 80);
    assertThat(run.out()).startsWith("DRIFT: ");
  }

  @Test
  void json_holds_the_texts_as_strings() throws IOException {
    isSteady(report("json"), "\n");
    assertThat(Schemas.problems("plumbline-report-1.schema.json", report("json"))).isEmpty();
  }

  @Test
  void sarif_makes_neither_links_nor_placeholders_of_them() throws IOException {
    isSteady(report("sarif"), "\n");
    assertThat(Schemas.problemsOfSarif(report("sarif"))).isEmpty();
    JsonNode sarif = new ObjectMapper().readTree(report("sarif"));
    for (JsonNode result : sarif.at("/runs/0/results")) {
      String text = result.at("/message/text").asText();
      assertThat(text).doesNotContain("](");
      assertThat(text.replace("{{", "").replace("}}", "")).doesNotContain("{", "}");
    }
    for (JsonNode artifact : sarif.at("/runs/0/artifacts")) {
      assertThat(artifact.at("/location/uri").asText()).matches("[A-Za-z0-9%:/._=@()-]+");
    }
  }

  @Test
  void xml_has_its_own_elements_only() throws Exception {
    isSteady(report("xml"), "\n");
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(report("xml"))));
    Set<String> names = new TreeSet<>();
    NodeList elements = document.getElementsByTagName("*");
    for (int i = 0; i < elements.getLength(); i++) {
      names.add(elements.item(i).getNodeName());
    }
    assertThat(
            Set.of(
                "error",
                "failure",
                "properties",
                "property",
                "skipped",
                "system-out",
                "testcase",
                "testsuite",
                "testsuites"))
        .containsAll(names);
  }

  @Test
  void a_spreadsheet_finds_no_formula_in_any_cell() throws IOException {
    String csv = report("csv");
    isSteady(csv, "\r\n");
    List<CSVRecord> rows = CSVFormat.RFC4180.parse(new StringReader(csv)).getRecords();
    assertThat(rows).hasSizeGreaterThan(DESCRIPTIONS.size());
    Pattern formula = Pattern.compile("[\\s\"]*[=+\\-@].*", Pattern.DOTALL);
    for (CSVRecord row : rows) {
      assertThat(row.size()).isEqualTo(rows.get(0).size());
      for (String cell : row) {
        assertThat(cell).doesNotMatch(formula);
        // where a semicolon parts cells, none of the parts is one either
        for (String part : cell.split(";", -1)) {
          assertThat(part).doesNotMatch(formula);
        }
      }
    }
  }

  @Test
  void a_ticket_shows_them_and_renders_none() throws IOException {
    String text = report("md");
    isSteady(text, "\n");
    assertThat(Rendered.foreign(text)).isEmpty();
    assertThat(Rendered.headings(text))
        .allMatch(
            heading ->
                heading.matches(
                    "1 DRIFT: .*"
                        + "|2 (Not audited|What (breaks|weakens|is untidy|the text does not tell)"
                        + " \\([0-9]+\\)|What this report does not tell|Inputs)"
                        + "|3 (=SW<script>alert\\(1\\)</script>|<b>)"));
    assertThat(text.lines()).allMatch(line -> line.length() < 2_000);
    // bare mentions and numbers would call people and link tickets: they stand in code only
    assertThat(Rendered.outsideCode(text)).doesNotContain("@", "#", "://", "www.");
  }
}
