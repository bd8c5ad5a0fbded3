package plumbline.cli;

/** Exit statuses; of several that apply the highest counts. */
final class Status {
  /** Done, and nothing reaches the severity asked for. */
  static final int DONE = 0;

  /** Drift at or above the severity asked for. */
  static final int DRIFT = 1;

  /** Something that had to be audited or shown could not be; everything else was. */
  static final int INCOMPLETE = 2;

  /** Wrong usage, or a design that cannot be used (EX_USAGE of sysexits.h). */
  static final int USAGE = 64;

  /** A bug in this program (EX_SOFTWARE of sysexits.h). */
  static final int BUG = 70;

  /** A report or standard output could not be written (EX_IOERR of sysexits.h). */
  static final int CANNOT_WRITE = 74;

  private Status() {}
}
