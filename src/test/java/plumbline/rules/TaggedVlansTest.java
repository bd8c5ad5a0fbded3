package plumbline.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import plumbline.audit.RuleCaseRun;
import plumbline.finding.Finding;
import plumbline.finding.Severity;

/** Whole audits of a trunk against plain sets of numbers (the oracle is ours, written apart). */
class TaggedVlansTest {
  private static final List<Integer> POOL =
      List.of(1, 2, 3, 10, 11, 12, 999, 1001, 1002, 1005, 1006, 4094);

  @Provide
  Arbitrary<Set<Integer>> vlans() {
    return Arbitraries.subsetOf(POOL).map(TreeSet::new);
  }

  @Provide
  Arbitrary<Integer> vlan() {
    return Arbitraries.of(POOL);
  }

  @Property(tries = 150, edgeCases = EdgeCasesMode.NONE)
  void what_is_missing_and_what_is_extra_is_what_plain_sets_say(
      @ForAll("vlans") Set<Integer> allowed,
      @ForAll("vlans") Set<Integer> tagged,
      @ForAll("vlans") Set<Integer> mayCarry,
      @ForAll("vlans") Set<Integer> created,
      @ForAll("vlan") int nativeVlan) {
    List<Finding> findings =
        RuleCaseRun.run(design(tagged, mayCarry), config(allowed, created, nativeVlan)).findings();

    Set<Integer> carriedTagged = new TreeSet<>(allowed);
    carriedTagged.remove(nativeVlan);
    carriedTagged.removeAll(Set.of(1002, 1003, 1004, 1005));
    Set<Integer> missing = new TreeSet<>(tagged);
    missing.removeAll(carriedTagged);
    missing.removeAll(Set.of(1002, 1003, 1004, 1005));
    Set<Integer> extra = new TreeSet<>(carriedTagged);
    extra.removeAll(tagged);
    extra.removeAll(mayCarry);
    Set<Integer> there = new TreeSet<>(extra);
    there.removeIf(id -> id != 1 && !created.contains(id));

    // what the whole switch lacks is told there; a trunk that bars another VLAN too keeps its own
    boolean ofSwitch = missing.stream().allMatch(id -> id != 1 && !created.contains(id));
    assertThat(vlansOf(findings, "tagged-vlan-missing")).isEqualTo(ofSwitch ? Set.of() : missing);
    assertThat(vlansOf(findings, "tagged-vlan-extra")).isEqualTo(there);
    assertThat(findings)
        .filteredOn(one -> one.rule().equals("tagged-vlan-extra"))
        .hasSize(extra.isEmpty() ? 0 : 1)
        .allMatch(one -> one.severity() == (there.isEmpty() ? Severity.UNTIDY : Severity.WEAKENS));
  }

  private static Set<Integer> vlansOf(List<Finding> findings, String rule) {
    return findings.stream()
        .filter(one -> one.rule().equals(rule))
        .flatMap(one -> one.vlans().ids().boxed())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String list(Set<Integer> vlans) {
    return vlans.stream().map(String::valueOf).collect(Collectors.joining(","));
  }

  private static String design(Set<Integer> tagged, Set<Integer> mayCarry) {
    StringBuilder text = new StringBuilder("format: plumbline-design/1\nvlans:\n");
    POOL.forEach(id -> text.append("  v").append(id).append(": {id: ").append(id).append("}\n"));
    return text
        + "roles:\n  up: {mode: trunk, tagged: ["
        + names(tagged)
        + "], may-carry: ["
        + list(mayCarry)
        + "]}\nswitches:\n  north-sw1: {ports: {Gi1/0/1: up}}\n";
  }

  private static String names(Set<Integer> vlans) {
    return vlans.stream().map(id -> "v" + id).collect(Collectors.joining(", "));
  }

  private static String config(Set<Integer> allowed, Set<Integer> created, int nativeVlan) {
    StringBuilder text = new StringBuilder("hostname north-sw1\n!\nvtp mode transparent\n!\n");
    created.stream()
        .filter(id -> id != 1)
        .forEach(id -> text.append("vlan ").append(id).append("\n!\n"));
    return text
        + "interface GigabitEthernet1/0/1\n switchport trunk native vlan "
        + nativeVlan
        + "\n switchport trunk allowed vlan "
        + (allowed.isEmpty() ? "none" : list(allowed))
        + "\n switchport mode trunk\n switchport nonegotiate\n!\nend\n";
  }
}
