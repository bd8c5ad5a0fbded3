package plumbline.vlan;

import java.util.BitSet;
import java.util.Collection;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.stream.IntStream;

/** An immutable, exact set of VLAN identifiers, printed as {@code 1,10-100,250}. */
public final class VlanSet {
  /** No VLAN. */
  public static final VlanSet NONE = new VlanSet(new BitSet());

  /** Every VLAN, 1 to 4094. */
  public static final VlanSet ALL = ofRange(VlanId.MIN, VlanId.MAX);

  /** VLANs 1002 to 1005, reserved in many implementations (common practice, no source). */
  public static final VlanSet RESERVED = ofRange(1002, 1005);

  private final BitSet members;

  private VlanSet(BitSet members) {
    this.members = members;
  }

  /**
   * The set of the given identifiers.
   *
   * @throws IllegalArgumentException if one is not in 1..4094
   */
  public static VlanSet of(int... ids) {
    BitSet members = new BitSet();
    for (int id : ids) {
      members.set(new VlanId(id).number());
    }
    return new VlanSet(members);
  }

  /** The set of the given identifiers. */
  public static VlanSet of(Collection<VlanId> ids) {
    return of(ids.stream().mapToInt(VlanId::number).toArray());
  }

  /**
   * The set {@code first..last}, both included.
   *
   * @throws IllegalArgumentException if one is not in 1..4094 or the order is wrong
   */
  public static VlanSet ofRange(int first, int last) {
    if (new VlanId(first).number() > new VlanId(last).number()) {
      throw new IllegalArgumentException(
          "VLAN range " + first + "-" + last + " runs from high to low");
    }
    BitSet members = new BitSet();
    members.set(first, last + 1);
    return new VlanSet(members);
  }

  /**
   * Reads a list such as {@code 1,10-100,250} (the order of its parts is free); empty when the text
   * is no such list or leaves 1..4094.
   */
  public static Optional<VlanSet> parse(String list) {
    BitSet members = new BitSet();
    for (String part : list.strip().split(",", -1)) {
      String[] ends = part.strip().split("-", -1);
      if (ends.length > 2) {
        return Optional.empty();
      }
      Optional<VlanId> first = parseId(ends[0]);
      Optional<VlanId> last = ends.length == 2 ? parseId(ends[1]) : first;
      if (first.isEmpty() || last.isEmpty() || first.get().compareTo(last.get()) > 0) {
        return Optional.empty();
      }
      members.set(first.get().number(), last.get().number() + 1);
    }
    return Optional.of(new VlanSet(members));
  }

  private static Optional<VlanId> parseId(String digits) {
    String number = digits.strip();
    if (!number.matches("[0-9]{1,4}") || !VlanId.isValid(Integer.parseInt(number))) {
      return Optional.empty();
    }
    return Optional.of(new VlanId(Integer.parseInt(number)));
  }

  /** Says whether the identifier is a member; false outside 1..4094. */
  public boolean contains(int id) {
    return id >= 0 && members.get(id);
  }

  /** Says whether the identifier is a member. */
  public boolean contains(VlanId id) {
    return members.get(id.number());
  }

  /** Says whether every member of the other set is a member of this one. */
  public boolean containsAll(VlanSet other) {
    return other.minus(this).isEmpty();
  }

  /** Says whether the sets share a member. */
  public boolean intersects(VlanSet other) {
    return members.intersects(other.members);
  }

  /** The union of both. */
  public VlanSet plus(VlanSet other) {
    BitSet result = copy();
    result.or(other.members);
    return new VlanSet(result);
  }

  /** The members of this set that are not in the other. */
  public VlanSet minus(VlanSet other) {
    BitSet result = copy();
    result.andNot(other.members);
    return new VlanSet(result);
  }

  /** The members of both. */
  public VlanSet and(VlanSet other) {
    BitSet result = copy();
    result.and(other.members);
    return new VlanSet(result);
  }

  /** The VLANs of 1..4094 that are not in this set. */
  public VlanSet complement() {
    return ALL.minus(this);
  }

  /** Says whether there is no member. */
  public boolean isEmpty() {
    return members.isEmpty();
  }

  /** The number of members. */
  public int size() {
    return members.cardinality();
  }

  /** The members in ascending order. */
  public IntStream ids() {
    return members.stream();
  }

  /** What to do with a range of members. */
  @FunctionalInterface
  public interface RangeAction {
    /** Takes the members {@code first..last}, both included. */
    void accept(int first, int last);
  }

  /** Does it for each longest range of members, in ascending order. */
  public void forEachRange(RangeAction action) {
    for (int first = members.nextSetBit(0); first >= 0; ) {
      int last = members.nextClearBit(first) - 1;
      action.accept(first, last);
      first = members.nextSetBit(last + 1);
    }
  }

  private BitSet copy() {
    return (BitSet) members.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof VlanSet set && members.equals(set.members);
  }

  @Override
  public int hashCode() {
    return members.hashCode();
  }

  /** The list form, such as {@code 1,10-100,250}; {@code none} for the empty set. */
  @Override
  public String toString() {
    if (isEmpty()) {
      return "none";
    }
    StringJoiner list = new StringJoiner(",");
    forEachRange(
        (first, last) -> list.add(first == last ? Integer.toString(first) : first + "-" + last));
    return list.toString();
  }
}
