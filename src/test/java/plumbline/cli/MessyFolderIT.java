package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sixty configs of which some are none. */
class MessyFolderIT {
  private static final int SWITCHES = 60;

  @TempDir private Path folder;

  @BeforeEach
  void write_a_site() throws IOException, InterruptedException {
    StringBuilder design =
        new StringBuilder(
            """
            format: plumbline-design/1
            vlans: {office: {id: 250}}
            roles: {desk: {mode: access, access: office}}
            switches:
            """);
    Path configs = Files.createDirectory(folder.resolve("configs"));
    for (int i = 1; i <= SWITCHES; i++) {
      design.append("  sw").append(i).append(": {ports: {Gi1/0/1-2: desk}}\n");
      Files.writeString(configs.resolve("sw" + i + ".cfg"), config(i));
    }
    Files.writeString(folder.resolve("design.yaml"), design);
    Files.write(configs.resolve("sw1.cfg"), new byte[] {'a', 0, 'b'});
    Files.write(configs.resolve("sw2.cfg"), new byte[0]);
    writeHundredMegabytes(configs.resolve("sw3.cfg"));
    Files.delete(configs.resolve("sw4.cfg"));
    new ProcessBuilder("mkfifo", configs.resolve("sw4.cfg").toString()).start().waitFor();
    Files.delete(configs.resolve("sw5.cfg"));
    Files.createSymbolicLink(configs.resolve("sw5.cfg"), Path.of("nowhere.cfg"));
    String whole = config(6);
    Files.writeString(
        configs.resolve("sw6.cfg"),
        whole.substring(0, whole.indexOf("interface GigabitEthernet1/0/2")));
    Files.writeString(
        configs.resolve("sw7.cfg"), config(7).replaceFirst("access vlan 250", "access vlan 1"));
  }

  @Test
  void each_has_one_clear_line_and_everything_else_is_audited() throws Exception {
    Launched run =
        Launched.in(
            folder, List.of(Launched.PROGRAM.toString(), "audit", "design.yaml", "configs"));
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err().lines())
        .hasSize(6)
        .contains(
            "configs/sw1.cfg: is binary, not text",
            "configs/sw2.cfg: is empty",
            "configs/sw3.cfg: is longer than 32 MiB",
            "configs/sw4.cfg: is a pipe, socket or device, not a file",
            "configs/sw5.cfg: is a link to nothing")
        .anyMatch(line -> line.startsWith("configs/sw6.cfg:") && line.contains("cut short"));
    for (String line : run.err().lines().toList()) {
      assertThat(run.out().replaceAll("\\s+", " ")).contains(line);
    }
    assertThat(run.out()).startsWith("DRIFT: breaks 1, ").contains("6 not audited");
    assertThat(run.out()).contains("access-vlan-differs", "\nsw7\n").doesNotContain("\nsw8\n");
    assertThat(run.peakKilobytes()).isBetween(1L, 1024L * 1024);
  }

  @Test
  void a_text_of_thirty_megabytes_is_read_within_the_same_memory() throws Exception {
    StringBuilder text = new StringBuilder("hostname SW3\n");
    for (int i = 0; text.length() < 30_000_000; i++) {
      text.append("interface GigabitEthernet1/0/").append(i % 48 + 1).append('\n');
      text.append(" description port ").append(i).append('\n');
    }
    Files.writeString(folder.resolve("configs/sw3.cfg"), text.append("end\n"));
    Launched run =
        Launched.in(
            folder, List.of(Launched.PROGRAM.toString(), "audit", "design.yaml", "configs"));
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(5);
    assertThat(run.peakKilobytes()).isBetween(1L, 1024L * 1024);
  }

  private static String config(int number) {
    return """
    version 15.2
    hostname SW%d
    vlan 250
     name OFFICE
    interface GigabitEthernet1/0/1
     switchport access vlan 250
     switchport mode access
    interface GigabitEthernet1/0/2
     switchport access vlan 250
     switchport mode access
    end
    """
        .formatted(number);
  }

  private static void writeHundredMegabytes(Path file) throws IOException {
    byte[] lines =
        "interface GigabitEthernet1/0/1\n".repeat(32_768).getBytes(StandardCharsets.UTF_8);
    try (OutputStream out = Files.newOutputStream(file)) {
      for (int i = 0; i < 100; i++) {
        out.write(lines);
      }
    }
  }
}
