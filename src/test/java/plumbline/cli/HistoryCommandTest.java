package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.golden.Schemas;

/** Runs of one site one after the other, and what became of its findings. */
class HistoryCommandTest {
  private static final Pattern FINDING =
      Pattern.compile(
          "(?s)\"id\": \"(?<id>[^\"]*)\".*?\"state\": \"?(?<state>[a-z]+)\"?,\\s+\"since\":"
              + " \"?(?<since>[0-9a-z-]+)\"?.*?\"clearedBy\": \"?(?<by>[a-z-]+)\"?,\\s+\"unchecked\":"
              + " (?:null|\"(?<why>[^\"]*)\")");

  private static final String GUARD =
      "bpdu-guard-missing/north-sw2/GigabitEthernet1/0/9/desk-phone";
  private static final String VLAN =
      "tagged-vlan-missing/north-sw2/GigabitEthernet1/0/1/vmhost-n1 nic1";
  private static final String NAME = "vlan-name-differs/south-sw1//office";

  @TempDir private Path home;
  private Path design;
  private Path configs;

  /** A day for each run, all within the age that the design allows. */
  private int day = 20;

  @BeforeEach
  void site() throws IOException {
    Path demo = home.resolve("demo");
    DemoFiles.write(demo);
    design = demo.resolve(DemoFiles.DESIGN);
    configs = demo.resolve(DemoFiles.CLEAN);
    edit("north-sw2", "allowed vlan 220,231,232", "allowed vlan 220,231");
    removeIn("north-sw2", "GigabitEthernet1/0/9", "bpduguard");
    edit("south-sw1", " name OFFICE\n", " name OFFICES\n");
  }

  @Test
  void findings_stand_while_lines_move_files_are_renamed_and_ports_are_spelled_otherwise()
      throws IOException {
    Map<String, String> first = audit();
    assertThat(first).containsEntry(GUARD, "new 2026-11-20").hasSize(4);
    Path file = configs.resolve("north-sw2.cfg");
    String text =
        Files.readString(file)
            .replace("hostname", "!\n!\n!\nhostname")
            .replaceAll("(?m)^interface GigabitEthernet", "interface gi ")
            .replace(
                "allowed vlan 220,231\n",
                "allowed vlan 231\n switchport trunk allowed vlan add 220\n");
    Files.writeString(configs.resolve("renamed by the backup.txt"), text);
    Files.delete(file);
    assertThat(audit().values()).containsOnly("standing 2026-11-20").hasSize(4);
  }

  @Test
  void the_config_the_design_or_a_silenced_rule_clears_a_finding_once() throws IOException {
    audit();
    edit("south-sw1", " name OFFICES\n", " name OFFICE\n");
    assertThat(audit()).containsEntry(NAME, "cleared 2026-11-20 config").hasSize(4);
    assertThat(audit()).doesNotContainKey(NAME).hasSize(3);
    replace(design, "max-age-days: 8", "max-age-days: 8\nrules: {silent: [tagged-vlan-missing]}");
    assertThat(audit())
        .containsEntry(VLAN, "cleared 2026-11-20 rule-silenced")
        .containsEntry(GUARD, "standing 2026-11-20");
    replace(design, "bpdu-guard: true, negotiate: false}", "negotiate: false}");
    assertThat(audit()).containsEntry(GUARD, "cleared 2026-11-20 design");
    // both at once: nobody can tell which of them it was
    replace(design, "negotiate: false}", "negotiate: false, bpdu-guard: true}");
    assertThat(audit()).containsEntry(GUARD, "new 2026-11-25");
    replace(design, "negotiate: false, bpdu-guard: true}", "negotiate: false}");
    edit("north-sw2", "hostname", "!\nhostname");
    assertThat(audit()).containsEntry(GUARD, "cleared 2026-11-25 config-or-design");
  }

  @Test
  void what_comes_back_is_new_again() throws IOException {
    audit();
    edit("south-sw1", " name OFFICES\n", " name OFFICE\n");
    audit();
    edit("south-sw1", " name OFFICE\n", " name OFFICES\n");
    assertThat(audit()).containsEntry(NAME, "new 2026-11-22");
  }

  @Test
  void an_audit_of_one_file_clears_nothing_elsewhere() throws IOException {
    audit();
    Map<String, String> one = audit(configs.resolve("south-sw1.cfg").toString());
    assertThat(one)
        .containsEntry(NAME, "standing 2026-11-20")
        .containsEntry(GUARD, "unchecked 2026-11-20 north-sw2 is outside this run");
    Map<String, String> again = audit(configs.resolve("south-sw2.cfg").toString());
    assertThat(again.values()).allMatch(word -> word.startsWith("unchecked 2026-11-20 "));
    assertThat(again).hasSize(4);
    assertThat(audit().values()).containsOnly("standing 2026-11-20").hasSize(4);
  }

