package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of open textbooks. "Protocol exercise" and "figure" are those of an open textbook
 * on computer networking (chapter on Ethernet, and its exercises on local networks); "lecture
 * example" is that of an open systems textbook on switched Ethernet. Values after failures are
 * derived by hand from the published order of comparison.
 */
class ActiveTopologyTest {
  /** Example A: seven bridges, every cost 1; ports are numbered by the neighbour. */
  private static Drawing lecture() {
    Drawing drawing = new Drawing();
    for (int bridge = 1; bridge <= 7; bridge++) {
      drawing.bridge("S" + bridge, BridgeId.of(32768, bridge));
    }
    for (String link : List.of("12", "14", "15", "16", "17", "23", "35", "46", "57")) {
      char one = link.charAt(0);
      char other = link.charAt(1);
      drawing.segment(link, "S" + one + "." + other, "S" + other + "." + one);
    }
    return drawing;
  }

  @Test
  void example_a_has_the_published_root_ports_and_links_not_selected() {
    Drawing.Settled settled = lecture().settle();
    assertThat(settled.root("S6")).isEqualTo("S1");
    assertThat(settled.ends(PortRole.ROOT))
        .containsExactly("S2.1", "S3.2", "S4.1", "S5.1", "S6.1", "S7.1");
    assertThat(settled.blocked()).containsExactly("S3.5", "S6.4", "S7.5");
    assertThat(settled.cost("S3")).isEqualTo(2);
  }

  @Test
  void example_a_settles_anew_after_each_failure() {
    Drawing.Settled minus12 = lecture().without("12").settle();
    assertThat(minus12.cost("S2")).isEqualTo(3);
    assertThat(minus12.ends(PortRole.ROOT)).contains("S2.3", "S3.5");
    assertThat(minus12.blocked()).containsExactly("S6.4", "S7.5");
    Drawing.Settled minus15 = lecture().without("15").settle();
    assertThat(minus15.cost("S5")).isEqualTo(2);
    assertThat(minus15.ends(PortRole.ROOT)).contains("S5.7");
    assertThat(minus15.blocked()).containsExactly("S5.3", "S6.4");
    assertThat(lecture().without("23").settle().ends(PortRole.ROOT)).contains("S3.5");
    assertThat(lecture().without("14").settle().ends(PortRole.ROOT)).contains("S4.6");
    assertThat(lecture().withoutBridge("S5").settle().blocked()).containsExactly("S6.4");
  }

  /** Example B: figure of six bridges; the text names the ports that stay active. */
  @Test
  void example_b_blocks_the_published_ends() {
    Drawing drawing = new Drawing();
    for (int bridge : new int[] {1, 2, 7, 9, 22, 44}) {
      drawing.bridge(Integer.toString(bridge), BridgeId.of(0, bridge));
    }
    Drawing.Settled settled =
        drawing
            .segment("A", "9.1", "2.1")
            .segment("B", "9.2", "7.1")
            .segment("C", "7.2", "1.1")
            .segment("D", "1.2", "22.1")
            .segment("E", "1.3", "44.1")
            .segment("F", "2.2", "44.2")
            .segment("G", "22.2", "44.3")
            .segment("H", "7.3", "22.3")
            .settle();
    assertThat(settled.root("9")).isEqualTo("1");
    assertThat(settled.ends(PortRole.ROOT))
        .containsExactlyInAnyOrder("7.2", "22.1", "44.1", "9.2", "2.2");
    assertThat(settled.blocked()).containsExactlyInAnyOrder("9.1", "44.3", "22.3");
    assertThat(settled.cost("9")).isEqualTo(2);
  }

  /** Example C: figure with a shared segment and unequal costs: the receiver adds its own. */
  @Test
  void example_c_adds_the_cost_of_the_receiving_port() {
    Drawing.Settled settled =
        new Drawing()
            .bridge("1", BridgeId.of(0, 1))
            .bridge("4", BridgeId.of(0, 4))
            .bridge("9", BridgeId.of(0, 9))
            .segment("A", "1.1", "9.1", "4.1/3")
            .segment("B", "9.2", "4.2")
            .settle();
    assertThat(settled.ends(PortRole.ROOT)).containsExactly("4.2", "9.1");
    assertThat(settled.cost("4")).isEqualTo(2);
    assertThat(settled.blocked()).containsExactly("4.1");
  }

  /** Example D: exercise that was run on real bridges, with priorities that are no steps. */
  private static Drawing exercise() {
    return new Drawing()
        .bridge("s3", BridgeId.of(3, 0xf63545ab5f79L))
        .bridge("s4", BridgeId.of(4, 0x8608132ccff6L))
        .bridge("s6", BridgeId.of(6, 1))
        .bridge("s7", BridgeId.of(7, 0x2a6f5ef34984L))
        .bridge("s9", BridgeId.of(9, 0x7ecc45e18e5bL))
        .segment("39", "s3.1", "s9.1")
        .segment("37", "s3.2", "s7.1")
        .segment("97", "s9.2", "s7.2")
        .segment("69", "s6.1", "s9.3")
        .segment("64", "s6.2", "s4.1")
        .segment("74", "s7.3", "s4.2");
  }

