package plumbline.cli;

/** Reports faults of this program itself. */
final class Bugs {
  private Bugs() {}

  /**
   * Writes one line that names the fault and its place. Its message is left out, also from the
   * trace: it may quote a config, and a config may hold secrets.
   */
  static int report(Console console, Throwable bug, boolean debug) {
    console.complainAsProgram(
        "internal error: "
            + bug.getClass().getSimpleName()
            + place(bug)
            + "; this is a bug, please report it");
    if (debug) {
      for (Throwable cause = bug; cause != null; cause = cause.getCause()) {
        console.complain(cause.getClass().getName());
        for (StackTraceElement frame : cause.getStackTrace()) {
          console.complain("  at " + frame);
        }
      }
    }
    return Status.BUG;
  }

  private static String place(Throwable bug) {
    for (StackTraceElement frame : bug.getStackTrace()) {
      if (frame.getClassName().startsWith("plumbline.")) {
        return " at " + frame.getClassName() + ":" + frame.getLineNumber();
      }
    }
    return "";
  }
}
