package plumbline.inspect;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.effective.EffectiveSettings;
import plumbline.effective.SwitchSettings;
import plumbline.golden.GoldenFile;
import plumbline.golden.Schemas;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.port.PortNames.Reading;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;
import plumbline.text.Display;
import plumbline.text.Page;

class SettingsFormsTest {
  private static final String SCHEMA = "plumbline-settings-1.schema.json";

  @Test
  void the_text_gives_each_value_with_its_line() {
    GoldenFile.check(
        "settings/plain.txt", SettingsText.of(List.of(Views.plain()), Page.Look.usual(false)));
  }

  @Test
  void the_text_marks_what_departs_from_a_design() {
    GoldenFile.check(
        "settings/designed.txt",
        SettingsText.of(List.of(Views.designed()), Page.Look.usual(false)));
  }

  @Test
  void one_port_is_shown_in_full() {
    SwitchView port = Views.designed().at(Views.TRUNK).orElseThrow();
    GoldenFile.check(
        "settings/one-port.txt", SettingsText.of(List.of(port), Page.Look.usual(false)));
  }

  @Test
  void a_port_that_the_text_does_not_open_cannot_be_shown() {
    assertThat(Views.plain().at(PortName.of(PortKind.GIGABIT_ETHERNET, 9, 9, 9))).isEmpty();
  }

  @Test
  void the_text_stays_within_eighty_columns() {
    assertThat(
            SettingsText.of(List.of(Views.designed(), Views.plain()), Page.Look.usual(false))
                .lines())
        .allMatch(line -> Display.width(line) <= 80)
        .noneMatch(line -> line.endsWith(" "));
  }

  @Test
  void the_json_has_the_published_shape() {
    String plain = SettingsJson.of(List.of(Views.plain()));
    assertThat(Schemas.problems(SCHEMA, plain)).isEmpty();
    String designed = SettingsJson.of(List.of(Views.designed()));
    assertThat(Schemas.problems(SCHEMA, designed)).isEmpty();
    GoldenFile.check("settings/designed.json", designed);
    assertThat(Schemas.problems(SCHEMA, SettingsJson.of(List.of()))).isEmpty();
  }

  @Test
  void what_the_text_does_not_tell_is_the_word_unknown_and_what_is_not_set_is_null() {
    String json = SettingsJson.of(List.of(Views.plain().at(Views.DOUBTFUL).orElseThrow()));
    assertThat(json).contains("\"mode\": \"unknown\"", "\"carried\": \"unknown\"");
    assertThat(json).contains("\"voiceVlan\": null", "\"bundle\": null");
  }

  @Test
  void the_table_ends_its_rows_as_rfc_4180_asks_and_holds_no_formula() {
    String csv = SettingsCsv.of(List.of(Views.designed()));
    GoldenFile.check("settings/designed.csv", csv);
    assertThat(csv).contains("description,\"'@vmhost-n1 controller\",");
    // RFC 4180 section 2: each record on a line of its own, ended by CRLF
    assertThat(csv.replace("\r\n", "")).doesNotContain("\n", "\r");
    // and a field with a comma stands in double quotes
    assertThat(csv).contains("\"line 41: switchport trunk allowed vlan 220,231,");
  }

  @Test
  void a_table_without_ports_is_its_header() {
    assertThat(SettingsCsv.of(List.of()))
        .isEqualTo("switch,file,dialect,port,setting,value,evidence,designed,as designed\r\n");
  }

  @Test
  void the_table_holds_nothing_that_steers_a_terminal_or_reorders_a_cell() {
    String csv =
        SettingsCsv.of(List.of(Views.described("\u001b[31m\u202e=cmd|calc\u200b\tline\u0007")));
    assertThat(csv).contains(",description,\"'=cmd|calc line\",");
    assertThat(csv.chars().filter(c -> c != '\r' && c != '\n')).allMatch(c -> c >= ' ' && c <= '~');
  }

  @Test
  void a_vlan_interface_shows_its_addresses_groups_and_whether_it_works() {
    String text = flat(SettingsText.of(List.of(at(TEXT, "Vlan10")), Page.Look.usual(false)));
    assertThat(text)
        .contains("| address 192.0.2.65 255.255.255.192 line 26: ip address 192.0.2.65")
        .contains("| vrrp 10 192.0.2.66 line 27: vrrp 10 ip 192.0.2.66")
        .contains("| vrrp priority 120 line 28: vrrp 10 priority 120")
        .contains("| shut yes line 29: shutdown")
        .contains("| gateway works no")
        .doesNotContain("access-vlan", "fast-start off", "carried");
  }

