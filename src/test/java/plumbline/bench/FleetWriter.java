package plumbline.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Writes a site of any size: a design and one config for each switch, as access switches have them
 * (52 ports and some 800 lines each; shape: common practice, no source). The same numbers give the
 * same bytes.
 */
final class FleetWriter {
  private static final int DESKS = 48;
  private static final int HOSTS = 4;
  private static final int ONE_IN_DRIFTS = 10;

  private final Path folder;
  private final int switches;
  private final boolean distinct;

  /**
   * A fleet that is not written yet.
   *
   * @param folder where design and configs go
   * @param switches how many switches
   * @param distinct whether statements differ from switch to switch, or are those of a template
   */
  FleetWriter(Path folder, int switches, boolean distinct) {
    this.folder = folder;
    this.switches = switches;
    this.distinct = distinct;
  }

  /** Writes it all. */
  void write() throws IOException {
    Path configs = Files.createDirectories(folder.resolve("configs"));
    StringBuilder design =
        new StringBuilder(
            """
            format: plumbline-design/1
            vlans:
              lights-out: {id: 210}
              hypervisor: {id: 220}
              voice-a: {id: 231, telephony: true}
              office: {id: 250}
              parked: {id: 999, unused: true}
            roles:
              host-uplink: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], fast-start: true}
              desk-phone: {mode: access, access: office, voice: voice-a, fast-start: true}
            switches:
            """);
    for (int i = 1; i <= switches; i++) {
      design.append("  pier-sw" + i + ":\n    ports:\n");
      design.append("      Gi1/0/1-" + DESKS + ": desk-phone\n");
      design.append("      Gi1/0/" + (DESKS + 1) + "-" + (DESKS + HOSTS) + ": host-uplink\n");
      Files.writeString(configs.resolve("pier-sw" + i + ".cfg"), config(i));
    }
    Files.writeString(folder.resolve("design.yaml"), design);
  }

  private String config(int number) {
    Random random = new Random(number);
    StringBuilder text = new StringBuilder();
    text.append("version 15.2\nservice timestamps log datetime msec\n!\n");
    text.append("hostname pier-sw" + number + "\n!\n");
    text.append("vtp mode transparent\nspanning-tree mode rapid-pvst\n!\n");
    for (int vlan : new int[] {210, 220, 231, 250, 999}) {
      text.append("vlan " + vlan + "\n name V" + vlan + "\n!\n");
    }
    for (int port = 1; port <= DESKS; port++) {
      desk(text, number, port, random);
    }
    for (int port = DESKS + 1; port <= DESKS + HOSTS; port++) {
      uplink(text, number, port, number % ONE_IN_DRIFTS == 0 && port == DESKS + 1);
    }
    for (int line = 0; line < 120; line++) {
      text.append("access-list 10 permit 192.0.2." + (distinct ? random.nextInt(256) : line));
      text.append("\n");
    }
    return text.append("line vty 0 4\n transport input ssh\n!\nend\n").toString();
  }

  private void desk(StringBuilder text, int number, int port, Random random) {
    text.append("interface GigabitEthernet1/0/" + port + "\n");
    text.append(
        " description desk "
            + (distinct ? number + "-" + random.nextInt(1_000_000) : "" + port)
            + "\n");
    text.append(" switchport access vlan 250\n switchport mode access\n");
    text.append(" switchport voice vlan 231\n switchport nonegotiate\n");
    text.append(" switchport port-security maximum " + (distinct ? random.nextInt(4000) : 3));
    text.append("\n switchport port-security\n storm-control broadcast level ");
    text.append(distinct ? random.nextInt(100) + "." + random.nextInt(100) : "2.00");
    text.append("\n ip dhcp snooping limit rate " + (distinct ? random.nextInt(2000) + 1 : 15));
    text.append("\n srr-queue bandwidth share 1 30 35 5\n priority-queue out\n");
    text.append(" spanning-tree portfast\n spanning-tree bpduguard enable\n!\n");
  }

  /** With distinct statements each trunk lets through VLANs of its own, which exist nowhere. */
  private void uplink(StringBuilder text, int number, int port, boolean lacks) {
    String more =
        distinct
            ? IntStream.range(0, 8)
                .mapToObj(i -> "," + (1100 + (number * 37 + port * 11 + i * 131) % 2800))
                .collect(Collectors.joining())
            : "";
    text.append("interface GigabitEthernet1/0/" + port + "\n");
    text.append(" switchport trunk native vlan 999\n");
    text.append(" switchport trunk allowed vlan 220" + (lacks ? "" : ",231") + more + "\n");
    text.append(" switchport mode trunk\n switchport nonegotiate\n");
    text.append(" spanning-tree portfast trunk\n!\n");
  }
}
