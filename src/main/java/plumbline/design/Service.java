package plumbline.design;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import plumbline.yaml.Position;

/**
 * Something that must survive failures.
 *
 * @param name its name
 * @param members where it runs
 * @param needs how many members must work
 * @param survives which single failures it must survive
 * @param at where it is declared
 */
public record Service(
    String name, List<Member> members, int needs, Set<Failure> survives, Position at) {
  /** Copies the collections. */
  public Service {
    members = List.copyOf(members);
    survives = java.util.Collections.unmodifiableSet(new TreeSet<>(survives));
  }

  /**
   * One member.
   *
   * @param host the host it runs on
   * @param vlan the VLAN it lives in
   */
  public record Member(String host, DesignVlan vlan) {}

  /** What can fail. */
  public enum Failure {
    /** A switch or stack member. */
    SWITCH,
    /** A link or bundle member. */
    LINK,
    /** A host. */
    HOST,
    /** A VLAN itself. */
    VLAN,
    /** A gateway. */
    GATEWAY;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
