package plumbline.rules;

import java.util.List;
import plumbline.finding.Severity;
import plumbline.setting.Evidence;

/**
 * One thing in which two gateways of a VLAN do not go together.
 *
 * @param departs the end that lacks something, if it is one of them
 * @param here what the first has, in words
 * @param there what the second has; empty where the first words tell it all
 * @param so the consequence
 * @param first what it rests on at the first
 * @param second what it rests on at the second
 * @param severity how much it hurts
 */
record PairGap(
    End departs,
    String here,
    String there,
    String so,
    List<Evidence> first,
    List<Evidence> second,
    Severity severity) {
  /** Copies the lists. */
  PairGap {
    first = List.copyOf(first);
    second = List.copyOf(second);
  }

  /** One that takes a protection away. */
  PairGap(
      End departs,
      String here,
      String there,
      String so,
      List<Evidence> first,
      List<Evidence> second) {
    this(departs, here, there, so, first, second, Severity.WEAKENS);
  }

  /** Which end departs. */
  enum End {
    /** The first in design order. */
    FIRST,
    /** The second. */
    SECOND,
    /** None of them more than the other. */
    NEITHER
  }
}
