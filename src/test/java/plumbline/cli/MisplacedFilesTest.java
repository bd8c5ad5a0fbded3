package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Designs, reports and configs in each other's places. */
class MisplacedFilesTest {
  @TempDir private Path folder;

  private String design;
  private String clean;

  @BeforeEach
  void write_the_demo() throws IOException {
    DemoFiles.write(folder);
    design = folder.resolve("design.yaml").toString();
    clean = folder.resolve("clean").toString();
  }

  @Test
  void reports_kept_beside_the_configs_are_left_out_and_named() throws IOException {
    Files.writeString(
        folder.resolve("clean/last.txt"), Run.of("audit", design, folder + "/drifted").out());
    String json = clean + "/last.json";
    String csv = clean + "/table.csv";
    Files.copy(Path.of(design), folder.resolve("clean/old-design.yaml"));
    assertThat(Run.of("settings", folder + "/drifted", "--report", csv).status()).isZero();
    assertThat(Run.of("settings", folder + "/drifted", "--report", clean + "/s.json").status())
        .isZero();
    Run.of("audit", design, folder + "/drifted", "--report", json);
    Run run = Run.of("audit", design, clean);
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out().replaceAll("\\s+", " "))
        .startsWith("CONFORMS: ")
        .contains("checks on 6 switches")
        .contains(json + ": left out, for it is a report of plumbline and no config")
        .contains(csv + ": left out")
        .contains(clean + "/s.json: left out")
        .contains(clean + "/last.txt: left out")
        .contains(clean + "/old-design.yaml: left out, for it is a design and no config");
    Run settings = Run.of("settings", clean);
    assertThat(settings.status()).isZero();
    assertThat(settings.err().lines())
        .hasSize(5)
        .contains(json + ": left out, for it is a report of plumbline and no config");
  }

  @Test
  void a_report_in_the_folder_of_the_design_is_left_out_and_can_be_replaced() throws IOException {
    Path home = Files.createDirectory(folder.resolve("home"));
    Files.move(Path.of(design), home.resolve("design.yaml"));
    String report = home + "/report.json";
    String settings = home + "/settings.json";
    assertThat(Run.of("audit", home.toString(), clean, "--report", report).status()).isZero();
    assertThat(Run.of("settings", clean, "--report", settings).status()).isZero();
    Run again = Run.of("audit", home.toString(), clean, "--report", report);
    assertThat(again.err()).isEmpty();
    assertThat(again.status()).isZero();
    assertThat(again.out().replaceAll("\\s+", " "))
        .contains("Design: " + home + "/design.yaml ")
        .contains(report + ": left out, for it is a report of plumbline and no design")
        .contains(settings + ": left out, for it is a report of plumbline and no design");
    assertThat(Run.of("settings", clean + "/north-sw1.cfg", "--design", home.toString()).err())
        .isEqualTo(
            report
                + ": left out, for it is a report of plumbline and no design\n"
                + settings
                + ": left out, for it is a report of plumbline and no design\n");
  }

  @Test
  void a_report_beside_design_and_configs_in_one_folder_is_named_once() throws IOException {
    Files.move(Path.of(design), Path.of(clean + "/design.yaml"));
    String report = clean + "/report.json";
    Run.of("audit", clean, clean, "--report", report);
    Run again = Run.of("audit", clean, clean);
    assertThat(again.status()).isZero();
    assertThat(again.out().split(": left out", -1)).hasSize(2);
  }

  @Test
  void another_file_in_the_folder_of_the_design_is_still_an_error() throws IOException {
    Path home = Files.createDirectory(folder.resolve("home"));
    Files.move(Path.of(design), home.resolve("design.yaml"));
    Files.writeString(home.resolve("other.json"), "{\"rows\": []}\n");
    Run run = Run.of("audit", home.toString(), clean);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err()).contains(home + "/other.json:1:");
  }

  @Test
  void a_folder_of_reports_alone_holds_no_design() throws IOException {
    Path home = Files.createDirectory(folder.resolve("home"));
    Run.of("audit", design, clean, "--report", home + "/report.json");
    Run run = Run.of("audit", home.toString(), clean);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err()).isEqualTo(home + ": the folder holds reports, and no design\n");
    assertThat(Run.of("audit", home + "/report.json", clean).status()).isEqualTo(64);
  }

  @Test
  void a_report_that_is_given_itself_is_no_config() throws IOException {
    String report = folder + "/report.json";
    Run.of("audit", design, clean, "--report", report);
    Run run = Run.of("audit", design, report);
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).startsWith("INCOMPLETE: nothing was audited: ");
    assertThat(run.err()).isEqualTo(report + ": is a report of plumbline, no config\n");
  }

  @Test
  void settings_of_a_design_or_of_prose_are_none() throws IOException {
    String prose = Files.writeString(folder.resolve("notes.txt"), "Buy rope.\n").toString();
    Run run = Run.of("settings", design, prose);
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines())
        .containsExactly(
            design + ": is a design, no config",
            prose + ": is no config: it holds no statement about a switch");
  }

  @Test
  void a_config_in_the_place_of_the_design_is_named_as_such() {
    String config = clean + "/north-sw1.cfg";
    Run run = Run.of("audit", config, design);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err())
        .isEqualTo(
            config + ": this looks like a config; the design comes first, then the configs\n");
  }

  @Test
  void standard_input_is_no_design() {
    Run run = Run.of("audit", "-", clean);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err()).startsWith("-: standard input stands for a config; the design must be");
  }

  @Test
  void a_text_on_standard_input_without_a_hostname_is_told_what_it_lacks() {
    Run run = Run.reading("interface Gi1/0/1\n shutdown\n", "audit", design, "-");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err())
        .isEqualTo(
            "-: the text on standard input has no hostname line, so its switch is not known; put"
                + " the line before it, give the text as a file named after its switch, or say"
                + " --switch\n");
  }

  @Test
  void a_folder_of_configs_in_the_place_of_the_design_is_told_the_order() {
    Run run = Run.of("audit", clean, design);
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.err())
        .isEqualTo(
            clean
                + ": the folder holds no design (.yaml, .yml or .json); the design comes first,"
                + " then the configs\n");
  }

  @Test
  void a_port_that_no_config_opens_gets_those_whose_numbers_end_so() {
    assertThat(Run.of("settings", clean + "/north-sw1.cfg", "--at", "0/4").err())
        .startsWith(
            "plumbline: --at: no config given opens port 0/4; did you mean"
                + " \"GigabitEthernet1/0/4\"?\n");
  }

  @Test
  void switches_without_the_port_asked_for_are_named() {
    Run run = Run.of("settings", clean, "--at", "gi1/0/1");
    assertThat(run.status()).isZero();
    assertThat(run.err())
        .isEqualTo(
            "plumbline: --at: left out, for they do not open port GigabitEthernet1/0/1:"
                + " CORE-NORTH, CORE-SOUTH\n");
  }
}
