package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import plumbline.statement.Statement;
import plumbline.statement.SwitchText;

class ConfigReaderPropertyTest {
  private static final ConfigReader READER = new ConfigReader(new StatementParser());

  private static List<SwitchText> read(String text) {
    return READER.read("a.cfg", "a", text);
  }

  /** The switches follow each other, and so do the statements of each: no line twice, none lost. */
  private static void assertPartition(String text) {
    int next = 1;
    List<SwitchText> switches = read(text);
    for (SwitchText one : switches) {
      assertThat(one.firstLine()).isEqualTo(next);
      for (Statement statement : one.statements()) {
        assertThat(statement.line()).isEqualTo(next);
        next = statement.lastLine() + 1;
      }
      assertThat(one.lastLine()).isEqualTo(next - 1);
      one.truncation()
          .ifPresent(cut -> assertThat(cut.line()).isBetween(one.firstLine(), one.lastLine()));
    }
    assertThat(next - 1).isEqualTo(linesAsAnEditorCounts(text));
  }

  private static int linesAsAnEditorCounts(String text) {
    String lineEnd = text.contains("\n") ? "\n" : "\r";
    int ends = text.split(lineEnd, -1).length - 1;
    return text.isEmpty() ? 1 : text.endsWith(lineEnd) ? ends : ends + 1;
  }

  @Property(tries = 300)
  void anyBytesAreCutWithoutFailure(@ForAll byte[] bytes) {
    assertPartition(new String(bytes, StandardCharsets.ISO_8859_1));
  }

  @Property(tries = 500)
  void everyLineIsInExactlyOneStatement(@ForAll("captures") String text) {
    assertPartition(text);
  }

  @Provide
  Arbitrary<String> captures() {
    Arbitrary<String> indent = Arbitraries.of("", "", "", " ", "  ", "   ", "\t", "         ");
    Arbitrary<String> piece =
        Arbitraries.of(
            "interface Gi1/0/1",
            "interface Vlan10",
            "int range gi1/0/1-4",
            "vlan 10,20-25",
            "name A",
            "switchport mode trunk",
            "switchport trunk allowed vlan 10,",
            "shutdown",
            "no shutdown",
            "hsrp 10",
            "ip 192.0.2.1",
            "exit",
            "end",
            "quit",
            "!",
            "# x",
            "",
            "hostname A",
            "hostname B",
            "banner motd ^C",
            "^C",
            "banner login #",
            "#",
            "EOF",
            "a#show run",
            "a#show vlan",
            "b(config-if)#shutdown",
            "b#",
            "c>",
            "conf t",
            "version 15.2",
            "Building configuration...",
            "Current configuration : 4276 bytes",
            "config-file-header",
            "@",
            "-----BEGIN X-----",
            "-----END X-----",
            "certificate ca 01",
            "30820229 30820192 A0030201 02020101",
            "*Mar  1 00:03:15.655: %SYS-5-CONFIG_I: x",
            "mtu 9*Mar  1 00:03:15.655: %SYS-5-CONFIG_I: x",
            "0,30",
            "--More--",
            "--More-- \b\b\b x",
            "<--- More --->",
            "---- --------",
            "Port   Mode   Status",
            "vlan database",
            "1024",
            "% Invalid input",
            "\u0003",
            "router bgp 1",
            "spanning-tree mst configuration",
            "interf SwitchB:Eth3",
            "foo\rbar",
            "\u001B[7m",
            "ssd-control-start",
            "\u00A0x",
            "(config)#",
            "standby 1 ip 192.0.2.1",
            "no",
            "default",
            "do",
            "x(",
            "x()#",
            ",",
            "\\r\\n");
    Arbitrary<String> line = Combinators.combine(indent, piece).as(String::concat);
    Arbitrary<String> lineEnd = Arbitraries.of("\n", "\r\n", "\r");
    return Combinators.combine(line.list().ofMaxSize(30), lineEnd, Arbitraries.of(true, false))
        .as((lines, end, closed) -> String.join(end, lines) + (closed ? end : ""));
  }

  @Property(tries = 200)
  void oneConfigSpelledAnyWayHasTheSameStatementsInTheSameContexts(
      @ForAll("stanzas") List<List<String>> stanzas,
      @ForAll("indents") String indent,
      @ForAll("lineEnds") String lineEnd,
      @ForAll boolean mark) {
    String plain = config(stanzas, " ", "\n");
    String varied = (mark ? "\uFEFF" : "") + config(stanzas, indent, lineEnd);

    assertThat(Shown.meanings(read(varied).get(0))).isEqualTo(Shown.meanings(read(plain).get(0)));
    assertThat(read(varied).get(0).script()).isEqualTo(read(plain).get(0).script()).isFalse();
    assertThat(read(varied).get(0).truncation()).isEmpty();
  }

  private static String config(List<List<String>> stanzas, String indent, String lineEnd) {
    List<String> lines = new ArrayList<>(List.of("version 15.2", "hostname NORTH-SW1", "!"));
    for (List<String> stanza : stanzas) {
      lines.add(stanza.get(0));
      stanza.subList(1, stanza.size()).forEach(child -> lines.add(indent + child));
      lines.add("!");
    }
    lines.add("end");
    return String.join(lineEnd, lines) + lineEnd;
  }

  @Provide
  Arbitrary<String> indents() {
    return Arbitraries.of("", " ", "  ", "   ", "    ", "     ", "\t", " \t");
  }

  @Provide
  Arbitrary<String> lineEnds() {
    return Arbitraries.of("\n", "\r\n", "\r", "<br/>\n", "   \r\n");
  }

  @Provide
  Arbitrary<List<List<String>>> stanzas() {
    Arbitrary<String> port =
        Arbitraries.of(
            "description Käse für vmhost-n1",
            "switchport mode trunk",
            "switchport mode access",
            "switchport access vlan 210",
            "switchport trunk allowed vlan 220,231-232",
            "switchport trunk native vlan 999",
            "spanning-tree portfast trunk",
            "shutdown",
            "no shutdown",
            "channel-group 1 mode active",
            "load-interval 30",
            "mtu 9000",
            "service-policy input VOICE",
            "ip dhcp snooping trust",
            "frobnicate 7");
    Arbitrary<List<String>> ports =
        stanza(Arbitraries.of("interface GigabitEthernet1/0/1", "interface Vlan210"), port);
    Arbitrary<List<String>> vlans =
        stanza(
            Arbitraries.of("vlan 210", "vlan 220,231-232"),
            Arbitraries.of("name LIGHTS-OUT", "state suspend", "shutdown"));
    Arbitrary<List<String>> region =
        stanza(
            Arbitraries.of("spanning-tree mst configuration"),
            Arbitraries.of("name north", "revision 3", "instance 1 vlan 210"));
    Arbitrary<List<String>> top =
        Arbitraries.of(
                "spanning-tree mode rapid-pvst",
                "spanning-tree vlan 1-4094 priority 4096",
                "ip routing",
                "vtp mode transparent",
                "no vlan 300")
            .map(List::of);
    return Arbitraries.oneOf(ports, ports, vlans, region, top).list().ofMaxSize(8);
  }

  private static Arbitrary<List<String>> stanza(Arbitrary<String> header, Arbitrary<String> child) {
    return Combinators.combine(header, child.list().ofMaxSize(5))
        .as(
            (first, children) -> {
              List<String> lines = new ArrayList<>(List.of(first));
              lines.addAll(children);
              return lines;
            });
  }
}
