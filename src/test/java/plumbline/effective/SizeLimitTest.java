package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Tests where a text is too large for one switch. */
class SizeLimitTest {
  private static final ConfigReader READER = new ConfigReader(new StatementParser());

  private static SwitchText read(String text) {
    List<SwitchText> switches = READER.read("sw1.cfg", "sw1", text);
    assertThat(switches).hasSize(1);
    return switches.get(0);
  }

  private static String ranges(int ranges, int ports) {
    StringBuilder text = new StringBuilder();
    for (int slot = 1; slot <= ranges; slot++) {
      text.append("interface range Gi").append(slot).append("/0/1 - ").append(ports).append('\n');
      text.append(" switchport mode access\n");
    }
    return text.toString();
  }

  @Test
  void twentyThousandPortsAreNotTooMany() {
    assertThat(SizeLimit.exceeded(read(ranges(20, 1000)))).isEmpty();
  }

  @Test
  void onePortMoreIsTooMany() {
    assertThat(SizeLimit.exceeded(read(ranges(20, 1000) + "interface Gi21/0/1\n shutdown\n")))
        .contains("names more than 20,000 ports in one switch");
  }

  @Test
  void aPortThatIsOpenedAgainCountsOnce() {
    assertThat(SizeLimit.exceeded(read(ranges(20, 1000) + ranges(20, 1000)))).isEmpty();
  }

  @Test
  void linesUnderRangesCountForEachPort() {
    String one = "interface range Gi1/0/1 - 4000\n" + " shutdown\n".repeat(500);
    assertThat(SizeLimit.exceeded(read(one))).isEmpty();
    assertThat(SizeLimit.exceeded(read(one + " no shutdown\n")))
        .contains("has port ranges that repeat its lines more than 2,000,000 times");
  }
}
