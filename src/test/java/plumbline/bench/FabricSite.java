package plumbline.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import plumbline.design.Design;
import plumbline.design.DesignReader;
import plumbline.design.DesignReading;
import plumbline.design.DesignSource;
import plumbline.effective.Dialect;
import plumbline.effective.EffectiveSettings;
import plumbline.effective.SwitchSettings;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/**
 * A site of any size: two cores with the gateways, blocks of twenty access switches below two
 * distribution switches each, two hosts to an access switch, each with a pair of uplinks to it and
 * its neighbour. Every trunk carries all VLANs; on one access switch in a hundred one uplink lacks
 * a quarter of them.
 */
final class FabricSite {
  private static final int BLOCK = 20;
  private static final int FIRST_VLAN = 1001;

  private final int vlans;
  private final Map<String, StringBuilder> ports = new LinkedHashMap<>();
  private final Map<String, Integer> used = new LinkedHashMap<>();
  private final StringBuilder links = new StringBuilder();
  private final StringBuilder hosts = new StringBuilder();
  private final Random random = new Random(7);

  /**
   * Lays a site out.
   *
   * @param switches number of access switches
   * @param vlans number of VLANs
   */
  FabricSite(int switches, int vlans) {
    this.vlans = vlans;
    cable("core-1", "core-2", "");
    for (int block = 0; block * BLOCK < switches; block++) {
      String one = "dist-" + block + "-1";
      String other = "dist-" + block + "-2";
      cable(one, "core-1", "");
      cable(other, "core-2", "");
      cable(one, other, "");
      int count = Math.min(BLOCK, switches - block * BLOCK);
      for (int at = 0; at < count; at++) {
        String access = access(block, at);
        cable(access, one, random.nextInt(100) == 0 ? missing() : "");
        cable(access, other, "");
      }
      for (int at = 0; at < count; at++) {
        host(block, at, count);
        host(block, at, count);
      }
    }
  }

  private static String access(int block, int at) {
    return "access-" + block + "-" + at;
  }

  private String missing() {
    int first = FIRST_VLAN + random.nextInt(4) * vlans / 4;
    return "\n switchport trunk allowed vlan remove " + first + "-" + (first + vlans / 4 - 1);
  }

  private String port(String name, String lines) {
    String port = "Gi1/" + used.merge(name, 1, Integer::sum) / 96 + "/" + used.get(name) % 96;
    ports
        .computeIfAbsent(name, any -> new StringBuilder())
        .append("interface " + port.replace("Gi", "GigabitEthernet"))
        .append(
            "\n switchport mode trunk\n switchport nonegotiate\n switchport trunk allowed vlan ")
        .append(lines)
        .append("\n!\n");
    return name + " " + port;
  }

  private void cable(String one, String other, String drift) {
    String list = FIRST_VLAN + "-" + (FIRST_VLAN + vlans - 1);
    links.append(
        "  - {ends: [%s, %s], role: link}%n".formatted(port(one, list + drift), port(other, list)));
  }

  private void host(int block, int at, int count) {
    int first = FIRST_VLAN + random.nextInt(vlans / 4) * 4;
    String list = first + "-" + (first + 3);
    String name = "host-" + hosts.chars().filter(c -> c == '\n').count() / 2;
    hosts.append(
        "  %s:%n    {ports: {nic0: {to: %s, role: up-%d}, nic1: {to: %s, role: up-%d}}, pairs: [[nic0, nic1]]}%n"
            .formatted(
                name,
                port(access(block, at), list),
                first,
                port(access(block, (at + 1) % count), list),
                first));
  }

  /** The design. */
  Design design() {
    StringBuilder text = new StringBuilder("format: plumbline-design/1\nvlans:\n");
    StringBuilder names = new StringBuilder();
    for (int vlan = FIRST_VLAN; vlan < FIRST_VLAN + vlans; vlan++) {
      text.append("  v%d: {id: %d, gateway: required}%n".formatted(vlan, vlan));
      names.append(names.isEmpty() ? "" : ", ").append("v").append(vlan);
    }
    text.append("roles:\n  link: {mode: trunk, tagged: [" + names + "]}\n");
    for (int first = FIRST_VLAN; first < FIRST_VLAN + vlans; first += 4) {
      text.append(
          "  up-%d: {mode: trunk, tagged: [v%d, v%d, v%d, v%d]}%n"
              .formatted(first, first, first + 1, first + 2, first + 3));
    }
    text.append("switches:\n");
    ports.keySet().forEach(name -> text.append("  " + name + ": {}\n"));
    text.append("hosts:\n" + hosts + "links:\n" + links);
    text.append("gateways: {core-1: [" + names + "], core-2: [" + names + "]}\n");
    DesignReading reading =
        DesignReader.read(
            List.of(new DesignSource("design.yaml", "0".repeat(64), text.toString())),
            List.of(),
            Dialect.words());
    assertThat(reading.problems()).isEmpty();
    return reading.design().orElseThrow();
  }

  /** What the switches do. */
  Map<String, SwitchSettings> settings() {
    ConfigReader reader = new ConfigReader(new StatementParser());
    Map<String, SwitchSettings> all = new LinkedHashMap<>();
    ports.forEach(
        (name, body) -> {
          StringBuilder text =
              new StringBuilder("hostname " + name + "\nvtp mode transparent\n")
                  .append("spanning-tree mode rapid-pvst\nip routing\nvlan ")
                  .append(FIRST_VLAN + "-" + (FIRST_VLAN + vlans - 1) + "\n!\n")
                  .append(body);
          if (name.startsWith("core")) {
            for (int vlan = FIRST_VLAN; vlan < FIRST_VLAN + vlans; vlan++) {
              text.append("interface Vlan" + vlan + "\n ip address 192.0.2.1 255.255.255.0\n!\n");
            }
          }
          all.put(
              name,
              EffectiveSettings.of(
                  reader.read(name + ".cfg", name, text + "line vty 0 4\n login\n!\nend\n").get(0),
                  Optional.empty()));
        });
    return all;
  }
}
