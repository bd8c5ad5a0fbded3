package plumbline.statement;

/** The kind of block that a statement stands in. */
public enum Context {
  /** Outside every block; block headers stand here. */
  TOP,
  /** Inside one or several ports. */
  PORT,
  /** Inside a VLAN stanza. */
  VLAN,
  /** Inside the block that lists VLANs one a line ({@code vlan database}). */
  VLAN_DATABASE,
  /** Inside the multiple-spanning-tree region block. */
  MST,
  /** Inside a block that this program does not read. */
  OTHER
}
