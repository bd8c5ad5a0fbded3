package plumbline.rules;

import java.util.Locale;

/** Groups of rules, in the order in which their outcomes are judged. */
public enum Group {
  /** Configs that could not be audited, or not wholly. */
  INPUT,
  /** A switch as a whole. */
  SWITCH,
  /** One port. */
  PORT,
  /** A bundle and its members. */
  BUNDLE,
  /** Two ports of one host that back each other up. */
  PAIR,
  /** Both ends of a link. */
  LINK,
  /** Reachability and spanning tree over all switches. */
  FABRIC,
  /** What must survive a failure. */
  SERVICE;

  /** The word by which commands and reports name the group. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