  @Test
  void a_switch_that_could_not_be_audited_keeps_its_findings() throws IOException {
    audit();
    Path file = configs.resolve("north-sw2.cfg");
    String text = Files.readString(file);
    Files.delete(file);
    assertThat(audit())
        .containsEntry(GUARD, "unchecked 2026-11-20 north-sw2 has no config in this run")
        .containsEntry("config-missing/north-sw2//", "new 2026-11-21");
    Files.writeString(file, "");
    assertThat(audit())
        .containsEntry(GUARD, "unchecked 2026-11-20 north-sw2 has a config that cannot be read")
        .containsEntry("config-missing/north-sw2//", "cleared 2026-11-21 config");
    Files.writeString(file, text.substring(0, text.indexOf("interface GigabitEthernet1/0/9")));
    assertThat(audit().get(GUARD)).startsWith("unchecked 2026-11-20 ");
    Files.writeString(file, text);
    assertThat(audit())
        .containsEntry(GUARD, "standing 2026-11-20")
        .containsEntry("config-truncated/north-sw2//", "cleared 2026-11-23 config");
  }

  @Test
  void what_another_finding_hides_is_not_cleared() throws IOException {
    audit();
    edit(
        "north-sw2",
        "interface GigabitEthernet1/0/9\n",
        "interface GigabitEthernet1/0/9\n shutdown\n");
    assertThat(audit())
        .containsEntry(
            GUARD, "unchecked 2026-11-20 it still differs, and another finding explains it now")
        .containsKey("port-shut/north-sw2/GigabitEthernet1/0/9/desk-phone");
    edit("north-sw2", "1/0/9\n shutdown\n", "1/0/9\n");
    assertThat(audit())
        .containsEntry(GUARD, "standing 2026-11-20")
        .containsEntry(
            "port-shut/north-sw2/GigabitEthernet1/0/9/desk-phone", "cleared 2026-11-21 config");
  }

  @Test
  void a_rule_that_is_not_asked_clears_nothing() throws IOException {
    audit();
    assertThat(run("--only", "tagged-vlan-missing"))
        .containsEntry(VLAN, "standing 2026-11-20")
        .containsEntry(GUARD, "unchecked 2026-11-20 its rule was not asked");
    assertThat(run("--switch", "south-sw1"))
        .containsEntry(VLAN, "unchecked 2026-11-20 north-sw2 is outside this run");
    assertThat(audit().values()).containsOnly("standing 2026-11-20");
  }

  @Test
  void a_switch_that_left_the_design_takes_its_findings_with_it() throws IOException {
    audit();
    String plan = Files.readString(design);
    // a design of one switch, without what lies around it
    Files.writeString(
        design,
        plan.substring(0, plan.indexOf("switches:")).replace("gateway: required, ", "")
            + "switches:\n  south-sw1: {hostname: SOUTH-SW1}\n");
    Map<String, String> now = audit();
    assertThat(now).containsEntry(GUARD, "cleared 2026-11-20 design");
    assertThat(now).containsEntry(VLAN, "cleared 2026-11-20 design");
  }

  @Test
  void the_same_day_again_gives_the_same_bytes_and_one_file() throws IOException {
    audit();
    Run one = raw("2026-11-25");
    List<Path> kept = kept();
    Run two = raw("2026-11-25");
    assertThat(two).isEqualTo(one);
    assertThat(kept()).isEqualTo(kept).hasSize(2);
    assertThat(raw("2026-11-23").err())
        .contains("1 run is later than this one and not compared with");
  }

  @Test
  void a_history_beside_the_configs_is_no_config() throws IOException {
    String dir = configs.resolve("history").toString();
    for (String date : List.of("2026-11-20", "2026-11-21")) {
      Run run =
          Run.of("audit", design.toString(), configs.toString(), "--history", dir, "--as-of", date);
      assertThat(run.err()).isEmpty();
      assertThat(run.out()).doesNotContain("left out");
    }
  }

  @Test
  void the_kept_run_is_the_report_and_has_the_published_shape() throws IOException {
    audit();
    edit("south-sw1", " name OFFICES\n", " name OFFICE\n");
    Path report = home.resolve("report.json");
    run("--report", report.toString());
    String last = Files.readString(kept().get(1));
    assertThat(report).hasContent(last);
    assertThat(Schemas.problems("plumbline-report-1.schema.json", last)).isEmpty();
    assertThat(last).contains("\"oldest\": \"2026-11-20\"", "\"cleared\": 1", "\"standing\": 3");
  }

