package plumbline.fabric;

import java.util.Optional;
import plumbline.setting.Setting;
import plumbline.statement.SwitchCommand.TreeMode;

/** Kinds of spanning tree that understand each other. */
public enum TreeFamily {
  /** One tree for each VLAN, over the links that carry it. */
  PER_VLAN,
  /** A few trees over all links, whatever VLANs these carry (IEEE 802.1Q, multiple). */
  MULTIPLE,
  /** One tree over all links (IEEE 802.1D). */
  SINGLE,
  /** None. */
  NONE;

  /** The family of a mode, where it is known. */
  public static Optional<TreeFamily> of(Setting<TreeMode.Mode> mode) {
    return mode.value()
        .map(
            known ->
                switch (known) {
                  case PVST, RAPID_PVST -> PER_VLAN;
                  case MST -> MULTIPLE;
                  case RSTP, STP -> SINGLE;
                  case NONE -> NONE;
                });
  }
}
