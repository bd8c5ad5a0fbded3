package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import plumbline.finding.Finding;

/** A site of small switches out of texts, of which single lines are replaced. */
final class SiteRun {
  private final String design;
  private final Map<String, String> configs = new TreeMap<>();

  private SiteRun(String design) {
    this.design = design;
  }

  static SiteRun of(String design) {
    return new SiteRun(design);
  }

  /** The same with one more switch, or with another text of one. */
  SiteRun with(String name, String body) {
    SiteRun more = new SiteRun(design);
    more.configs.putAll(configs);
    more.configs.put(
        name,
        "hostname " + name + "\n!\nversion 15.2\n!\nvtp mode transparent\n!\n" + body + "end\n");
    return more;
  }

  /** The same with other lines in one switch; they must have been there. */
  SiteRun but(String name, String old, String lines) {
    SiteRun changed = new SiteRun(design);
    changed.configs.putAll(configs);
    assertThat(configs.get(name)).contains(old);
    changed.configs.put(name, configs.get(name).replace(old, lines));
    return changed;
  }

  /** The same with another design. */
  SiteRun designed(String old, String lines) {
    assertThat(design).contains(old);
    SiteRun changed = new SiteRun(design.replace(old, lines));
    changed.configs.putAll(configs);
    return changed;
  }

  List<Finding> findings() {
    try {
      Path site = Files.createTempDirectory("site");
      Files.writeString(site.resolve("design.yaml"), design);
      for (Map.Entry<String, String> config : configs.entrySet()) {
        Files.writeString(site.resolve(config.getKey() + ".cfg"), config.getValue());
      }
      AuditOutcome outcome = RuleCaseRun.run(site);
      assertThat(outcome.ruleFailures()).isEmpty();
      return outcome.findings();
    } catch (IOException cause) {
      throw new java.io.UncheckedIOException(cause);
    }
  }

  /** Each finding as {@code severity rule place: consequence}. */
  List<String> said() {
    return findings().stream()
        .map(
            found ->
                found.severity()
                    + " "
                    + found.rule()
                    + found.place().map(place -> " " + place).orElse("")
                    + ": "
                    + found.consequence())
        .toList();
  }

  /** A trunk that carries VLANs, with VLAN 999 as native. */
  static String trunk(String port, String allowed, String... lines) {
    StringBuilder text = new StringBuilder("interface " + port + "\n switchport mode trunk\n");
    text.append(" switchport trunk native vlan 999\n");
    text.append(" switchport trunk allowed vlan ").append(allowed).append('\n');
    for (String line : lines) {
      text.append(' ').append(line).append('\n');
    }
    return text.append("!\n").toString();
  }

  /** A gateway. */
  static String gateway(int vlan) {
    return "interface Vlan" + vlan + "\n ip address 192.0.2." + vlan % 250 + " 255.255.255.0\n!\n";
  }
}