  @Test
  void a_history_that_is_no_folder_is_wrong_usage() throws IOException {
    Path file = Files.writeString(home.resolve("taken"), "a report");
    Run run = Run.of("audit", design.toString(), configs.toString(), "--history", file.toString());
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(": is no folder");
    assertThat(file).hasContent("a report");
  }

  @Test
  void a_history_that_cannot_be_written_leaves_the_report_and_has_its_status() {
    // The kernel's own folder: it can be listed, and nobody can make a file in it, not even root.
    Run run =
        Run.of(
            "audit",
            design.toString(),
            configs.toString(),
            "--history",
            "/proc/self/task",
            "--as-of",
            "2026-11-20");
    assertThat(run.status()).isEqualTo(74);
    assertThat(run.out()).startsWith("DRIFT: ");
    assertThat(run.err()).contains("/proc/self/task: this run cannot be kept: ");
    Run far =
        Run.of(
            "audit",
            design.toString(),
            configs.toString(),
            "--history",
            home.resolve("not/there").toString());
    assertThat(far.status()).isEqualTo(74);
    assertThat(far.err()).contains("this run cannot be kept: its folder does not exist");
  }

  @Test
  void damaged_and_foreign_files_are_named_and_the_run_before_them_counts() throws IOException {
    audit();
    audit();
    Path last = kept().get(1);
    Files.writeString(last, Files.readString(last).substring(0, 500));
    Files.writeString(home.resolve("history/notes.txt"), "by hand");
    Run run = raw("2026-11-25");
    assertThat(run.err())
        .contains(last + ": breaks off")
        .contains("notes.txt: not named as a run is");
    assertThat(run.out())
        .contains("Since 2026-11-20: nothing new, 4 standing.")
        .contains("notes.txt: not named as a run is");
    assertThat(last).content().hasSize(500);
  }

  private Map<String, String> audit(String... given) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("audit", design.toString()));
    arguments.addAll(given.length == 0 ? List.of(configs.toString()) : Arrays.asList(given));
    return states(arguments);
  }

  private Map<String, String> run(String... options) throws IOException {
    List<String> arguments =
        new ArrayList<>(List.of("audit", design.toString(), configs.toString()));
    arguments.addAll(Arrays.asList(options));
    return states(arguments);
  }

  private Map<String, String> states(List<String> arguments) throws IOException {
    int before = Files.exists(home.resolve("history")) ? kept().size() : 0;
    arguments.addAll(
        List.of("--history", home.resolve("history").toString(), "--as-of", "2026-11-" + day++));
    Run run = Run.of(arguments.toArray(String[]::new));
    assertThat(run.status()).as(run.err()).isBetween(0, 2);
    assertThat(kept()).hasSize(before + 1);
    Map<String, String> states = new TreeMap<>();
    String json = Files.readString(kept().get(before));
    Matcher finding = FINDING.matcher(json.substring(json.indexOf("\"findings\"")));
    while (finding.find()) {
      // the age of the configs is no matter here
      if (!finding.group("id").startsWith("config-stale")) {
        states.put(
            finding.group("id"),
            finding.group("state")
                + " "
                + finding.group("since")
                + (finding.group("by").equals("null") ? "" : " " + finding.group("by"))
                + (finding.group("why") == null ? "" : " " + finding.group("why")));
      }
    }
    return states;
  }

  private Run raw(String date) {
    return Run.of(
        "audit",
        design.toString(),
        configs.toString(),
        "--history",
        home.resolve("history").toString(),
        "--as-of",
        date);
  }

  private List<Path> kept() throws IOException {
    try (Stream<Path> files = Files.list(home.resolve("history"))) {
      return files.filter(file -> file.toString().endsWith(".json")).sorted().toList();
    }
  }

  private void edit(String name, String from, String to) throws IOException {
    replace(configs.resolve(name + ".cfg"), from, to);
  }

  private static void replace(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertThat(text).contains(from);
    Files.writeString(file, text.replace(from, to));
  }

  private void removeIn(String name, String port, String word) throws IOException {
    Path file = configs.resolve(name + ".cfg");
    String text = Files.readString(file);
    Matcher stanza = Pattern.compile("(?m)^interface " + port + "\n(?: .*\n)+").matcher(text);
    assertThat(stanza.find()).isTrue();
    Files.writeString(
        file,
        text.replace(stanza.group(), stanza.group().replaceAll("(?m)^.*" + word + ".*\n", "")));
  }
}
