package plumbline.fabric;

/** What spanning tree makes of a port (IEEE 802.1Q, port roles). */
public enum PortRole {
  /** The way to the root: forwards. */
  ROOT,
  /** Serves its segment: forwards. */
  DESIGNATED,
  /** Another way to the root: blocked. */
  ALTERNATE,
  /** A second port on a segment that the same bridge serves: blocked. */
  BACKUP,
  /** Bridge addresses that are not known would decide it. */
  UNDECIDED;

  /** Whether frames pass for certain. */
  public boolean isForwarding() {
    return this == ROOT || this == DESIGNATED;
  }

  /** Whether the port is blocked for certain. */
  public boolean isBlocked() {
    return this == ALTERNATE || this == BACKUP;
  }
}
