package plumbline.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.report.JsonReport;
import plumbline.result.FollowUp;
import plumbline.result.Past;
import plumbline.result.Result;
import plumbline.result.Standing;
import plumbline.result.Verdict;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** Runs made by hand, of any size, as reports keep them. */
public final class Runs {
  static final String SITE = "Saltmarsh Ferries, north terminal";

  private Runs() {}

  /** A finding at a port of a switch. */
  public static Finding finding(int onSwitch, int port, Severity severity, int... vlans) {
    PortName name = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, port);
    String file = "configs/pier-sw" + onSwitch + ".cfg";
    return new Finding(
        "tagged-vlan-missing",
        severity,
        Optional.of(Place.ofPort("pier-sw" + onSwitch, name.toString())),
        Optional.of(name),
        List.of(Place.ofSwitch("pier-sw" + onSwitch)),
        VlanSet.of(vlans),
        "vmhost-" + onSwitch + " nic" + port,
        "tagged hypervisor (220), voice-a (231), voice-b (232)",
        "voice-a (231) not allowed",
        "Machines in voice-a (231) lose the network when they use nic" + port + ".",
        List.of(
            Proof.of(file, new Evidence.Line(40 + port, "switchport trunk allowed vlan 220")),
            Proof.of(file, new Evidence.Default("campus: native VLAN 1"))),
        Optional.of(new Position("design.yaml", 33, 7)));
  }

  /** So many findings, spread over switches of ten ports. */
  public static List<Finding> findings(int count) {
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      findings.add(finding(1 + i / 10, 1 + i % 10, Severity.WEAKENS, 231));
    }
    return findings;
  }

  /** The report of a run that had nothing before it. */
  public static String json(Instant at, List<Finding> findings) {
    LocalDate day = LocalDate.ofInstant(at, ZoneOffset.UTC);
    Map<String, Standing> standings = new TreeMap<>();
    findings.forEach(one -> standings.put(one.id(), Standing.fresh(day)));
    return json(at, findings, SITE, standings, List.of());
  }

  /** The report of a run with what had become of its findings. */
  static String json(
      Instant at,
      List<Finding> findings,
      String site,
      Map<String, Standing> standings,
      List<Finding> gone) {
    Past.TrendPoint point =
        new Past.TrendPoint(
            at, 0, findings.size(), 0, 0, 0, 0, Optional.of(LocalDate.parse("2026-01-07")));
    return JsonReport.of(
        new Result(
            at,
            Optional.of(site),
            Optional.of("CHG-2041"),
            List.of(new Result.InputFile("design.yaml", "0".repeat(64))),
            findings.stream()
                .map(Finding::switchName)
                .distinct()
                .map(
                    name ->
                        new Result.ConfigFile(
                            name + ".cfg",
                            name,
                            true,
                            "1".repeat(64),
                            800,
                            "campus",
                            "",
                            0,
                            52,
                            52))
                .toList(),
            List.of(),
            new Verdict(Verdict.Word.DRIFT, 0, findings.size(), 0, 0, 0, 412),
            findings,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            Result.Narrowed.NOT,
            new FollowUp(
                Optional.of(new Past(Optional.empty(), List.of(), standings, gone, List.of(point))),
                Optional.empty())),
        "0.1.0");
  }
}