  @Test
  void a_routed_port_has_no_spanning_tree_to_show() {
    String whole = SettingsText.of(List.of(view(TEXT)), Page.Look.usual(false));
    String port = whole.substring(whole.indexOf("  GigabitEthernet1/0/1\n"));
    port = port.substring(0, port.indexOf("\n\n"));
    assertThat(port).contains("| mode             routed").doesNotContain("fast-start", "bpdu");
    assertThat(SettingsText.of(List.of(at(TEXT, "Gi1/0/1")), Page.Look.usual(false)))
        .contains("| speed ")
        .doesNotContain("| fast-start", "| bpdu-guard", "| carried");
    assertThat(SettingsText.of(List.of(at(TEXT, "Gi1/0/2")), Page.Look.usual(false)))
        .contains("| fast-start");
  }

  @Test
  void single_vlans_stand_with_their_names() {
    assertThat(flat(SettingsText.of(List.of(view(TEXT)), Page.Look.usual(false))))
        .contains("VLANs 1, 10 TEN, 20, 30, 40 FORTY")
        .contains("gateway VLAN 10 TEN: 192.0.2.65 255.255.255.192, shut; vrrp 10")
        .contains("| native-vlan 10 TEN line 23: switchport trunk native vlan 10");
  }

  @Test
  void unknown_statements_outside_ports_are_counted_and_the_first_are_named() {
    assertThat(flat(SettingsText.of(List.of(view(TEXT)), Page.Look.usual(false))))
        .contains("not understood 0 statements inside ports, 1 elsewhere (line 6: frobnicate ...)");
    String many = "hostname A\n" + "frobnicate the secret hunter2\n".repeat(9) + "end\n";
    assertThat(flat(SettingsText.of(List.of(view(many)), Page.Look.usual(false))))
        .contains("9 elsewhere (line 2: frobnicate ..., line 3: frobnicate ...,")
        .contains("line 6: frobnicate ... and 4 more)")
        .doesNotContain("line 7", "hunter2");
    String json = SettingsJson.of(List.of(view(many)));
    assertThat(Schemas.problems(SCHEMA, json)).isEmpty();
    assertThat(json.replaceAll("\\s+", ""))
        .contains("{\"line\":10,\"firstWord\":\"frobnicate\"}]")
        .doesNotContain("hunter2");
  }

  @Test
  void a_list_without_its_base_is_computed_from_the_default_and_said_to_be_unverified() {
    String port = flat(SettingsText.of(List.of(at(TEXT, "Gi1/0/2")), Page.Look.usual(false)));
    assertThat(port)
        .contains(
            "| allowed 1-4094 minus 10,20 (unverified: its base is not in this text) line 20:"
                + " switchport trunk allowed vlan remove 10,20");
    assertThat(flat(SettingsText.of(List.of(at(TEXT, "Gi1/0/3")), Page.Look.usual(false))))
        .contains("| allowed 1-4094 (unverified: its base is not in this text) line 24:");
    String json = SettingsJson.of(List.of(at(TEXT, "Gi1/0/2")));
    assertThat(Schemas.problems(SCHEMA, json)).isEmpty();
    assertThat(json)
        .contains("\"allowed\": \"unknown\"")
        .contains("\"allowedFromDefault\": \"1-9,11-19,21-4094\"");
    assertThat(SettingsCsv.of(List.of(at(TEXT, "Gi1/0/2"))))
        .contains("allowed,\"1-4094 minus 10,20 (unverified: its base is not in this text)\"");
  }

  @Test
  void the_base_of_a_list_in_a_script_is_what_stands_on_the_switch() {
    String script = "conf t\ninterface Gi1/0/2\nswitchport trunk allowed vlan remove 10\nend\nwr\n";
    assertThat(SettingsJson.of(List.of(view(script)))).doesNotContain("allowedFromDefault");
  }

  private static final String TEXT =
      """
      hostname A
      !
      vtp mode transparent
      spanning-tree portfast default
      spanning-tree portfast bpduguard default
      frobnicate the 7 foo
      vlan 10
       name TEN
      vlan 20,30
      !
      vlan 40 name FORTY
      !
      interface GigabitEthernet1/0/1
       no switchport
       ip address 192.0.2.1 255.255.255.192
      !
      !
      interface GigabitEthernet1/0/2
       switchport mode trunk
       switchport trunk allowed vlan remove 10,20
      interface GigabitEthernet1/0/3
       switchport mode trunk
       switchport trunk native vlan 10
       switchport trunk allowed vlan add 10,20
      interface Vlan10
       ip address 192.0.2.65 255.255.255.192
       vrrp 10 ip 192.0.2.66
       vrrp 10 priority 120
       shutdown
      end
      """;

  private static SwitchView view(String text) {
    SwitchText read = new ConfigReader(new StatementParser()).read("a.cfg", "a", text).get(0);
    SwitchSettings settings = EffectiveSettings.of(read, Optional.empty());
    return SwitchView.of(settings.name(), settings, Map.of());
  }

  private static SwitchView at(String text, String port) {
    Reading.Ports named = (Reading.Ports) PortNames.parse(port);
    return view(text).at(named.names().get(0)).orElseThrow();
  }

  /** The text without its line breaks. */
  private static String flat(String text) {
    return text.replaceAll("\\n  \\| {3,}", " ").replaceAll("\\s+", " ");
  }
}
