package plumbline.inspect;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import plumbline.golden.GoldenFile;
import plumbline.golden.Schemas;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.text.Display;

class SettingsFormsTest {
  private static final String SCHEMA = "plumbline-settings-1.schema.json";

  @Test
  void the_text_gives_each_value_with_its_line() {
    GoldenFile.check("settings/plain.txt", SettingsText.of(List.of(Views.plain()), false));
  }

  @Test
  void the_text_marks_what_departs_from_a_design() {
    GoldenFile.check("settings/designed.txt", SettingsText.of(List.of(Views.designed()), false));
  }

  @Test
  void one_port_is_shown_in_full() {
    SwitchView port = Views.designed().at(Views.TRUNK).orElseThrow();
    GoldenFile.check("settings/one-port.txt", SettingsText.of(List.of(port), false));
  }

  @Test
  void a_port_that_the_text_does_not_open_cannot_be_shown() {
    assertThat(Views.plain().at(PortName.of(PortKind.GIGABIT_ETHERNET, 9, 9, 9))).isEmpty();
  }

  @Test
  void the_text_stays_within_eighty_columns() {
    assertThat(SettingsText.of(List.of(Views.designed(), Views.plain()), false).lines())
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
}