  @Test
  void example_d_is_what_real_bridges_settled_on() {
    Drawing.Settled settled = exercise().settle();
    assertThat(settled.root("s6")).isEqualTo("s3");
    assertThat(settled.ends(PortRole.ROOT)).containsExactly("s4.2", "s6.1", "s7.1", "s9.1");
    assertThat(settled.blocked()).containsExactly("s6.2", "s9.2");
    assertThat(settled.cost("s6")).isEqualTo(2);
    Drawing.Settled minus39 = exercise().without("39").settle();
    assertThat(minus39.cost("s6")).isEqualTo(3);
    assertThat(minus39.blocked()).containsExactly("s6.1");
    Drawing.Settled minus37 = exercise().without("37").settle();
    assertThat(minus37.cost("s4")).isEqualTo(3);
    assertThat(minus37.blocked()).containsExactly("s4.2");
  }

  /** Example E: parallel links, crossed: the sender's port decides before the own port. */
  @Test
  void example_e_hears_the_lower_port_of_the_sender() {
    Drawing.Settled settled =
        new Drawing()
            .bridge("B1", BridgeId.of(0, 1))
            .bridge("B2", BridgeId.of(0, 2))
            .segment("a", "B1.1", "B2.2")
            .segment("b", "B1.2", "B2.1")
            .settle();
    assertThat(settled.ends(PortRole.ROOT)).containsExactly("B2.2");
    assertThat(settled.blocked()).containsExactly("B2.1");
  }

  /** Exercise F: topology of an exercise whose answer is not printed; derived by hand. */
  @Test
  void exercise_f_serves_shared_segments() {
    Drawing drawing = new Drawing();
    for (int bridge : new int[] {3, 6, 10, 11, 12, 17}) {
      drawing.bridge(Integer.toString(bridge), BridgeId.of(0, bridge));
    }
    Drawing.Settled settled =
        drawing
            .segment("L1", "3.2", "17.1", "6.2")
            .segment("L2", "3.1", "12.1")
            .segment("L3", "17.2", "10.1")
            .segment("L4", "10.2", "11.1")
            .segment("L5", "6.3", "11.3")
            .segment("L6", "12.2", "6.1", "11.2")
            .settle();
    assertThat(settled.root("11")).isEqualTo("3");
    assertThat(settled.ends(PortRole.ROOT))
        .containsExactlyInAnyOrder("17.1", "6.2", "12.1", "10.1", "11.2");
    assertThat(settled.blocked()).containsExactlyInAnyOrder("12.2", "11.1", "11.3");
  }

  @Test
  void equal_priorities_and_unknown_addresses_leave_the_root_open() {
    Drawing.Settled settled =
        new Drawing()
            .bridge("a", BridgeId.of(32768))
            .bridge("b", BridgeId.of(32768))
            .segment("1", "a.1", "b.1")
            .segment("edge", "a.2")
            .settle();
    assertThat(settled.root("a")).isEqualTo("open");
    assertThat(settled.cost("a")).isEqualTo(-1);
    assertThat(settled.topology().rootCandidates(1)).containsExactly(0, 1);
    assertThat(settled.ends(PortRole.UNDECIDED)).containsExactly("a.1", "b.1");
    assertThat(settled.ends(PortRole.DESIGNATED)).containsExactly("a.2");
  }

  @Test
  void a_known_root_leaves_open_only_what_unknown_addresses_decide() {
    // r above, a and b below it with a link between them: which end of it blocks hangs on addresses
    Drawing.Settled settled =
        new Drawing()
            .bridge("r", BridgeId.of(4096))
            .bridge("a", BridgeId.of(32768))
            .bridge("b", BridgeId.of(32768))
            .segment("ra", "r.1", "a.1")
            .segment("rb", "r.2", "b.1")
            .segment("ab", "a.2", "b.2")
            .settle();
    assertThat(settled.root("b")).isEqualTo("r");
    assertThat(settled.ends(PortRole.ROOT)).containsExactly("a.1", "b.1");
    assertThat(settled.ends(PortRole.UNDECIDED)).containsExactly("a.2", "b.2");
    assertThat(settled.blocked()).isEmpty();
  }

  @Test
  void a_cable_back_to_the_same_bridge_is_a_backup() {
    Drawing.Settled settled =
        new Drawing().bridge("a", BridgeId.of(0)).segment("loop", "a.2", "a.1").settle();
    assertThat(settled.ends(PortRole.DESIGNATED)).containsExactly("a.1");
    assertThat(settled.ends(PortRole.BACKUP)).containsExactly("a.2");
  }
}
