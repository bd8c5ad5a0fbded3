package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.read;
import static plumbline.effective.TestSwitch.show;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Tests that one switch gives the same settings however its config is spelled. */
class SpellingTest {
  private static String text(String name) throws IOException {
    return Files.readString(Path.of("testdata/spelling", name));
  }

  /** All that the text says, without the lines that say it. */
  private static String settings(String text) {
    SwitchSettings settings = read(text, Optional.empty());
    List<String> shown = new ArrayList<>();
    shown.add(settings.name() + " " + settings.dialect() + " script " + settings.script());
    shown.add("truncated " + settings.truncation().isPresent());
    for (int id = VlanId.MIN; id <= VlanId.MAX; id++) {
      VlanId vlan = new VlanId(id);
      if (settings.vlans().exists(vlan) != Truth.NO) {
        String name =
            Optional.ofNullable(settings.vlans().entries().get(vlan))
                .map(entry -> show(entry.name()))
                .orElse("");
        shown.add("vlan " + id + " " + settings.vlans().isActive(vlan) + " " + name);
      }
    }
    shown.add("tree " + show(settings.tree().mode()));
    for (PortSettings port : settings.ports().values()) {
      for (Key<?> key : Keys.ALL) {
        shown.add(port.fullName() + " " + key + " " + show(port.get(key)));
      }
    }
    return String.join("\n", shown);
  }

  @Test
  void abbreviations_and_ranges_give_identical_settings() throws IOException {
    String full = settings(text("full.cfg"));
    assertThat(full).contains("GigabitEthernet1/0/2 allowed 220,231");
    assertThat(settings(text("abbreviated.cfg"))).isEqualTo(full);
    assertThat(settings(text("ranges.cfg"))).isEqualTo(full);
  }

  @Test
  void line_ends_tabs_marks_and_lost_indentation_give_identical_settings() throws IOException {
    for (String name : new String[] {"full.cfg", "abbreviated.cfg", "ranges.cfg"}) {
      String text = text(name);
      String plain = settings(text);
      assertThat(settings(text.replace("\n", "\r\n"))).isEqualTo(plain);
      assertThat(settings(text.replace("\n", "\r"))).isEqualTo(plain);
      assertThat(settings(text.replace("\n ", "\n\t"))).isEqualTo(plain);
      assertThat(settings(text.replace("\n ", "\n   "))).isEqualTo(plain);
      assertThat(settings("\uFEFF" + text)).isEqualTo(plain);
      assertThat(
              settings(text.lines().map(String::strip).collect(Collectors.joining("\n", "", "\n"))))
          .isEqualTo(plain);
      assertThat(settings(paged(text))).isEqualTo(plain);
    }
  }

  /** A pager mark that a terminal wiped out again, before every tenth line. */
  private static String paged(String text) {
    StringBuilder paged = new StringBuilder();
    int line = 0;
    for (String one : text.lines().toList()) {
      if (++line % 10 == 0) {
        paged.append(" --More-- ").append("\b".repeat(10)).append(" ".repeat(10));
        paged.append("\b".repeat(10));
      }
      paged.append(one).append('\n');
    }
    return paged.toString();
  }
}
