package plumbline.rules;

import java.util.Optional;
import plumbline.fabric.TreePart;
import plumbline.fabric.TreeScope;
import plumbline.setting.Setting;

/** What becomes of a plan for the root of a spanning tree, or for its second. */
sealed interface RootAnswer {

  /** The planned switch has its place. */
  record Kept() implements RootAnswer {}

  /** Nothing can be said, and the report says why at another place. */
  record Untold() implements RootAnswer {}

  /**
   * The texts leave it open.
   *
   * @param why a clause
   * @param setting the setting of the planned switch that does, if it is one
   */
  record Open(String why, Optional<Setting<?>> setting) implements RootAnswer {}

  /**
   * Another switch comes before the planned one.
   *
   * @param by that switch
   * @param part the part of the tree that both are in
   * @param scope the tree
   * @param failed the switch that has to fail first; empty for the root's own place
   */
  record Taken(String by, TreePart part, TreeScope scope, Optional<String> failed)
      implements RootAnswer {
    /** Whether that switch is the root then. */
    boolean isSure() {
      return part.root().equals(Optional.of(by));
    }
  }

  /**
   * No link of the planned root is in the tree.
   *
   * @param others the part that has another root
   * @param scope the tree
   */
  record Apart(TreePart others, TreeScope scope) implements RootAnswer {}
}
