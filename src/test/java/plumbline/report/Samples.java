package plumbline.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Affected;
import plumbline.finding.Affected.Loss;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.result.Result;
import plumbline.result.Verdict;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** Results made by hand, for tests of every format. */
final class Samples {
  static final Instant AT = Instant.parse("2026-11-25T02:10:00Z");

  private static final String NORTH_1 = "configs/north-sw1.cfg";
  private static final String NORTH_2 = "configs/north-sw2.cfg";

  /** Passes, findings, what another finding explains and what cannot be told, on two switches. */
  private static final List<Result.SwitchCount> CHECKS =
      List.of(
          checked("north-sw1", "description-differs", 11, 1, 0),
          checked("north-sw1", "fast-start-missing", 11, 1, 0),
          checked("north-sw1", "mode-differs", 12, 0, 0),
          checked("north-sw1", "pair-differs", 5, 2, 0),
          checked("north-sw1", "statement-unknown", 0, 0, 1),
          checked("north-sw1", "tagged-vlan-missing", 3, 1, 0),
          checked("north-sw2", "mode-differs", 11, 1, 0),
          checked("north-sw2", "vlan-database-unknown", 0, 0, 1),
          checked("north-sw2", "vlan-not-created", 0, 0, 2));

  private Samples() {}

  private static Result.SwitchCount checked(
      String name, String rule, int conforms, int differs, int undecided) {
    return new Result.SwitchCount(name, new Result.RuleCount(rule, conforms, differs, undecided));
  }

  /** Two switches with findings of every severity, an input that could not be read. */
  static Result drift() {
    return result(
        new Verdict(Verdict.Word.DRIFT, 1, 2, 2, 1, 0, 412),
        findings(),
        List.of("configs/core.img: holds NUL bytes, so it is binary and no config text"),
        List.of("south-sw1", "south-sw2"),
        List.of("description-differs"),
        List.of());
  }

  /** The same switches without a finding. */
  static Result conforms() {
    return result(
        new Verdict(Verdict.Word.CONFORMS, 0, 0, 0, 0, 0, 412),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  /** No drift, one finding that the text cannot decide, a rule that failed. */
  static Result incomplete() {
    return result(
        new Verdict(Verdict.Word.INCOMPLETE, 0, 0, 1, 1, 0, 410),
        findings().stream().filter(f -> !f.severity().reaches(Severity.WEAKENS)).skip(1).toList(),
        List.of(),
        List.of(),
        List.of(),
        List.of("rule port-absent failed on north-sw2: IllegalStateException"));
  }

  /** Nothing was asked that applies. */
  static Result unchecked() {
    return result(
        new Verdict(Verdict.Word.INCOMPLETE, 0, 0, 0, 0, 0, 0),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  /** A finding about a file that is of no switch. */
  static Finding nobodys(String file) {
    Finding one = findings().get(0);
    return new Finding(
        one.rule(),
        one.severity(),
        Optional.empty(),
        Optional.empty(),
        one.others(),
        one.vlans(),
        file,
        one.designed(),
        one.found(),
        one.consequence(),
        one.evidence(),
        one.design());
  }

  static List<Finding> findings() {
    return List.of(
        new Finding(
            "statement-unknown",
            Severity.UNVERIFIED,
            Optional.of(Place.ofSwitch("north-sw1")),
            Optional.empty(),
            List.of(),
            VlanSet.NONE,
            "",
            "only statements whose effect is known, inside the ports that the design covers",
            "2 statements that are not understood",
            "What these lines do to their ports is not known.",
            List.of(
                Proof.of(NORTH_1, new Evidence.Line(44, "frobnicate")),
                Proof.of(NORTH_1, new Evidence.Line(51, "frobnicate"))),
            Optional.empty()),
        new Finding(
            "fast-start-missing",
            Severity.WEAKENS,
            Optional.of(Place.ofPort("north-sw1", "GigabitEthernet1/0/1")),
            Optional.of(PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 1)),
            List.of(),
            VlanSet.NONE,
            "vmhost-n1 nic0",
            "fast-start on",
            "fast-start off",
            "After the link returns the port waits about 30 seconds before it forwards; fast-start"
                + " would forward at once.",
            List.of(
                Proof.of(NORTH_1, new Evidence.Line(38, "interface GigabitEthernet1/0/1")),
                Proof.of(NORTH_1, new Evidence.Default("campus: fast-start off"))),
            Optional.of(new Position("design.yaml", 17, 22))),
        new Finding(
            "tagged-vlan-missing",
            Severity.WEAKENS,
            Optional.of(Place.ofPort("north-sw1", "GigabitEthernet1/0/2")),
            Optional.of(PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 2)),
            List.of(Place.ofPort("north-sw2", "GigabitEthernet1/0/2")),
            VlanSet.of(231),
            "vmhost-n2 nic0",
            "VLANs 220,231-232 tagged",
            "VLAN 231 is not in the allowed list",
            "Machines of vmhost-n2 in voice-a (231) reach their network over nic1 alone; when"
                + " north-sw2 or its link fails they are cut off.",
            List.of(
                Proof.of(
                    NORTH_1,
                    new Evidence.Line(
                        47,
                        "switchport trunk allowed vlan 220,232,500,502,504,506,508,510,512,514,516,"
                            + "518,520,522,524,526"))),
            Optional.of(new Position("design.yaml", 18, 40)),
            List.of(
                new Affected(
                    "call-control", Optional.empty(), Loss.SERVICE, Optional.of("north-sw2")),
                new Affected(
                    "vmhost-n2",
                    Optional.of(new VlanId(231)),
                    Loss.VLAN,
                    Optional.of("north-sw2")))),
        new Finding(
            "description-differs",
            Severity.UNTIDY,
            Optional.of(Place.ofPort("north-sw1", "GigabitEthernet1/0/2")),
            Optional.of(PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 2)),
            List.of(),
            VlanSet.NONE,
            "vmhost-n2 nic0",
            "a description like \"vmhost-n2*\"",
            "description \"\u001b[31mFähre\u202e 渡し船\"",
            "The label misleads whoever works on the port next.",
            List.of(
                Proof.of(NORTH_1, new Evidence.Line(46, "description \u001b[31mFähre\u202e 渡し船"))),
            Optional.of(new Position("design.yaml", 18, 60))),
        new Finding(
            "vlan-database-unknown",
            Severity.UNVERIFIED,
            Optional.of(Place.ofSwitch("north-sw2")),
            Optional.empty(),
            List.of(),
            VlanSet.of(210, 220),
            "",
            "VLANs 210,220 exist",
            "the text does not hold the VLAN list of this switch",
            "Whether these VLANs exist there cannot be told from this text.",
            List.of(Proof.of(NORTH_2, new Evidence.Line(9, "vtp mode client"))),
            Optional.of(new Position("design.yaml", 5, 3))),
        new Finding(
            "mode-differs",
            Severity.BREAKS,
            Optional.of(Place.ofPort("north-sw2", "GigabitEthernet1/0/1")),
            Optional.of(PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 1)),
            List.of(),
            VlanSet.NONE,
            "vmhost-n1 nic1",
            "a trunk",
            "an access port",
            "vmhost-n1 cannot use nic1: tagged frames are dropped there.",
            List.of(Proof.of(NORTH_2, new Evidence.Line(61, "switchport mode access"))),
            Optional.of(new Position("design.yaml", 17, 22))));
  }

  static Result manyConfigs(int number) {
    List<Result.ConfigFile> configs = new ArrayList<>();
    for (int i = 1; i <= number; i++) {
      configs.add(
          config("configs/sw" + i + ".cfg", "sw" + i, i % 5 == 0 ? "data-centre" : "campus"));
    }
    return of(conforms(), configs, conforms().notChecked());
  }

  /** The same result of other configs and another design. */
  static Result of(
      Result one, List<Result.ConfigFile> configs, List<Result.NotChecked> notChecked) {
    return new Result(
        one.at(),
        one.site(),
        one.revision(),
        one.design(),
        configs,
        one.silentRules(),
        one.verdict(),
        one.findings(),
        one.checks(),
        one.switchChecks(),
        one.notAudited(),
        one.notInScope(),
        notChecked,
        one.ageUnknown(),
        one.skipped(),
        one.ruleFailures(),
        one.narrowed());
  }

  private static Result result(
      Verdict verdict,
      List<Finding> findings,
      List<String> notAudited,
      List<String> notInScope,
      List<String> silent,
      List<String> failures) {
    return new Result(
        AT,
        Optional.of("Saltmarsh Ferries, north terminal"),
        Optional.of("CHG-2041"),
        List.of(new Result.InputFile("design.yaml", "ab".repeat(32))),
        List.of(
            config(NORTH_1, "north-sw1", "campus"), config(NORTH_2, "north-sw2", "data-centre")),
        silent,
        verdict,
        findings,
        List.of(new Result.RuleCount("mode-differs", 400, 11, 1)),
        CHECKS,
        notAudited,
        notInScope,
        List.of(
            new Result.NotChecked("bundle", 9, "port"),
            new Result.NotChecked("services", 1, "service")),
        List.of("north-sw2"),
        List.of("configs/last.json: left out, for it is a report of plumbline and no config"),
        failures,
        Result.Narrowed.NOT);
  }

  /** What one port of the phones' row lacks; the words are those of all. */
  static Finding phone(int port, String subject) {
    String name = "GigabitEthernet1/0/" + port;
    int line = 100 + 5 * port;
    return new Finding(
        "fast-start-missing",
        Severity.WEAKENS,
        Optional.of(Place.ofPort("north-sw1", name)),
        Optional.of(PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, port)),
        List.of(),
        VlanSet.NONE,
        subject,
        "fast-start on",
        "fast-start off",
        "The "
            + subject
            + " device waits for the network about 30 seconds, each time that it is switched on.",
        List.of(
            Proof.of(NORTH_1, new Evidence.Line(line, "interface " + name)),
            Proof.of(NORTH_1, new Evidence.Default("campus: fast-start off"))),
        Optional.of(new Position("design.yaml", 21, 40)));
  }

  /** A finding at the place of another. */
  static Finding at(Finding one, Finding other) {
    return new Finding(
        one.rule(),
        one.severity(),
        other.place(),
        other.portOrder(),
        one.others(),
        one.vlans(),
        other.subject(),
        one.designed(),
        one.found(),
        one.consequence(),
        one.evidence(),
        one.design());
  }

  /** The same result with these findings instead of its own. */
  static Result with(Result one, Finding... findings) {
    return new Result(
        one.at(),
        one.site(),
        one.revision(),
        one.design(),
        one.configs(),
        one.silentRules(),
        one.verdict(),
        List.of(findings),
        one.checks(),
        one.switchChecks(),
        one.notAudited(),
        one.notInScope(),
        one.notChecked(),
        one.ageUnknown(),
        one.skipped(),
        one.ruleFailures(),
        one.narrowed());
  }

  /** Statements that the grammar does not know. */
  static Finding unknown(String found) {
    Finding one = findings().get(0);
    return new Finding(
        one.rule(),
        one.severity(),
        one.place(),
        one.portOrder(),
        one.others(),
        one.vlans(),
        one.subject(),
        one.designed(),
        found,
        one.consequence(),
        one.evidence(),
        one.design());
  }

  static Result.ConfigFile config(String file, String name, String dialect) {
    return config(file, name, dialect, true, 30);
  }

  static Result.ConfigFile config(
      String file, String name, String dialect, boolean inDesign, int designed) {
    return new Result.ConfigFile(
        file,
        name,
        inDesign,
        "cd".repeat(32),
        214,
        dialect,
        "its ports are numbered 1/0/n",
        2,
        52,
        designed);
  }
}
